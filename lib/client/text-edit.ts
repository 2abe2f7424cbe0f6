/**
 * Edits of a plain text: which one a person has just made in a field, and where a place in a text stands once others
 * have changed it. Places are UTF-16 code units, as in a field's selection and in a shared text.
 */

export interface Edit {
  readonly at: number;
  readonly removed: number;
  readonly inserted: string;
}

export interface ChangedSpan {
  readonly from: number;
  readonly to: number;
}

/** A change as Yjs tells it. An `insert` that is no string counts one place. */
export type Delta = readonly {
  readonly retain?: number;
  readonly delete?: number;
  readonly insert?: unknown;
}[];

/**
 * The edit that made `after` of `before`. The same letters next to each other do not say which of them is new: the
 * caret does, which after typing, pasting and deleting stands where the edit ended. `selected` is what was selected
 * before: when it was replaced, all of it was, letters that are typed again included.
 */
export function editBetween(before: string, after: string, caret: number, selected?: ChangedSpan | null): Edit {
  let tail = after.length - caret;
  if (!before.endsWith(after.slice(caret))) tail = commonEnd(before, after, commonStart(before, after));
  const was = before.slice(0, before.length - tail);
  const is = after.slice(0, after.length - tail);
  let at = commonStart(was, is);
  if (selected && selected.to > selected.from && selected.to === was.length) at = Math.min(at, selected.from);
  else tail += commonEnd(was, is, at);
  if (splitsPair(before, at) || splitsPair(after, at)) at--;
  if (splitsPair(before, before.length - tail) || splitsPair(after, after.length - tail)) tail--;
  return { at, removed: before.length - tail - at, inserted: after.slice(at, after.length - tail) };
}

/**
 * Where a place stands after a change. What is put in at that very place goes behind it (`side` "left": the place keeps
 * to the letter before it) or before it ("right").
 */
export function movedPlace(place: number, change: Delta, side: "left" | "right"): number {
  let read = 0;
  let now = place;
  for (const op of change) {
    if (read > place) break;
    if (op.retain !== undefined) read += op.retain;
    else if (op.delete !== undefined) {
      now -= Math.min(op.delete, Math.max(0, place - read));
      read += op.delete;
    } else if (read < place || side === "right") now += lengthOf(op.insert);
  }
  return now;
}

/** Whether the letter that begins at `place` is still there after a change. */
export function survives(place: number, change: Delta): boolean {
  let read = 0;
  for (const op of change) {
    if (op.delete !== undefined && place >= read && place < read + op.delete) return false;
    read += op.retain ?? op.delete ?? 0;
  }
  return true;
}

/** Where a change ends, in the text after it. */
export function endOf(change: Delta): number {
  let now = 0;
  let end = 0;
  for (const op of change) {
    now += op.retain ?? (op.insert === undefined ? 0 : lengthOf(op.insert));
    if (op.retain === undefined) end = now;
  }
  return end;
}

/** The first letters, `most` at most; no half of a pair is left at the end. */
export function firstLetters(text: string, most: number): string {
  const cut = text.slice(0, Math.max(0, most));
  return splitsPair(text, cut.length) ? cut.slice(0, -1) : cut;
}

const lengthOf = (insert: unknown): number => (typeof insert === "string" ? insert.length : 1);

function commonStart(a: string, b: string): number {
  const most = Math.min(a.length, b.length);
  let n = 0;
  while (n < most && a[n] === b[n]) n++;
  return n;
}

/** Common letters at the end, of those behind the first `start`. */
function commonEnd(a: string, b: string, start: number): number {
  const most = Math.min(a.length, b.length) - start;
  let n = 0;
  while (n < most && a[a.length - 1 - n] === b[b.length - 1 - n]) n++;
  return n;
}

/** A pair of code units that make one sign must not be parted: Yjs would write a sign of its own for each half. */
const splitsPair = (text: string, at: number): boolean => isHigh(text, at - 1) && isLow(text, at);
const isHigh = (text: string, i: number): boolean => /^[\uD800-\uDBFF]$/.test(text[i] ?? "");
const isLow = (text: string, i: number): boolean => /^[\uDC00-\uDFFF]$/.test(text[i] ?? "");

/**
 * Edits of a plain text: which edit a person has just made in a field, and where a place in a text is once others have
 * changed it. Places are UTF-16 code units, as in a field's selection and in a shared text.
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

/** A change as yjs reports it. An `insert` that is not a string counts as one place. */
export type Delta = readonly {
  readonly retain?: number;
  readonly delete?: number;
  readonly insert?: unknown;
}[];

/**
 * The edit that turned `before` into `after`. Where equal letters are next to each other the caret tells which one is
 * new: after typing, pasting and deleting it is where the edit ended. `selected` is what was selected before; when it
 * was replaced, all of it was, even letters that were typed again.
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
 * Where a place is after a change. Text inserted exactly there goes behind it (`side` "left": the place stays with the
 * letter before it) or before it ("right").
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

/** The first `most` letters at most, never ending in half of a surrogate pair. */
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

/** How many letters are the same at the end, not counting the first `start`. */
function commonEnd(a: string, b: string, start: number): number {
  const most = Math.min(a.length, b.length) - start;
  let n = 0;
  while (n < most && a[a.length - 1 - n] === b[b.length - 1 - n]) n++;
  return n;
}

/** Half of a surrogate pair must not be cut off: yjs would write a replacement character for each half. */
const splitsPair = (text: string, at: number): boolean => isHigh(text, at - 1) && isLow(text, at);
const isHigh = (text: string, i: number): boolean => /^[\uD800-\uDBFF]$/.test(text[i] ?? "");
const isLow = (text: string, i: number): boolean => /^[\uDC00-\uDFFF]$/.test(text[i] ?? "");

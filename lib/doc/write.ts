/**
 * What a person can do to a plan: one function for each act, each one transaction with the caller's origin, so that
 * undo takes back exactly one act, and only one's own. Nothing is moved by deleting and inserting; nothing is deleted
 * for good.
 */
import * as Y from "yjs";
import type { ExpectedCaution, Group, LineBegin, MoveItem, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { newItemMap } from "./create.ts";
import { EXPECTED_KEY, type ItemMap, planParts, SHARE_KEY, SPRING_KEY } from "./layout.ts";
import { setLocked, writeSeconds } from "./lock.ts";
import { keyAfter, type Ordered } from "./order.ts";
import { orderedItems, readItemById } from "./read.ts";
import { lineElement, readLine, setLineAt } from "./script.ts";
import { setOrDelete } from "./set.ts";

export interface Writer {
  readonly doc: Y.Doc;
  /** The transaction origin that undo tracks. */
  readonly origin: unknown;
}

/** Fields of a move item or pause that hold one plain value. */
export type ItemField = Exclude<keyof MoveItem, "id" | "kind" | "springs" | "after" | "script">;
export type HeadField =
  | "lengthSeconds"
  | "level"
  | "openingSeconds"
  | "closingSeconds"
  | "headsUpSeconds"
  | "countInSeconds"
  | "gridSeconds"
  | "people"
  | "speech.syllablesPerSecond"
  | "speech.pauseSeconds";

/** Puts a new item after `afterId` (null: at the top). The id must be new to the document. */
export function insertItem(w: Writer, afterId: string | null, item: PlanItem): void {
  insertItems(w, afterId, [item]);
}

/** Several consecutive items as one act, such as a left and its right, or a duplicated block. */
export function insertItems(w: Writer, afterId: string | null, items: readonly PlanItem[]): void {
  act(w, () => {
    let after = afterId;
    for (const item of items) {
      planParts(w.doc).items.set(item.id, newItemMap(item, keyAfter(orderedItems(w.doc), after)));
      after = item.id;
    }
  });
}

/** Moves an item to follow `afterId` (null: at the top). What others type in it meanwhile stays. */
export function moveItem(w: Writer, id: string, afterId: string | null): void {
  if (id === afterId) return;
  const others: Ordered[] = orderedItems(w.doc).filter((o) => o.id !== id);
  withItem(w, id, (map) => map.set("order", keyAfter(others, afterId)));
}

/** Sets one field; undefined removes it, so that the studio standard or the estimate applies again. */
export function setItemField<F extends ItemField>(
  w: Writer,
  id: string,
  field: F,
  value: MoveItem[F] | undefined,
): void {
  withItem(w, id, (map) => {
    if (field === "seconds") writeSeconds(map, value);
    else if (field === "locked") setLocked(map, value);
    else setOrDelete(map, field, value);
  });
}

/** Sets how many of one spring are on. */
export function setSpring(w: Writer, id: string, spring: string, count: number): void {
  withItem(w, id, (map) => setOrDelete(map, SPRING_KEY + spring, count > 0 ? Math.round(count) : undefined));
}

/** Takes an item out; `restoreItem` puts it back where it was, with its words. `now` in ms since the epoch. */
export function deleteItem(w: Writer, id: string, now: number): void {
  withItem(w, id, (map) => map.set("deleted", now));
}

export function restoreItem(w: Writer, id: string): void {
  withItem(w, id, (map) => map.delete("deleted"));
}

/** Inserts a copy, words included, right after the original. */
export function duplicateItem(w: Writer, id: string, newId: string, changes: Partial<MoveItem> = {}): void {
  const item = readItemById(w.doc, id);
  if (!item) return;
  const copy = item.kind === "move" ? { ...item, ...changes, id: newId } : { ...item, id: newId };
  insertItem(w, id, copy);
}

export function setHead(w: Writer, field: HeadField, value: string | number | undefined): void {
  act(w, () => setOrDelete(planParts(w.doc).head, field, value));
}

export function setThemeShare(w: Writer, group: Group, share: number | undefined): void {
  act(w, () => setOrDelete(planParts(w.doc).head, SHARE_KEY + group, share));
}

export function setExpected(w: Writer, caution: ExpectedCaution, on: boolean, rank: number): void {
  act(w, () => setOrDelete(planParts(w.doc).head, EXPECTED_KEY + caution, on ? rank : undefined));
}

/** Adds a cue line at the end of an item's script. An empty line stays before it, as in `addFirstScriptLine`. */
export function addScriptLine(w: Writer, id: string, line: ScriptLine): void {
  withScript(w, id, (script) => script.insert(script.length, [lineElement(line)]));
}

/**
 * Puts a cue line first. An empty line stays beside it: two people filling it at the same moment would leave both lines
 * in one.
 */
export function addFirstScriptLine(w: Writer, id: string, line: ScriptLine): void {
  withScript(w, id, (script) => script.insert(0, [lineElement(line)]));
}

/** Puts a cue line after the last set-up line that has words, or first where there is none. */
export function addSetupEnd(w: Writer, id: string, line: ScriptLine): void {
  withScript(w, id, (script) => {
    const last = script.toArray().findLastIndex((node) => node instanceof Y.XmlElement && isSetup(node));
    script.insert(last + 1, [lineElement(line)]);
  });
}

/**
 * Puts a cue line after the first one with the same words as `after`, or after the last set-up line where there is none
 * any more.
 */
export function addSetupAfter(w: Writer, id: string, after: ScriptLine, line: ScriptLine): void {
  withScript(w, id, (script) => {
    const at = script.toArray().findIndex((node) => saysSame(node, after));
    if (at < 0) addSetupEnd(w, id, line);
    else script.insert(at + 1, [lineElement(line)]);
  });
}

const isSetup = (node: Y.XmlElement): boolean => readLine(node)?.kind === "setup";

/**
 * Removes the last of several lines with the same words as `line`; one always stays. Two people doing it at once remove
 * the same one.
 */
export function removeRepeatedLine(w: Writer, id: string, line: ScriptLine): void {
  withScript(w, id, (script) => {
    const same = script.toArray().flatMap((node, at) => (saysSame(node, line) ? [at] : []));
    const last = same.at(-1);
    if (same.length > 1 && last !== undefined) script.delete(last, 1);
  });
}

/** Takes out the line with the same words as `line`; nothing where it has been changed. */
export function removeLine(w: Writer, id: string, line: ScriptLine): void {
  withScript(w, id, (script) => {
    const at = script.toArray().findLastIndex((node) => saysSame(node, line));
    if (at >= 0) script.delete(at, 1);
  });
}

/** Sets when a line of a script begins; undefined for when it comes. Nothing happens to a line that was taken out. */
export function setLineBegin(w: Writer, line: Y.XmlElement, at: LineBegin | undefined): void {
  if (line.parent !== null && line.doc === w.doc && !line._item?.deleted) act(w, () => setLineAt(line, at));
}

function saysSame(node: unknown, line: ScriptLine): boolean {
  const read = node instanceof Y.XmlElement ? readLine(node) : undefined;
  return read !== undefined && read.kind === line.kind && read.text.trim() === line.text.trim();
}

function withScript(w: Writer, id: string, change: (script: Y.XmlFragment) => void): void {
  withItem(w, id, (map) => {
    const script = map.get("script");
    if (script instanceof Y.XmlFragment) change(script);
  });
}

/**
 * Makes a shared text read `next`, changing only what differs between the common start and end, so that two people
 * typing in one title both keep their letters.
 */
export function setText(w: Writer, text: Y.Text, next: string): void {
  const now = text.toString();
  if (now === next) return;
  const shortest = Math.min(now.length, next.length);
  let start = 0;
  while (start < shortest && now[start] === next[start]) start++;
  let end = 0;
  while (end < shortest - start && now[now.length - 1 - end] === next[next.length - 1 - end]) end++;
  // A character of two code units is taken whole: yjs replaces a half by a sign for "unreadable".
  if (start > 0 && isHigh(now.charCodeAt(start - 1))) start--;
  if (end > 0 && isHigh(now.charCodeAt(now.length - end - 1))) end--;
  act(w, () => {
    if (now.length - end > start) text.delete(start, now.length - end - start);
    if (next.length - end > start) text.insert(start, next.slice(start, next.length - end));
  });
}

const isHigh = (unit: number): boolean => unit >= 0xd800 && unit < 0xdc00;

/** Runs several acts as one undo step. */
export function act(w: Writer, change: () => void): void {
  w.doc.transact(change, w.origin);
}

/** One act on an item, where it exists. */
export function withItem(w: Writer, id: string, change: (map: ItemMap) => void): void {
  const map = planParts(w.doc).items.get(id);
  if (map) act(w, () => change(map));
}

/**
 * What a person can do to one class of a month, be it a single one or one that the pattern gives ("this one"): one function per
 * act, each in one transaction with the caller's origin, so that undo reverts exactly one act of one's own.
 * `write-pattern.ts` has the acts on lines, `write-lists.ts` those on themes, regulars, times and wishes, `write-many.ts` those on
 * many classes. How often and when a class was changed is noted by the server: see `keep-revisions.ts`.
 */
import * as Y from "yjs";
import { isDate, isTime } from "#lib/calendar/days.ts";
import { act, setText, type Writer } from "#lib/doc/write.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { setEntry, slotEntries, slotEntry } from "./entries.ts";
import { mayBeTold, type Now } from "./keep-revisions.ts";
import { DOT, type EntryMap, monthParts, NOTE_FROM, occurrenceOf, SLOT_KEYS, wholeMinutes } from "./layout.ts";
import { datesOfMonthDoc } from "./month-reader.ts";
import { changedBySlot, clearOccurrence, entryNote, type FlatKeys, flatOf, listOf, over } from "./values.ts";

/** Values that are plain, with null for nothing there. A note is typed: see `openSlotNote`. */
export type SlotChange = {
  readonly [K in "date" | "start" | "minutes" | "locked"]?: MonthSlot[K];
} & { readonly [K in "room" | "coach" | "theme" | "plan" | "people"]?: MonthSlot[K] | null } & {
  readonly regulars?: readonly string[];
};

/** A new class; its id must be new to the month, and no line's. `now`: ms since the epoch. */
export function addSlot(w: Writer, slot: MonthSlot, now: number): boolean {
  if (!fits(w.doc, slot.date, slot.start) || isThere(w.doc, slot.id)) return false;
  act(w, () => setEntry(monthParts(w.doc).slots, slot.id, slotEntry(slot, now)));
  return true;
}

/**
 * Changes one class. What others change in it meanwhile stays, and members of `regulars` that two people add both count. False,
 * and nothing is written, when there is no such class, its day is not in this month or its time is no time.
 */
export function changeSlot(w: Writer, id: string, change: SlotChange): boolean {
  const at = slotAt(w.doc, id);
  if (!at) return false;
  const date = change.date ?? at.flat.get("date") ?? occurrenceOf(id)?.date;
  const start = change.start ?? at.flat.get(SLOT_KEYS.start);
  if (typeof date !== "string" || typeof start !== "string" || !fits(w.doc, date, start)) return false;
  act(w, () => {
    for (const [key, value] of changedEntries(change)) at.set(key, value);
    if (change.regulars) setMembers(at, "regulars", change.regulars);
  });
  return true;
}

/** A class called off: shown struck through and sent as cancelled. One that nobody can have been told of yet just vanishes. */
export function takeOutSlot(w: Writer, id: string, now: Now): "out" | "vanished" | undefined {
  const at = slotAt(w.doc, id);
  if (!at) return undefined;
  const made = at.flat.get("madeAt");
  const vanishes = at.single && !mayBeTold(typeof made === "number" ? made : 0, now);
  act(w, () => (vanishes ? at.set("deleted", now.at) : at.set(SLOT_KEYS.out, true)));
  return vanishes ? "vanished" : "out";
}

export function putBackSlot(w: Writer, id: string): void {
  const at = slotAt(w.doc, id);
  if (!at) return;
  act(w, () => {
    at.set("deleted", undefined);
    if (at.flat.get(SLOT_KEYS.out) === true) at.set(SLOT_KEYS.out, undefined);
  });
}

/** Lets one class of a line be as its line says again; its own words stay in the document. */
export function asItsLine(w: Writer, id: string): void {
  const { changed } = monthParts(w.doc);
  const own = changedBySlot(changed).get(id);
  if (own) act(w, () => clearOccurrence(changed, id, own));
}

/**
 * The shared text of a class's note, for an editor to bind to. That of an occurrence is made as it is opened, with its line's words,
 * and counts once they are changed. Outside of undo: an undo that took the text away would be refused, since texts stay. Undefined
 * when there is no such class.
 */
export function openSlotNote(w: Writer, id: string): Y.Text | undefined {
  const there = slotNoteText(w.doc, id);
  const { changed, lines } = monthParts(w.doc);
  const line = lines.get(occurrenceOf(id)?.line ?? "");
  if (!line) return there;
  const words = entryNote(flatOf(line)) ?? "";
  const from = id + DOT + NOTE_FROM;
  if (there && (there.toString() !== changed.get(from) || words === changed.get(from))) return there;
  const text = there ?? new Y.Text(words);
  w.doc.transact(() => {
    if (there) setText({ doc: w.doc, origin: null }, there, words);
    else changed.set(`${id}${DOT}note${DOT}${w.doc.clientID}`, text);
    changed.set(from, words);
  });
  return text;
}

/** Sets a note as a whole; changes only what differs, so that two people typing both keep their letters. */
export function setSlotNote(w: Writer, id: string, words: string): void {
  const text = openSlotNote(w, id);
  if (text) setText(w, text, words);
}

/** Where a class's note is typed, if there is a text; reading makes none. */
export function slotNoteText(doc: Y.Doc, id: string): Y.Text | undefined {
  const { slots, changed } = monthParts(doc);
  const single = slots.get(id)?.get("note");
  return single instanceof Y.Text ? single : occurrenceNoteText(changed, id);
}

function occurrenceNoteText(changed: Y.Map<unknown>, id: string): Y.Text | undefined {
  const start = `${id}${DOT}note${DOT}`;
  const keys = [...changed.keys()].filter((key) => key.startsWith(start)).sort();
  const text = keys[0] === undefined ? undefined : changed.get(keys[0]);
  return text instanceof Y.Text ? text : undefined;
}

const fits = (doc: Y.Doc, date: string, start: string): boolean => {
  const { dates, month } = datesOfMonthDoc(monthParts(doc));
  return month !== "" && isDate(date) && isTime(start) && date >= dates.from && date <= dates.to;
};

const isThere = (doc: Y.Doc, id: string): boolean =>
  monthParts(doc).slots.has(id) || monthParts(doc).lines.has(occurrenceOf(id)?.line ?? "");

/** A class's keys, wherever they are. */
export interface SlotAt {
  readonly single: boolean;
  /** With those of its line. */
  readonly flat: FlatKeys;
  /** Undefined: for an entry nothing; for an occurrence what its line says. */
  set(key: string, value: unknown): void;
}

function slotAt(doc: Y.Doc, id: string): SlotAt | undefined {
  const { slots, lines, changed } = monthParts(doc);
  const single = slots.get(id);
  if (single instanceof Y.Map)
    return {
      single: true,
      flat: flatOf(single),
      set: (key, value) => put(single, key, key === SLOT_KEYS.theme ? value : (value ?? undefined)),
    };
  const line = lines.get(occurrenceOf(id)?.line ?? "");
  if (!(line instanceof Y.Map)) return undefined;
  const base = flatOf(line);
  const own = new Map(
    [...changed].filter(([key]) => key.startsWith(id + DOT)).map(([key, v]) => [key.slice(id.length + 1), v]),
  );
  return { single: false, flat: over(base, own), set: (key, value) => put(changed, id + DOT + key, value) };
}

/** Writes only what differs, so that nothing is sent needlessly. */
export function put(map: EntryMap, key: string, value: unknown): void {
  if (value === undefined) {
    if (map.has(key)) map.delete(key);
  } else if (map.get(key) !== value) map.set(key, value);
}

export function changedEntries(change: Omit<SlotChange, "regulars">): [string, unknown][] {
  const entries = slotEntries(change as Partial<MonthSlot>).filter(([key]) => !key.startsWith("regulars"));
  return entries.map(([key, value]) => [key, key === SLOT_KEYS.minutes ? wholeMinutes(Number(value)) : value]);
}

/** Adds and takes away single members, so that what somebody else adds at the same moment stays. */
export function setMembers(
  at: Pick<SlotAt, "flat" | "set">,
  list: string,
  members: readonly (string | number)[],
): void {
  const now = listOf(at.flat, list) ?? [];
  const wanted = members.map(String);
  const ranks = now.map((member) => Number(at.flat.get(list + DOT + member)));
  let next = Math.max(-1, ...ranks) + 1;
  for (const member of now) if (!wanted.includes(member)) at.set(list + DOT + member, null);
  for (const member of wanted) if (!now.includes(member)) at.set(list + DOT + member, next++);
}

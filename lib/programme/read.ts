/**
 * Reads a month document into plain data. Reading never writes. Damaged values are skipped: no error, and they stay in the
 * document.
 */
import * as Y from "yjs";
import { takenOutBy } from "#lib/doc/taken-out.ts";
import { Kept } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { byWallTime, joinSlots, occurrencesOf } from "#lib/month/expand.ts";
import type { MonthSlot, PatternLine } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { DOT, monthParts, type Slot } from "./layout.ts";
import { MonthReader, type MonthState } from "./month-reader.ts";

/** The reader of a document that stays open, one for all who ask. Not within a transaction. */
export const readerOfMonth: (doc: Y.Doc) => MonthReader = perValue((doc) => new MonthReader(doc));

/** A document read once. Whoever reads one again and again asks `readerOfMonth`. */
export const readMonthState = (doc: Y.Doc): MonthState => readOnce(doc, (reader) => reader.read());

function readOnce<T>(doc: Y.Doc, read: (reader: MonthReader) => T): T {
  const reader = new MonthReader(doc);
  try {
    return read(reader);
  } finally {
    reader.end();
  }
}

/** Every class, also those taken out: what the pattern gives with what was changed in its place. By date, start and id. */
export const monthClasses = (state: MonthState): readonly MonthSlot[] =>
  classesKept(state.slots).get([state.pattern, state.holidays, state.dates], () => {
    const given = state.pattern.map((line) =>
      occurrencesKept(line).get([state.dates, state.holidays], () => occurrencesOf(line, state)),
    );
    return joinSlots(state.slots, given).sort(byWallTime);
  });

const classesKept = perValue((_slots: readonly MonthSlot[]) => new Kept<readonly MonthSlot[]>());
const occurrencesKept = perValue((_line: PatternLine) => new Kept<readonly MonthSlot[]>());

export interface Month {
  /** 'YYYY-MM'; "" when the document has none. */
  readonly month: string;
  /** The classes that take place, by day and time. */
  readonly slots: readonly Slot[];
}

export const readMonth = (doc: Y.Doc): Month => shownMonth(readMonthState(doc));

const shownMonth: (state: MonthState) => Month = perValue((state) => ({
  month: state.month,
  slots: monthClasses(state)
    .filter(({ out }) => out !== true)
    .map((slot) => shownSlot(slot, state)),
}));

/** A class in the words of lists. */
const shownSlot = (slot: MonthSlot, { themes }: Pick<MonthState, "themes">): Slot => ({
  id: slot.id,
  date: slot.date,
  time: slot.start,
  minutes: slot.minutes,
  theme: typeof slot.theme === "string" ? (own(themes, slot.theme)?.name ?? "") : "",
  coachId: slot.coach ?? null,
  roomId: slot.room ?? null,
  planId: slot.plan ?? null,
  note: slot.note ?? "",
});

/** One class that takes place; undefined when there is none or it was taken out. */
export const readSlotById = (doc: Y.Doc, id: string): Slot | undefined =>
  readMonth(doc).slots.find((slot) => slot.id === id);

export interface DeletedSlot {
  readonly slot: Slot;
  /** ms since the epoch; 0 where its making was undone, and of one that is called off. */
  readonly deletedAt: number;
}

/** Classes that were taken out and can be put back, those that only were a mistake included; newest first, then by id. */
export const readDeletedSlots = (doc: Y.Doc): DeletedSlot[] => readOnce(doc, deletedSlots);

export function deletedSlots(reader: MonthReader): DeletedSlot[] {
  const state = reader.read();
  const calledOff = monthClasses(state).filter(({ out }) => out === true);
  return [
    ...calledOff.map((slot) => ({
      slot: shownSlot(slot, state),
      deletedAt: own(state.revisions.slots, slot.id)?.at ?? 0,
    })),
    ...reader.mistakes().map(({ slot, deleted }) => ({ slot: shownSlot(slot, state), deletedAt: deleted })),
  ].sort((a, b) => b.deletedAt - a.deletedAt || (a.slot.id < b.slot.id ? -1 : 1));
}

/** By day, then time, then id. Compared by code units, so the order is the same everywhere. */
export function bySlotTime(a: Slot, b: Slot): number {
  for (const key of ["date", "time", "id"] as const) if (a[key] !== b[key]) return a[key] < b[key] ? -1 : 1;
  return 0;
}

/** Client id of the page that took a class out; undefined while it takes place. */
export function slotTakenOutBy(doc: Y.Doc, id: string): number | undefined {
  const { slots, changed } = monthParts(doc);
  const map = slots.get(id);
  if (map instanceof Y.Map)
    return takenOutBy(map) ?? (map.get("out") === true ? map._map.get("out")?.id.client : undefined);
  const key = `${id}${DOT}out`;
  return changed.get(key) === true ? changed._map.get(key)?.id.client : undefined;
}

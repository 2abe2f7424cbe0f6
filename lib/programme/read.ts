/**
 * Reads a month document into plain data. Reading never writes. Damaged values are skipped: no error, and they stay in the
 * document.
 */
import * as Y from "yjs";
import { daysOfMonth, isMonth } from "#lib/calendar/days.ts";
import { takenOutBy } from "#lib/doc/taken-out.ts";
import { keepSame } from "#lib/memo/keep-same.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { expandMonth } from "#lib/month/expand.ts";
import type { ById, FillWanted, MonthSlot, MonthTheme, PatternLine, Regulars } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { type CarriedParts, readCarriedParts } from "./carried.ts";
import { DOT, type MonthDocParts, monthParts, type Slot } from "./layout.ts";
import { type CoachTimes, readCoachTimes, readFill, readHolidays, readRegulars, readThemes } from "./read-lists.ts";
import { readPatternLines, readSlots } from "./read-slots.ts";
import { type Revisions, readRevisions } from "./revisions.ts";
import { lateThemes } from "./typed-themes.ts";
import { flatOf, type KnownIds } from "./values.ts";

/** Everything that a month's document holds. Its slots are those of the month file: single ones and changed occurrences. */
export interface MonthState {
  /** 'YYYY-MM'; "" when the document has none. */
  readonly month: string;
  readonly dates: { readonly from: string; readonly to: string };
  readonly title: string;
  readonly holidays: ById<string>;
  readonly regulars: ById<Regulars>;
  readonly themes: ById<MonthTheme>;
  readonly coachTimes: ById<CoachTimes>;
  readonly pattern: readonly PatternLine[];
  readonly slots: readonly MonthSlot[];
  readonly fill?: FillWanted;
  readonly carried: CarriedParts;
  readonly revisions: Revisions;
  /** Optional parts of the month file that an imported one had, though nothing was in them. */
  readonly given: readonly string[];
  /** When a single slot or a line was added, ms since the epoch; 0 where it does not say. */
  readonly made: ById<number>;
}

/** `was`: the state before, whose unchanged parts stay the same objects. */
export function readMonthState(doc: Y.Doc, was?: MonthState): MonthState {
  const p = monthParts(doc);
  const { month, dates } = datesOfMonthDoc(p);
  const regulars = readRegulars(p);
  const themes = { ...readThemes(p), ...lateThemes(p.slots, readThemes(p)) };
  const present: KnownIds = {
    regulars: (id) => own(regulars, id) !== undefined,
    themes: (id) => own(themes, id) !== undefined,
  };
  const lines = readPatternLines(p, present);
  const slots = readSlots(p, present, dates);
  const head = flatOf(p.head);
  const fill = readFill(head);
  const now: MonthState = {
    month,
    dates,
    title: p.title.toString(),
    holidays: readHolidays(p),
    regulars,
    themes,
    coachTimes: readCoachTimes(p),
    pattern: lines.map(({ line }) => line),
    slots: slots.map(({ slot }) => slot),
    ...(fill ? { fill } : {}),
    carried: readCarriedParts(p.carried),
    revisions: readRevisions(p.revisions),
    given: String(head.get("given") ?? "").split(" "),
    made: Object.fromEntries([
      ...lines.map(({ line, made }) => [line.id, made]),
      ...slots.map((s) => [s.slot.id, s.made]),
    ]),
  };
  return keepSame(was, now);
}

/** The days of the month, fewer where an imported file had fewer. */
export function datesOfMonthDoc({ meta, head }: MonthDocParts): Pick<MonthState, "month" | "dates"> {
  const value = meta.get("month");
  const month = typeof value === "string" && isMonth(value) ? value : "";
  const days = daysOfMonth(month);
  const [from, to] = [head.get("from"), head.get("to")].map((date) => days.find((day) => day === date));
  return { month, dates: { from: from ?? days[0] ?? "2000-01-01", to: to ?? days.at(-1) ?? "2000-01-01" } };
}

/** Every class, also those taken out: what the pattern gives with what was changed in its place. By date, start and id. */
export const monthClasses: (state: MonthState) => readonly MonthSlot[] = perValue((state) => expandMonth(state));

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
export function readDeletedSlots(doc: Y.Doc): DeletedSlot[] {
  const state = readMonthState(doc);
  const calledOff = monthClasses(state).filter(({ out }) => out === true);
  return [
    ...calledOff.map((slot) => ({
      slot: shownSlot(slot, state),
      deletedAt: own(state.revisions.slots, slot.id)?.at ?? 0,
    })),
    ...readMistakes(doc, state),
  ].sort((a, b) => b.deletedAt - a.deletedAt || (a.slot.id < b.slot.id ? -1 : 1));
}

function readMistakes(doc: Y.Doc, state: MonthState): DeletedSlot[] {
  const p = monthParts(doc);
  const present: KnownIds = {
    regulars: (id) => own(state.regulars, id) !== undefined,
    themes: (id) => own(state.themes, id) !== undefined,
  };
  return readSlots(p, present, state.dates, "taken-out").map(({ slot, deleted }) => ({
    slot: shownSlot(slot, state),
    deletedAt: deleted,
  }));
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

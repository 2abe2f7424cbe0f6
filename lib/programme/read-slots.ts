/** The lines of a month's pattern and its single slots and changed occurrences, each whole. */
import * as Y from "yjs";
import type { MonthSlot, PatternLine } from "#lib/month/types.ts";
import { type EntryMap, type MonthDocParts, occurrenceOf, SLOT_KEYS } from "./layout.ts";
import { themeOfSlot } from "./typed-themes.ts";
import {
  dateOf,
  entryNote,
  type FlatKeys,
  flatOf,
  given,
  idOf,
  type KnownIds,
  listOf,
  numbersOf,
  occurrenceNote,
  over,
  saysSomething,
  slotValues,
  whole,
} from "./values.ts";

const stamp = (v: unknown): number => (typeof v === "number" && Number.isFinite(v) ? v : 0);

export interface LineRead {
  readonly line: PatternLine;
  readonly made: number;
  readonly order: number;
}

const isDay = (n: number) => n >= 1 && n <= 7;
const isOrdinal = (n: number) => n !== 0 && n >= -5 && n <= 5;

/** Undefined for one that was taken out or is damaged. */
export function readPatternLine(id: string, map: unknown, present: KnownIds): LineRead | undefined {
  if (!(map instanceof Y.Map) || idOf(id) === undefined || map.get("deleted") !== undefined) return undefined;
  const flat = flatOf(map as EntryMap);
  const values = slotValues(flat, entryNote(flat), present);
  const days = numbersOf(flat, "days", isDay) ?? [];
  if (!values || days.length === 0 || id.length > 55) return undefined;
  const nth = numbersOf(flat, "nth", isOrdinal);
  const every = whole(flat.get("every"), 1, 8);
  const weekStart = flat.get("weekStart");
  const [from, to] = [dateOf(flat.get("from")), dateOf(flat.get("to"))];
  const rule: Omit<PatternLine, "start" | "minutes"> = given<Omit<PatternLine, "start" | "minutes">>({
    id,
    days,
    // The two do not go together: whoever set both at once meant a week of the month.
    every: nth !== undefined && every !== undefined && every > 1 ? undefined : every,
    weekStart: weekStart === 1 || weekStart === 7 ? weekStart : undefined,
    nth,
    from,
    to: from !== undefined && to !== undefined && to < from ? from : to,
    count: whole(flat.get("count"), 1, 400),
    except: listOf(flat, "except")?.filter((date) => dateOf(date) !== undefined),
  });
  return { line: { ...rule, ...values }, made: stamp(flat.get("madeAt")), order: stamp(flat.get("order")) };
}

export interface ReadSlot {
  readonly slot: MonthSlot;
  /** Its date, start and id, by which it is sorted. */
  readonly place: string;
  readonly made: number;
  /** As a mistake. */
  readonly isTakenOut: boolean;
  /** When it was taken out. */
  readonly deleted: number;
}

export const byPlace = (a: ReadSlot, b: ReadSlot): number => (a.place < b.place ? -1 : 1);

/** A single class, also one that was taken out as a mistake. */
export function readSingle(id: string, map: unknown, present: KnownIds): ReadSlot | undefined {
  if (!(map instanceof Y.Map) || idOf(id) === undefined) return undefined;
  const deleted = map.get("deleted");
  const flat = new Map(flatOf(map as EntryMap));
  const theme = themeOfSlot(flat);
  if (theme !== undefined) flat.set(SLOT_KEYS.theme, theme);
  const read = slotFrom(id, flat, dateOf(flat.get("date")), entryNote(flat), present);
  return read && { ...read, isTakenOut: deleted !== undefined, deleted: stamp(deleted) };
}

/** A changed occurrence; `own`: its keys. Undefined where nothing is said of it, and while its line is taken out. */
export function readChanged(p: MonthDocParts, id: string, own: FlatKeys, present: KnownIds): ReadSlot | undefined {
  const named = occurrenceOf(id);
  const line = named && p.lines.get(named.line);
  if (!saysSomething(own) || !(line instanceof Y.Map) || line.get("deleted") !== undefined) return undefined;
  const base = flatOf(line);
  const flat = over(base, own);
  const date = dateOf(own.get("date")) ?? dateOf(named?.date);
  const read = slotFrom(id, flat, date, occurrenceNote(base, own), present);
  return read && { ...read, isTakenOut: false, deleted: 0 };
}

function slotFrom(
  id: string,
  flat: FlatKeys,
  date: string | undefined,
  note: string | undefined,
  present: KnownIds,
): Pick<ReadSlot, "slot" | "place" | "made"> | undefined {
  const values = slotValues(flat, note, present);
  if (!values || date === undefined) return undefined;
  const out = flat.get(SLOT_KEYS.out);
  const slot: MonthSlot = { id, date, ...values, ...(typeof out === "boolean" ? { out } : {}) };
  return { slot, place: `${date} ${slot.start} ${id}`, made: stamp(flat.get("madeAt")) };
}

/** The lines of a month's pattern and its single slots and changed occurrences, each whole. */
import * as Y from "yjs";
import type { MonthSlot, PatternLine } from "#lib/month/types.ts";
import { type EntryMap, type MonthDocParts, occurrenceOf, SLOT_KEYS } from "./layout.ts";
import { entriesOf } from "./read-lists.ts";
import { themeOfSlot } from "./typed-themes.ts";
import {
  changedBySlot,
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

/** In their order, those that were taken out left out. */
export function readPatternLines(p: MonthDocParts, present: KnownIds): LineRead[] {
  const lines = entriesOf(p.lines, (flat, id) => readLine(id, flat, present));
  return Object.values(lines).sort((a, b) => a.order - b.order || (a.line.id < b.line.id ? -1 : 1));
}

const isDay = (n: number) => n >= 1 && n <= 7;
const isOrdinal = (n: number) => n !== 0 && n >= -5 && n <= 5;

function readLine(id: string, flat: FlatKeys, present: KnownIds): LineRead | undefined {
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
  readonly made: number;
  /** When it was taken out as a mistake. */
  readonly deleted: number;
}

/** By date, start and id. `which`: those that are there, or those that were taken out as a mistake. */
export function readSlots(
  p: MonthDocParts,
  present: KnownIds,
  dates: { readonly from: string; readonly to: string },
  which: "there" | "taken-out" = "there",
): ReadSlot[] {
  const single = [...p.slots].flatMap(([id, map]) => singleSlot(id, map, present, which) ?? []);
  const ids = new Set(p.slots.keys());
  const changed =
    which === "there"
      ? [...changedBySlot(p.changed)].flatMap(([id, own]) =>
          ids.has(id) ? [] : (changedOccurrence(p, id, own, present) ?? []),
        )
      : [];
  return [...single, ...changed]
    .filter(({ slot }) => slot.date >= dates.from && slot.date <= dates.to)
    .sort((a, b) => compare(a.slot, b.slot));
}

function compare(a: MonthSlot, b: MonthSlot): number {
  for (const key of ["date", "start", "id"] as const) if (a[key] !== b[key]) return a[key] < b[key] ? -1 : 1;
  return 0;
}

function singleSlot(id: string, map: unknown, present: KnownIds, which: string): ReadSlot | undefined {
  if (!(map instanceof Y.Map) || idOf(id) === undefined) return undefined;
  const deleted = map.get("deleted");
  if ((deleted !== undefined) !== (which === "taken-out")) return undefined;
  const flat = new Map(flatOf(map as EntryMap));
  const theme = themeOfSlot(flat);
  if (theme !== undefined) flat.set(SLOT_KEYS.theme, theme);
  return slotFrom(id, flat, dateOf(flat.get("date")), entryNote(flat), present, stamp(deleted));
}

/** Undefined where nothing is said of it, and while its line is taken out. */
function changedOccurrence(p: MonthDocParts, id: string, own: FlatKeys, present: KnownIds): ReadSlot | undefined {
  const named = occurrenceOf(id);
  const line = named && p.lines.get(named.line);
  if (!saysSomething(own) || !(line instanceof Y.Map) || line.get("deleted") !== undefined) return undefined;
  const base = flatOf(line);
  const flat = over(base, own);
  return slotFrom(id, flat, dateOf(own.get("date")) ?? dateOf(named?.date), occurrenceNote(base, own), present, 0);
}

function slotFrom(
  id: string,
  flat: FlatKeys,
  date: string | undefined,
  note: string | undefined,
  present: KnownIds,
  deleted: number,
): ReadSlot | undefined {
  const values = slotValues(flat, note, present);
  if (!values || date === undefined) return undefined;
  const out = flat.get(SLOT_KEYS.out);
  const slot: MonthSlot = { id, date, ...values, ...(typeof out === "boolean" ? { out } : {}) };
  return { slot, made: stamp(flat.get("madeAt")), deleted };
}

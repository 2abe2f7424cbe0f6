/** FlatKeys keys of a month read as plain values: of an entry's own map, or of an occurrence over its line. Reading never writes. */
import * as Y from "yjs";
import { isDate, isTime } from "#lib/calendar/days.ts";
import type { SlotValues } from "#lib/month/types.ts";
import { ID_PATTERN } from "#lib/plan/schema.ts";
import { DOT, LEFT_OUT, NOTE_FROM, NOTE_OWN, SLOT_KEYS, wholeMinutes } from "./layout.ts";

/** The keys of one entry with their values; null says that there is none, where a line has one. */
export type FlatKeys = ReadonlyMap<string, unknown>;

export const words = (v: unknown): string => (v instanceof Y.Text ? v.toString() : typeof v === "string" ? v : "");
export const idOf = (v: unknown): string | undefined => (typeof v === "string" && ID_PATTERN.test(v) ? v : undefined);
export const whole = (v: unknown, min: number, max: number): number | undefined =>
  typeof v === "number" && Number.isInteger(v) && v >= min && v <= max ? v : undefined;
export const dateOf = (v: unknown): string | undefined => (typeof v === "string" && isDate(v) ? v : undefined);

/** Members of a list that has one key each, in order of their ranks. Undefined where no list was given. */
export function listOf(flat: FlatKeys, list: string): string[] | undefined {
  const start = list + DOT;
  const found: [rank: number, member: string][] = [];
  for (const [key, rank] of flat)
    if (key.startsWith(start) && typeof rank === "number") found.push([rank, key.slice(start.length)]);
  if (found.length === 0) return flat.get(list) === true ? [] : undefined;
  return found.sort((a, b) => a[0] - b[0] || (a[1] < b[1] ? -1 : 1)).map(([, member]) => member);
}

export const numbersOf = (flat: FlatKeys, list: string, fits: (n: number) => boolean): number[] | undefined =>
  listOf(flat, list)
    ?.map(Number)
    .filter((n) => Number.isInteger(n) && fits(n));

/** Leaves out keys that hold nothing; a null that was given stays. */
export function given<T extends object>(value: { readonly [K in keyof T]: T[K] | undefined }): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T;
}

/** What refers to something: an id, null for expressly nothing, undefined for nothing or a damaged value. */
const reference = (v: unknown): string | null | undefined => (v === null ? null : idOf(v));
const flag = (v: unknown): boolean | undefined => (typeof v === "boolean" ? v : undefined);

/** Which of the ids that slots refer to are there; others read as none. */
export interface KnownIds {
  readonly regulars: (id: string) => boolean;
  readonly themes: (id: string) => boolean;
}

/** Undefined without a valid start: a damaged slot is skipped, and stays in the document. */
export function slotValues(flat: FlatKeys, note: string | undefined, present: KnownIds): SlotValues | undefined {
  const start = flat.get(SLOT_KEYS.start);
  if (typeof start !== "string" || !isTime(start)) return undefined;
  const theme = reference(flat.get(SLOT_KEYS.theme));
  return given<SlotValues>({
    start,
    minutes: wholeMinutes(Number(flat.get(SLOT_KEYS.minutes) ?? Number.NaN)),
    room: reference(flat.get(SLOT_KEYS.room)),
    coach: reference(flat.get(SLOT_KEYS.coach)),
    regulars: listOf(flat, "regulars")?.filter(present.regulars),
    theme: typeof theme === "string" && !present.themes(theme) ? undefined : theme,
    plan: reference(flat.get(SLOT_KEYS.plan)),
    people: whole(flat.get(SLOT_KEYS.people), 0, 500),
    locked: flag(flat.get(SLOT_KEYS.locked)),
    note,
  });
}

/** The note of an entry with a map of its own. */
export function entryNote(flat: FlatKeys): string | undefined {
  const note = words(flat.get("note"));
  return note === "" && flat.get(NOTE_OWN) !== true ? undefined : note;
}

const NOTE = `note${DOT}`;

/**
 * The note of an occurrence. Two people who begin one at the same moment have a text each, and both are kept: they are read
 * one under the other.
 */
export function occurrenceNote(line: FlatKeys | undefined, own: FlatKeys): string | undefined {
  const mark = own.get(NOTE_OWN);
  if (mark === null) return undefined;
  const said = typedNote(own);
  const isOwn = mark === true || (said !== undefined && said !== own.get(NOTE_FROM));
  return isOwn ? (said ?? "") : line && entryNote(line);
}

/** What is typed in an occurrence's texts; undefined where it has none. */
function typedNote(own: FlatKeys): string | undefined {
  const texts = [...own].filter(([key, text]) => key.startsWith(NOTE) && text instanceof Y.Text).sort(byKey);
  if (texts.length === 0) return undefined;
  return [...new Set(texts.map(([, text]) => words(text)))].filter((text) => text !== "").join("\n");
}

/** Lets an occurrence say nothing of its own; what was typed in its note stays in the document. */
export function clearOccurrence(changed: Y.Map<unknown>, id: string, own: FlatKeys): void {
  for (const [key, value] of own) if (!(value instanceof Y.AbstractType)) changed.delete(id + DOT + key);
  const typed = typedNote(own);
  if (typed) changed.set(id + DOT + NOTE_FROM, typed);
}

const byKey = (a: readonly [string, unknown], b: readonly [string, unknown]): number => (a[0] < b[0] ? -1 : 1);

/** Whether an occurrence says anything of its own: the texts of notes alone do not. */
export const saysSomething = (own: FlatKeys): boolean =>
  [...own].some(([key, value]) =>
    value instanceof Y.Text
      ? words(value) !== own.get(NOTE_FROM) && words(value) !== ""
      : value !== undefined && key !== NOTE_FROM,
  );

/** The line's values with the occurrence's over them. A key that undo has emptied is there without a value, and says nothing. */
export function over(line: FlatKeys | undefined, own: FlatKeys): FlatKeys {
  const flat = new Map(line);
  for (const [key, value] of own)
    if (value === LEFT_OUT) flat.delete(key);
    else if (value !== undefined) flat.set(key, value);
  return flat;
}

/** `changed`, by slot id. */
export function changedBySlot(changed: Y.Map<unknown>): Map<string, Map<string, unknown>> {
  const found = new Map<string, Map<string, unknown>>();
  for (const [key, value] of changed) {
    const dot = key.indexOf(DOT);
    if (dot <= 0) continue;
    const id = key.slice(0, dot);
    const of = found.get(id) ?? new Map<string, unknown>();
    of.set(key.slice(dot + 1), value);
    found.set(id, of);
  }
  return found;
}

export const flatOf = (map: Y.Map<unknown>): FlatKeys => new Map(map.entries());

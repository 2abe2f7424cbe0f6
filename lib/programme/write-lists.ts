/** What a person can do to a month's themes, regulars, coaches' times, holidays, wishes and fill settings. */
import * as Y from "yjs";
import { act, type Writer } from "#lib/doc/write.ts";
import type { AwayTime, FreeTime, MonthTheme, Regulars } from "#lib/month/types.ts";
import type { Group } from "#lib/plan/schema.ts";
import { type Entry, regularsEntry, setEntry, themeEntry } from "./entries.ts";
import { DOT, type EntryMap, MONTH_SHARE_KEY, monthParts } from "./layout.ts";
import { readMonthState } from "./read.ts";
import { themeIdOf, themeName } from "./typed-themes.ts";
import { flatOf } from "./values.ts";
import { put, setMembers } from "./write.ts";

/** The shared text of the name of a theme or of a group of regulars. */
export function nameTextOf(doc: Y.Doc, of: "themes" | "regulars", id: string): Y.Text | undefined {
  const text = monthParts(doc)[of].get(id)?.get("name");
  return text instanceof Y.Text ? text : undefined;
}

export const addTheme = (w: Writer, id: string, theme: MonthTheme): void =>
  addEntry(w, monthParts(w.doc).themes, id, themeEntry(theme));

export const addRegulars = (w: Writer, id: string, regulars: Regulars): void =>
  addEntry(w, monthParts(w.doc).regulars, id, regularsEntry(regulars));

function addEntry(w: Writer, map: Y.Map<EntryMap>, id: string, entry: Entry): void {
  if (!map.has(id)) act(w, () => setEntry(map, id, entry));
}

/**
 * The theme of that name, ignoring case, or a new one; null for no name. Its id comes from the words. `themes`: those of the month,
 * from whoever knows them: else the whole document is read for them.
 */
export function themeNamed(
  w: Writer,
  typed: string,
  themes: Readonly<Record<string, MonthTheme>> = readMonthState(w.doc).themes,
): string | null {
  const name = themeName(typed);
  const id = themeIdOf(name);
  if (id === undefined) return null;
  const there = Object.entries(themes).find(([, t]) => t.name.toLowerCase() === name.toLowerCase());
  if (there) return there[0];
  const map = monthParts(w.doc).themes.get(id);
  if (map) act(w, () => put(map, "deleted", undefined));
  else addTheme(w, id, { name });
  return id;
}

/** How many classes of the month are promised to a theme; null for no promise. */
export const setPromised = (w: Writer, id: string, promised: number | null): void =>
  withEntry(w, monthParts(w.doc).themes, id, (map) => put(map, "promised", promised ?? undefined));

/** The least share of a group, 0..1, that a class must have to keep the theme. */
export const setLeastShare = (w: Writer, id: string, group: Group, share: number | null): void =>
  withEntry(w, monthParts(w.doc).themes, id, (map) => put(map, MONTH_SHARE_KEY + group, share ?? undefined));

export const setRegularsPeople = (w: Writer, id: string, people: number | null): void =>
  withEntry(w, monthParts(w.doc).regulars, id, (map) => put(map, "people", people ?? undefined));

/** Classes that name it read as if they named none, until it is put back. `now` in ms since the epoch. */
export const takeOutEntry = (w: Writer, of: "themes" | "regulars", id: string, now: number): void =>
  withEntry(w, monthParts(w.doc)[of], id, (map) => put(map, "deleted", now));

function withEntry(w: Writer, entries: Y.Map<EntryMap>, id: string, change: (map: EntryMap) => void): void {
  const map = entries.get(id);
  if (map instanceof Y.Map) act(w, () => change(map));
}

export interface KeyedTime<T> {
  readonly key: string;
  readonly time: T;
}

/** A coach's times with the keys that `setCoachTime` takes. */
export function readCoachTimeKeys(
  doc: Y.Doc,
  coach: string,
): { readonly free: readonly KeyedTime<FreeTime>[]; readonly away: readonly KeyedTime<AwayTime>[] } {
  const of = <T>(kind: string): KeyedTime<T>[] => {
    const start = `${coach}${DOT}${kind}${DOT}`;
    return [...monthParts(doc).coaches]
      .filter(([key, time]) => key.startsWith(start) && typeof time === "object" && time !== null)
      .map(([key, time]) => ({ key: key.slice(start.length), time: time as T }))
      .sort((a, b) => (a.key < b.key ? -1 : 1));
  };
  return { free: of<FreeTime>("free"), away: of<AwayTime>("away") };
}

/** One time under a key of its own, so that two people who add one both count; null takes it away. */
export function setCoachTime(
  w: Writer,
  coach: string,
  kind: "free" | "away",
  key: string,
  time: FreeTime | AwayTime | null,
): void {
  act(w, () => put(monthParts(w.doc).coaches, `${coach}${DOT}${kind}${DOT}${key}`, time ?? undefined));
}

export const setHoliday = (w: Writer, date: string, name: string | null): void =>
  act(w, () => put(monthParts(w.doc).holidays, date, name ?? undefined));

/** A wish that a class gets a plan; null takes it back, `weight` undefined for the usual one. */
export function setWish(w: Writer, slot: string, plan: string, wish: { readonly weight?: number } | null): void {
  const { head } = monthParts(w.doc);
  const rank = readMonthState(w.doc).fill?.wishes?.length ?? 0;
  act(w, () => put(head, `fill.wishes.${slot}.${plan}`, wish ? { rank, ...wish } : undefined));
}

/** Which classes are to be filled, with which plans; null for all of them. */
export function setFillList(w: Writer, list: "slots" | "plans", members: readonly string[] | null): void {
  const { head } = monthParts(w.doc);
  act(w, () => {
    put(head, `fill.${list}`, members ? true : undefined);
    const at = { flat: flatOf(head), set: (key: string, value: unknown) => put(head, key, value ?? undefined) };
    setMembers(at, `fill.${list}`, members ?? []);
  });
}

export const setMostUses = (w: Writer, most: number | null): void =>
  act(w, () => put(monthParts(w.doc).head, "fill.mostUses", most ?? undefined));

/** Who and what a month has besides its classes: regulars, themes, coaches' times, holidays, wishes. */
import * as Y from "yjs";
import { minuteOfDay } from "#lib/calendar/days.ts";
import type { AwayTime, ById, FillWanted, FreeTime, MonthTheme, Regulars } from "#lib/month/types.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { DOT, type EntryMap, MONTH_SHARE_KEY, type MonthDocParts } from "./layout.ts";
import { dateOf, type FlatKeys, flatOf, given, idOf, listOf, whole, words } from "./values.ts";

/** Entries that are not taken out, by id. */
function entriesOf<T>(map: Y.Map<EntryMap>, read: (entry: FlatKeys, id: string) => T | undefined): Record<string, T> {
  const found: [string, T][] = [];
  for (const [id, entry] of map) {
    if (!(entry instanceof Y.Map) || idOf(id) === undefined || entry.get("deleted") !== undefined) continue;
    const one = read(flatOf(entry), id);
    if (one !== undefined) found.push([id, one]);
  }
  return Object.fromEntries(found.sort(([a], [b]) => (a < b ? -1 : 1)));
}

export const readRegulars = (p: MonthDocParts): ById<Regulars> =>
  entriesOf(p.regulars, (entry) =>
    given<Regulars>({ name: words(entry.get("name")), people: whole(entry.get("people"), 1, 500) }),
  );

export const readThemes = (p: MonthDocParts): Record<string, MonthTheme> =>
  entriesOf(p.themes, (entry) =>
    given<MonthTheme>({
      name: words(entry.get("name")),
      promised: whole(entry.get("promised"), 0, Number.MAX_SAFE_INTEGER),
      shares: sharesOf(entry),
    }),
  );

function sharesOf(entry: FlatKeys): MonthTheme["shares"] | undefined {
  const shares: Partial<Record<Group, number>> = {};
  for (const group of GROUPS) {
    const share = entry.get(MONTH_SHARE_KEY + group);
    if (typeof share === "number" && share >= 0 && share <= 1) shares[group] = share;
  }
  return Object.keys(shares).length > 0 || entry.get("shares") === true ? shares : undefined;
}

export interface CoachTimes {
  readonly free?: readonly FreeTime[];
  readonly away?: readonly AwayTime[];
}

/** The keys of a coach's times stay with them, so that a page can change one: see `readCoachTimeKeys`. */
export function readCoachTimes(p: MonthDocParts): Record<string, CoachTimes> {
  const found: Record<string, { free?: FreeTime[]; away?: AwayTime[] }> = {};
  for (const [key, value] of [...p.coaches].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const [coach, kind] = key.split(DOT);
    if (idOf(coach) === undefined || coach === undefined || (kind !== "free" && kind !== "away")) continue;
    const times: { free?: FreeTime[]; away?: AwayTime[] } = Object.hasOwn(found, coach) ? (found[coach] ?? {}) : {};
    found[coach] = times;
    if (kind === "free") times.free = [...(times.free ?? []), ...freeTime(value)];
    else times.away = [...(times.away ?? []), ...awayTime(value)];
  }
  return found;
}

const minute = (time: unknown): number => (time === "24:00" ? 1440 : minuteOfDay(String(time)));

function freeTime(value: unknown): FreeTime[] {
  const { days, from, to } = (typeof value === "object" && value !== null ? value : {}) as Record<string, unknown>;
  if (!Array.isArray(days) || days.length === 0 || !days.every((day) => whole(day, 1, 7) !== undefined)) return [];
  if (!(minute(from) < 1440) || !(minute(from) < minute(to))) return [];
  return [{ days: [...days], from: String(from), to: String(to) }];
}

function awayTime(value: unknown): AwayTime[] {
  const { from, to, why } = (typeof value === "object" && value !== null ? value : {}) as Record<string, unknown>;
  const [first, last] = [dateOf(from), dateOf(to)];
  if (first === undefined || last === undefined || last < first) return [];
  return [given<AwayTime>({ from: first, to: last, why: typeof why === "string" ? why : undefined })];
}

/** As many characters as the field for it takes: a page or a file may have written more. Our own choice. */
export const MOST_HOLIDAY_NAME = 120;

export function readHolidays(p: MonthDocParts): Record<string, string> {
  const found = [...p.holidays].flatMap(([date, name]): [string, string][] =>
    dateOf(date) !== undefined && typeof name === "string" ? [[date, cutTo(name, MOST_HOLIDAY_NAME)]] : [],
  );
  return Object.fromEntries(found.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function cutTo(name: string, most: number): string {
  const characters = name.length > most ? [...name] : [];
  return characters.length > most ? `${characters.slice(0, most - 1).join("")}…` : name;
}

/** Wishes and settings of the fill; undefined where there are none. */
export function readFill(head: FlatKeys): FillWanted | undefined {
  const wishes = [...head]
    .flatMap(([key, value]) => wishOf(key, value))
    .sort((a, b) => a.rank - b.rank || (a.wish.slot + a.wish.plan < b.wish.slot + b.wish.plan ? -1 : 1));
  const fill = given<FillWanted>({
    slots: listOf(head, "fill.slots"),
    plans: listOf(head, "fill.plans"),
    wishes: wishes.length > 0 || head.get("fill.wishes") === true ? wishes.map(({ wish }) => wish) : undefined,
    mostUses: whole(head.get("fill.mostUses"), 1, Number.MAX_SAFE_INTEGER),
  });
  return Object.keys(fill).length > 0 ? fill : undefined;
}

function wishOf(key: string, value: unknown) {
  const [fill, wishes, slot, plan] = key.split(DOT);
  if (fill !== "fill" || wishes !== "wishes" || idOf(slot) === undefined || idOf(plan) === undefined) return [];
  if (typeof value !== "object" || value === null) return [];
  const { rank, weight } = value as Record<string, unknown>;
  const wish = given<{ slot: string; plan: string; weight?: number }>({
    slot: slot as string,
    plan: plan as string,
    weight: whole(weight, 0, 10_000),
  });
  return [{ rank: typeof rank === "number" ? rank : 0, wish }];
}

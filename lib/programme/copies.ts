/** What copying classes into a month would bring. Pure, so that a page can say it before anything is written. */

import { dateOfDay, dayNumber, daysOfMonth, isoWeekday } from "#lib/calendar/days.ts";
import { weekBegins } from "#lib/formats/dates.ts";
import type { WeekStart } from "#lib/formats/formats.ts";
import { areSame } from "#lib/memo/kept.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { occurrenceId, occurrenceOf } from "./layout.ts";
import type { MonthState } from "./month-reader.ts";
import { monthClasses } from "./read.ts";
import type { SlotChange } from "./write.ts";

export interface ClassCopies {
  /** Classes that would be new, each to get an id. */
  readonly add: readonly Omit<MonthSlot, "id">[];
  /** Classes that the pattern gives there, with what is different in those that are copied. */
  readonly change: readonly { readonly id: string; readonly values: SlotChange }[];
  /** How many stand there already, as they are. */
  readonly there: number;
  /** How many have no day in this month. */
  readonly noDay: number;
}

export interface TakenOver extends ClassCopies {
  /** Ids of themes, of classes that would be new: what each was and becomes. */
  readonly themes: readonly { readonly from: string; readonly to: string }[];
  /** How many of the new classes had a theme that this month does not have. */
  readonly themesLost: number;
}

/**
 * The classes of the week of one date in the week of another, weeks as the reader has them. Where the pattern gives the same class there, that one gets what
 * was changed in this one; others are added, unless one stands there at that time in that room. Plans come along, notes do not.
 */
export function copiesOfWeek(state: MonthState, from: string, to: string, weekStart: WeekStart): ClassCopies {
  const first = (date: string) => dayNumber(weekBegins(date, { weekStart }));
  const by = first(to) - first(from);
  const week = monthClasses(state).filter((slot) => slot.out !== true && first(slot.date) === first(from));
  return copiesOf(state, week, (slot) => dateOfDay(dayNumber(slot.date) + by), differences);
}

/**
 * Last month's classes, each on the same day of the same week of the month (the first Monday to the first Monday), without plans
 * and notes. What stands there already, given by the pattern or at that time in that room, stays as it is. Themes that last month
 * had more than once go `shiftThemes` places on among themselves, in the order of their names, so that a group of regulars goes
 * on to the next one; a theme of one class alone stays with it.
 */
export function copiesOfLastMonth(state: MonthState, last: MonthState, shiftThemes: number): TakenOver {
  const days = daysOfMonth(state.month);
  const were = monthClasses(last).filter((slot) => slot.out !== true);
  const next = themesAfter(state, were, shiftThemes);
  const bare = were.map(({ plan: _, note: _n, locked: _l, ...slot }) => slot);
  const on = (slot: MonthSlot) => days.find((day) => isSameDayOfMonth(day, slot.date));
  const { add, ...rest } = copiesOf(state, bare, on, () => null);
  const themed = add.flatMap(({ theme }) => theme ?? []);
  const themes = [...next].filter(([from, to]) => from !== to && themed.includes(from));
  return {
    ...rest,
    add: add.map((slot) => (slot.theme == null ? slot : { ...slot, theme: next.get(slot.theme) ?? null })),
    themes: themes.map(([from, to]) => ({ from, to })),
    themesLost: themed.filter((id) => !next.has(id)).length,
  };
}

const nthOf = (date: string): number => Math.ceil(Number(date.slice(8)) / 7);
const isSameDayOfMonth = (a: string, b: string): boolean => isoWeekday(a) === isoWeekday(b) && nthOf(a) === nthOf(b);

/** Every theme of this month, and the one that takes its place. */
function themesAfter({ themes }: MonthState, were: readonly MonthSlot[], by: number): Map<string, string> {
  const uses = (id: string) => were.filter(({ theme }) => theme === id).length;
  const name = (id: string) => themes[id]?.name ?? "";
  const ids = Object.keys(themes);
  const several = ids.filter((id) => uses(id) > 1).sort((a, b) => (name(a) < name(b) ? -1 : 1));
  const n = several.length;
  const after = (id: string) => (several.includes(id) ? several[(((several.indexOf(id) + by) % n) + n) % n] : id);
  return new Map(ids.map((id) => [id, after(id) ?? id]));
}

/** `changeOf`: what a class that the pattern gives there gets of the copied one; null: it stays as it is. */
function copiesOf(
  state: MonthState,
  classes: readonly MonthSlot[],
  dateOf: (slot: MonthSlot) => string | undefined,
  changeOf: (slot: MonthSlot, given: MonthSlot) => SlotChange | null,
): ClassCopies {
  const there = new Map(monthClasses(state).map((slot) => [slot.id, slot]));
  const add: Omit<MonthSlot, "id">[] = [];
  const change: { id: string; values: SlotChange }[] = [];
  let [stand, noDay] = [0, 0];
  for (const slot of classes) {
    const date = dateOf(slot);
    if (date === undefined || date < state.dates.from || date > state.dates.to) {
      noDay++;
      continue;
    }
    const line = occurrenceOf(slot.id)?.line;
    const given = line === undefined ? undefined : there.get(occurrenceId(line, date));
    const values = given && given.out !== true ? changeOf(slot, given) : null;
    if (given && values) change.push({ id: given.id, values });
    else if (given || stands({ ...slot, date }, there)) stand++;
    else add.push(asNew(slot, date));
  }
  return { add, change, there: stand, noDay };
}

const stands = ({ date, start, room }: MonthSlot, there: ReadonlyMap<string, MonthSlot>): boolean =>
  [...there.values()].some(
    (other) =>
      other.out !== true && other.date === date && other.start === start && (other.room ?? null) === (room ?? null),
  );

const asNew = (slot: MonthSlot, date: string): Omit<MonthSlot, "id"> => {
  const { id: _, note: _n, out: _o, locked: _l, changedAt: _c, sequence: _s, ...rest } = slot;
  const { formerCoaches: _f, formerRooms: _r, ...values } = rest;
  return { ...values, date };
};

const COPIED = ["start", "minutes", "room", "coach", "theme", "plan", "people", "locked", "regulars"] as const;

/** Null where the other has all the same already. */
function differences(slot: MonthSlot, given: MonthSlot): SlotChange | null {
  const differs = COPIED.filter((key) => slot[key] !== undefined && !isSameValue(slot[key], given[key]));
  return differs.length === 0 ? null : Object.fromEntries(differs.map((key) => [key, slot[key]]));
}

/** Nothing chosen is the same as none. */
const isSameValue = (a: MonthSlot[keyof MonthSlot], b: MonthSlot[keyof MonthSlot]): boolean =>
  Array.isArray(a) ? areSame([...a].sort(), Array.isArray(b) ? [...b].sort() : []) : (a ?? null) === (b ?? null);

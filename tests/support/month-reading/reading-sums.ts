/** A second reading of `month sums`, as the command prints it. */
import type { MonthFile } from "#lib/month/types.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { codeOrder, type ReadSlot, readSlots } from "./reading-slots.ts";
import { asInstant, weekNameOf } from "./reading-time.ts";
import {
  datesOf,
  inMonth,
  isHeavy,
  likenessOf,
  onDate,
  pairsInOrder,
  planOf,
  plansOf,
  recoveriesOf,
  shortShares,
  slotsOfRegulars,
  slotsOn,
  total,
  varietyOf,
  weeksOf,
  workFor,
} from "./reading-work.ts";

/** To so many decimals, half away from zero; what is within 1e-9 of a half is one. */
export function printed(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const size = Math.floor(Math.abs(value) * scale + 0.5 + 1e-9) / scale;
  return size === 0 ? 0 : Math.sign(value) * size;
}
export const printedOrNull = (value: number | null): number | null => (value === null ? null : printed(value, 4));

export function readSums(month: MonthFile): unknown {
  const each = <T>(ids: object | undefined, of: (id: string) => T): Record<string, T> =>
    Object.fromEntries(Object.keys(ids ?? {}).map((id) => [id, of(id)]));
  return {
    slots: readSlots(month).map(({ id, from, to, date, slot }) => {
      return { id, from: asInstant(from), to: asInstant(to), week: weekNameOf(date), out: slot.out === true };
    }),
    regulars: each(month.regulars, (id) => regularsSums(month, id)),
    coaches: each(month.coaches, (id) => coachSums(month, id)),
    themes: each(month.themes, (id) => themeSums(month, id)),
  };
}

function regularsSums(month: MonthFile, id: string): unknown {
  const slots = slotsOfRegulars(month, id);
  return {
    days: datesOf(slots).map((date) => regularsDay(month, date, onDate(slots, date))),
    recovery: recoveriesOf(month, id).map((recovery) => ({ ...recovery, minutes: printed(recovery.minutes, 0) })),
    neighbours: pairsInOrder(slots).map(([a, b]) => {
      return { slots: [a.id, b.id], likeness: printedOrNull(likenessOf(planOf(month, a), planOf(month, b))) };
    }),
    weeks: weeksOf(month, id).map(({ week, whole, slots: those, seconds, change }) => ({
      week,
      whole,
      seconds: printed(seconds, 1),
      metMinutes: metMinutesOf(month, those),
      change: printedOrNull(change),
      ...printedVariety(month, those),
    })),
    variety: printedVariety(
      month,
      slots.filter((slot) => inMonth(month, slot)),
    ),
  };
}

/** The contract names what is rounded; MET-minutes are not among it. */
const metMinutesOf = (month: MonthFile, slots: readonly ReadSlot[]): number =>
  printed(total(plansOf(month, slots).map((plan) => plan.metMinutes)), 9);

function printedVariety(month: MonthFile, slots: readonly ReadSlot[]): object {
  const { distinct, effective } = varietyOf(month, slots);
  return { distinct, effective: printedOrNull(effective) };
}

function regularsDay(month: MonthFile, date: string, day: readonly ReadSlot[]): unknown {
  const groups: Partial<Record<Group, number>> = {};
  for (const group of GROUPS) {
    const work = workFor(month, day, group);
    if (work > 0) groups[group] = printed(work, 1);
  }
  return {
    date,
    groups,
    push: printed(total(plansOf(month, day).map((plan) => plan.push)), 1),
    pull: printed(total(plansOf(month, day).map((plan) => plan.pull)), 1),
    metMinutes: metMinutesOf(month, day),
    heavy: GROUPS.filter((group) => isHeavy(month, day, group)).sort(codeOrder),
  };
}

export const slotsOfCoach = (month: MonthFile, id: string): ReadSlot[] =>
  slotsOn(month).filter(({ slot }) => slot.coach === id);
export const talkOf = (month: MonthFile, slots: readonly ReadSlot[]): number =>
  total(plansOf(month, slots).map((plan) => plan.talkSeconds));
export const minutesOf = (slots: readonly ReadSlot[]): number => total(slots.map(({ slot }) => slot.minutes));

function coachSums(month: MonthFile, id: string): unknown {
  const slots = slotsOfCoach(month, id);
  const counted = slots.filter((slot) => inMonth(month, slot));
  const days = datesOf(slots).map((date) => {
    const day = onDate(slots, date);
    return {
      date,
      classes: day.length,
      minutes: minutesOf(day),
      talkSeconds: printed(talkOf(month, day), 1),
      from: asInstant(Math.min(...day.map(({ from }) => from))),
      to: asInstant(Math.max(...day.map(({ to }) => to))),
      gaps: pairsInOrder(day).map(([a, b]) => (b.from - a.to) / 60_000),
    };
  });
  return { days, minutes: minutesOf(counted), talkSeconds: printed(talkOf(month, counted), 1) };
}

export const slotsOfTheme = (month: MonthFile, id: string): ReadSlot[] =>
  slotsOn(month).filter((slot) => slot.slot.theme === id && inMonth(month, slot));

function themeSums(month: MonthFile, id: string): unknown {
  const slots = slotsOfTheme(month, id);
  const kept = plansOf(month, slots).filter((plan) => Object.keys(shortShares(month, id, plan)).length === 0);
  return { promised: month.themes?.[id]?.promised ?? null, slots: slots.length, kept: kept.length };
}

const DECIMALS: Readonly<Record<string, number>> = { seconds: 1, likeness: 4, change: 4 };
/** A finding as the command prints it: its numbers rounded. */
export function printedValues<T extends { readonly values: Record<string, unknown> }>(finding: T): T {
  const shown = (name: string, value: unknown): unknown => {
    if (typeof value === "number") return printed(value, DECIMALS[name] ?? 0);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([group, share]) => [group, printed(share, 4)]));
  };
  const values = Object.entries(finding.values).map(([name, value]) => [name, shown(name, value)]);
  return { ...finding, values: Object.fromEntries(values) };
}

/** A second reading of what classes give people: work by group, heavy days, recovery, likeness, variety, weeks. */
import { type KnownPlan, limitsOfMonth, type MonthFile } from "#lib/month/types.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { codeOrder, type ReadSlot, readSlots } from "./reading-slots.ts";
import { datesBetween, weekNameOf } from "./reading-time.ts";

const SAME = 1e-9;
export const atLeast = (a: number, b: number): boolean => a > b - SAME;
export const moreThan = (a: number, b: number): boolean => a > b + SAME;
export const total = (numbers: readonly number[]): number => numbers.reduce((sum, n) => sum + n, 0);

/** Only slots that are not taken out. */
export const slotsOn = (month: MonthFile): ReadSlot[] => readSlots(month).filter(({ slot }) => slot.out !== true);
export const slotsOfRegulars = (month: MonthFile, regulars: string): ReadSlot[] =>
  slotsOn(month).filter(({ slot }) => (slot.regulars ?? []).includes(regulars));
export const inMonth = (month: MonthFile, { date }: ReadSlot): boolean =>
  date >= month.dates.from && date <= month.dates.to;
export const firstKnown = (month: MonthFile): string => month.dates.known ?? month.dates.from;

export function planOf(month: MonthFile, { slot }: ReadSlot): KnownPlan | undefined {
  const plan = slot.plan ? month.plans[slot.plan] : undefined;
  return plan === undefined || plan.known === false ? undefined : plan;
}
export const plansOf = (month: MonthFile, slots: readonly ReadSlot[]): KnownPlan[] =>
  slots.flatMap((slot) => planOf(month, slot) ?? []);

/** Seconds of work for one group. */
export const workFor = (month: MonthFile, slots: readonly ReadSlot[], group: Group): number =>
  total(plansOf(month, slots).map((plan) => plan.groups[group] ?? 0));
export const workOfAll = (month: MonthFile, slots: readonly ReadSlot[]): number =>
  total(GROUPS.map((group) => workFor(month, slots, group)));

export const heavyLimit = (month: MonthFile, group: Group): number =>
  limitsOfMonth(month).heavyBy[group] ?? limitsOfMonth(month).heavySeconds;
export const isHeavy = (month: MonthFile, slots: readonly ReadSlot[], group: Group): boolean =>
  atLeast(workFor(month, slots, group), heavyLimit(month, group));

export const datesOf = (slots: readonly ReadSlot[]): string[] => [...new Set(slots.map(({ date }) => date))].sort();
export const onDate = (slots: readonly ReadSlot[], date: string): ReadSlot[] => slots.filter((s) => s.date === date);

export interface ReadRecovery {
  readonly group: Group;
  readonly from: string;
  readonly to: string;
  readonly minutes: number;
  readonly slots: [string, string];
}

export function recoveriesOf(month: MonthFile, regulars: string): ReadRecovery[] {
  const slots = slotsOfRegulars(month, regulars);
  const found: ReadRecovery[] = [];
  for (const group of GROUPS) {
    const heavy = datesOf(slots).filter((date) => isHeavy(month, onDate(slots, date), group));
    for (let i = 0; i + 1 < heavy.length; i++) {
      const [from, to] = [heavy[i] as string, heavy[i + 1] as string];
      const ends = clockSetters(month, onDate(slots, from), group);
      const starts = clockSetters(month, onDate(slots, to), group);
      const last = [...ends].sort((a, b) => b.to - a.to || codeOrder(b.id, a.id))[0] as ReadSlot;
      const first = [...starts].sort((a, b) => a.from - b.from || codeOrder(a.id, b.id))[0] as ReadSlot;
      found.push({ group, from, to, minutes: (first.from - last.to) / 60_000, slots: [last.id, first.id] });
    }
  }
  return found.sort((a, b) => codeOrder(a.from, b.from) || codeOrder(a.group, b.group));
}

function clockSetters(month: MonthFile, day: readonly ReadSlot[], group: Group): ReadSlot[] {
  const much = day.filter((slot) => atLeast(workFor(month, [slot], group), heavyLimit(month, group) / 10));
  return much.length > 0 ? much : day.filter((slot) => workFor(month, [slot], group) > 0);
}

export function likenessOf(a: KnownPlan | undefined, b: KnownPlan | undefined): number | null {
  if (a === undefined || b === undefined) return null;
  if (!Object.values(a.moves).some((s) => s > 0) || !Object.values(b.moves).some((s) => s > 0)) return null;
  const moves = [...new Set([...Object.keys(a.moves), ...Object.keys(b.moves)])];
  const of = (plan: KnownPlan, move: string): number => plan.moves[move] ?? 0;
  const least = total(moves.map((move) => Math.min(of(a, move), of(b, move))));
  const most = total(moves.map((move) => Math.max(of(a, move), of(b, move))));
  const [workOfA, workOfB] = [workOfPlan(a), workOfPlan(b)];
  if (workOfA === 0 || workOfB === 0) return least / most;
  const shared = total(GROUPS.map((g) => Math.min((a.groups[g] ?? 0) / workOfA, (b.groups[g] ?? 0) / workOfB)));
  return (least / most + shared) / 2;
}
export const workOfPlan = (plan: KnownPlan): number => total(GROUPS.map((group) => plan.groups[group] ?? 0));

export function pairsInOrder(slots: readonly ReadSlot[]): [ReadSlot, ReadSlot][] {
  return slots.slice(1).map((slot, i) => [slots[i] as ReadSlot, slot]);
}

export function varietyOf(
  month: MonthFile,
  slots: readonly ReadSlot[],
): { distinct: number; effective: number | null } {
  const seconds: Record<string, number> = {};
  for (const plan of plansOf(month, slots)) {
    for (const [move, s] of Object.entries(plan.moves)) seconds[move] = (seconds[move] ?? 0) + s;
  }
  const moved = Object.values(seconds).filter((s) => s > 0);
  const all = total(moved);
  const effective = moved.length === 0 ? null : 1 / total(moved.map((s) => (s / all) ** 2));
  return { distinct: moved.length, effective };
}

export interface ReadWeek {
  readonly week: string;
  readonly whole: boolean;
  readonly slots: ReadSlot[];
  readonly seconds: number;
  readonly change: number | null;
}

export function weeksOf(month: MonthFile, regulars: string): ReadWeek[] {
  const known = firstKnown(month);
  const names = [...new Set(datesBetween(known, month.dates.to).map(weekNameOf))];
  const weeks: ReadWeek[] = [];
  for (const week of names) {
    const slots = slotsOfRegulars(month, regulars).filter(({ date }) => weekNameOf(date) === week);
    const days = datesBetween(known, month.dates.to).filter((date) => weekNameOf(date) === week);
    const whole = days.length === 7;
    const seconds = workOfAll(month, slots);
    const last = weeks.at(-1);
    const compared = last !== undefined && whole && last.whole && last.seconds > 0;
    weeks.push({ week, whole, slots, seconds, change: compared ? (seconds - last.seconds) / last.seconds : null });
  }
  return weeks;
}

/** By theme: whether a class with this plan keeps it, and the shares that fall short. */
export function shortShares(month: MonthFile, theme: string, plan: KnownPlan): Partial<Record<Group, number>> {
  const all = workOfPlan(plan);
  const short: Partial<Record<Group, number>> = {};
  for (const group of GROUPS) {
    const least = month.themes?.[theme]?.shares?.[group];
    const share = all === 0 ? 0 : (plan.groups[group] ?? 0) / all;
    if (least !== undefined && !atLeast(share, least)) short[group] = share;
  }
  return short;
}

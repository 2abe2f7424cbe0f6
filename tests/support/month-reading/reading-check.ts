/** A second reading of `month check`: every finding by its rule, its level, and the order they are told in. */
import { limitsOfMonth, type MonthFile, type MonthLevel } from "#lib/month/types.ts";
import { GROUPS } from "#lib/plan/schema.ts";
import { clashes, ofCoach, ofSlot, type ReadFinding, told } from "./reading-rules.ts";
import { codeOrder, type ReadSlot } from "./reading-slots.ts";
import { slotsOfTheme } from "./reading-sums.ts";
import {
  atLeast,
  datesOf,
  heavyLimit,
  isHeavy,
  likenessOf,
  moreThan,
  onDate,
  pairsInOrder,
  planOf,
  recoveriesOf,
  slotsOfRegulars,
  slotsOn,
  varietyOf,
  weeksOf,
  workFor,
} from "./reading-work.ts";

const MUSTS = "room-clash coach-clash coach-away more-people-than-machines other-equipment plan-too-long".split(" ");
const LEVELS: readonly string[] = ["must", "look", "info"];

export function levelOf(month: MonthFile, rule: string): MonthLevel | "off" {
  const usual = MUSTS.includes(rule) ? "must" : rule === "on-a-holiday" ? "info" : "look";
  return month.standards?.[rule]?.level ?? usual;
}

export interface TextlessFinding {
  readonly id: string;
  readonly rule: string;
  readonly level: MonthLevel;
  readonly slots: readonly string[];
  readonly values: Record<string, unknown>;
}

export function readCheck(month: MonthFile): TextlessFinding[] {
  const all = [
    ...clashes(month),
    ...slotsOn(month).flatMap((slot) => ofSlot(month, slot)),
    ...Object.keys(month.coaches).flatMap((id) => ofCoach(month, id)),
    ...Object.keys(month.regulars).flatMap((id) => ofRegulars(month, id)),
    ...Object.keys(month.themes ?? {}).flatMap((id) => ofTheme(month, id)),
  ];
  const { asOf, dates } = month;
  const since = asOf !== undefined && asOf > dates.from ? asOf : dates.from;
  const start = ({ slots }: ReadFinding): number => slots[0]?.from ?? Number.MAX_VALUE;
  const rank = ({ rule }: ReadFinding): number => LEVELS.indexOf(levelOf(month, rule));
  return all
    .filter(({ rule }) => levelOf(month, rule) !== "off")
    .filter(({ slots }) => slots.length === 0 || slots.some(({ date }) => date >= since))
    .sort((a, b) => rank(a) - rank(b) || start(a) - start(b) || codeOrder(a.id, b.id))
    .map(({ id, rule, slots, values }) => {
      return { id, rule, level: levelOf(month, rule) as MonthLevel, slots: slots.map((slot) => slot.id), values };
    });
}

function ofRegulars(month: MonthFile, id: string): ReadFinding[] {
  return [...ofRecovery(month, id), ...heavyTwice(month, id), ...tooAlike(month, id), ...ofWeeks(month, id)];
}

function ofRecovery(month: MonthFile, id: string): ReadFinding[] {
  const limits = limitsOfMonth(month);
  return recoveriesOf(month, id).flatMap(({ group, to, minutes, slots }) => {
    const least = 60 * (limits.recoveryBy[group] ?? limits.recoveryHours);
    const two = slots.map((slot) => slotsOn(month).find((s) => s.id === slot) as ReadSlot);
    return moreThan(least, minutes) ? [told("short-recovery", `${id}:${group}:${to}`, two, { minutes, least })] : [];
  });
}

function heavyTwice(month: MonthFile, id: string): ReadFinding[] {
  const slots = slotsOfRegulars(month, id);
  return datesOf(slots).flatMap((date) =>
    GROUPS.flatMap((group) => {
      const day = onDate(slots, date);
      const alone = day.filter((slot) => isHeavy(month, [slot], group) && heavyLimit(month, group) > 0);
      if (alone.length < 2) return [];
      return [told("heavy-twice-a-day", `${id}:${group}:${date}`, alone, { seconds: workFor(month, day, group) })];
    }),
  );
}

function tooAlike(month: MonthFile, id: string): ReadFinding[] {
  return pairsInOrder(slotsOfRegulars(month, id)).flatMap(([a, b]) => {
    const likeness = likenessOf(planOf(month, a), planOf(month, b));
    if (likeness === null || !atLeast(likeness, limitsOfMonth(month).likeMost)) return [];
    return [told("too-alike", `${id}:${a.id}+${b.id}`, [a, b], { likeness })];
  });
}

function ofWeeks(month: MonthFile, id: string): ReadFinding[] {
  const { riseMost, varietyLeast } = limitsOfMonth(month);
  return weeksOf(month, id).flatMap(({ week, whole, slots, change }) => {
    const found: ReadFinding[] = [];
    const planned = slots.filter((slot) => planOf(month, slot) !== undefined);
    const { distinct } = varietyOf(month, slots);
    if (change !== null && moreThan(change, riseMost)) {
      found.push(told("week-rises-much", `${id}:${week}`, planned, { change }));
    }
    if (whole && planned.length >= 2 && distinct < varietyLeast) {
      found.push(told("little-variety", `${id}:${week}`, planned, { distinct }));
    }
    return found;
  });
}

function ofTheme(month: MonthFile, id: string): ReadFinding[] {
  const promised = month.themes?.[id]?.promised;
  const slots = slotsOfTheme(month, id);
  if (promised === undefined || slots.length >= promised) return [];
  return [told("theme-promise-missed", id, slots, { promised, have: slots.length })];
}

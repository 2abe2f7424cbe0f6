/** Runs the rules on one part of a month. */
import { own } from "#lib/plan/lookup.ts";
import type { AnyMonthRule, MonthFound, MonthRule } from "../define/define-month-rule.ts";
import type { MonthParts, PartKind } from "../define/parts.ts";
import { limitsOfMonth, type MonthFile, type MonthFinding, type MonthLevel, type MonthLimits } from "../types.ts";
import { MONTH_RULES } from "./registry.ts";

/** The rules that a month has not switched off, with its levels and limits. */
export interface Judging {
  readonly limits: MonthLimits;
  readonly rules: readonly { readonly rule: AnyMonthRule; readonly level: MonthLevel }[];
}

export function judgingOf(month: Pick<MonthFile, "limits" | "standards">): Judging {
  const rules = MONTH_RULES.flatMap((rule) => {
    const level = own(month.standards, rule.id)?.level ?? rule.level;
    return level === "off" ? [] : [{ rule, level }];
  });
  return { limits: limitsOfMonth(month), rules };
}

/** What a rule found in a part, without its words. */
export interface PartFound<Of extends PartKind = PartKind> {
  readonly rule: MonthRule<Of>;
  readonly level: MonthLevel;
  readonly found: MonthFound;
}

/** Quick enough to be asked for every choice of a search; `toldFinding` adds the words. */
export function foundIn<Of extends PartKind>(
  of: Of,
  part: MonthParts[Of],
  { rules, limits }: Judging,
): PartFound<Of>[] {
  const all: PartFound<Of>[] = [];
  for (const { rule, level } of rules) {
    if (!isOf(rule, of)) continue;
    for (const found of rule.check(part, limits)) all.push({ rule, level, found });
  }
  return all;
}

function isOf<Of extends PartKind>(rule: AnyMonthRule, of: Of): rule is AnyMonthRule & MonthRule<Of> {
  return rule.of === of;
}

/** A finding with what it is sorted and left out by. */
export interface PlacedFinding {
  readonly finding: MonthFinding;
  /** Start of its first slot; infinite where it has none. */
  readonly from: number;
  /** The latest date of its slots; undefined where it has none. */
  readonly date: string | undefined;
}

export function placedFinding<Of extends PartKind>(
  one: PartFound<Of>,
  part: MonthParts[Of],
  limits: MonthLimits,
): PlacedFinding {
  const { rule, level, found } = one;
  const { about, classes, values } = found;
  const message = rule.say(found, part, limits);
  const slots = classes.map(({ id }) => id);
  return {
    finding: { id: `${rule.id}:${about}`, rule: rule.id, level, slots, message, values },
    from: classes[0]?.from ?? Number.POSITIVE_INFINITY,
    date: lastDate(found),
  };
}

const lastDate = ({ classes }: MonthFound): string | undefined =>
  classes.reduce<string | undefined>((last, { date }) => (last === undefined || date > last ? date : last), undefined);

/** The first date about which anything is told: the later of `from` and `asOf`. */
export const toldFrom = ({ dates, asOf }: Pick<MonthFile, "dates" | "asOf">): string =>
  asOf !== undefined && asOf > dates.from ? asOf : dates.from;

const LEVELS: readonly MonthLevel[] = ["must", "look", "info"];

/** By level, then start of the first slot (none: last), then id by code unit. */
export function byWeight(a: PlacedFinding, b: PlacedFinding): number {
  const level = LEVELS.indexOf(a.finding.level) - LEVELS.indexOf(b.finding.level);
  if (level !== 0) return level;
  if (a.from !== b.from) return a.from < b.from ? -1 : 1;
  return a.finding.id < b.finding.id ? -1 : a.finding.id > b.finding.id ? 1 : 0;
}

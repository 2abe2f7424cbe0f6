/** Which classes keep the theme that was promised. */
import { NOISE } from "#lib/numbers/round.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import type { MonthClass, ThemeSums } from "../sums-types.ts";
import type { MonthTheme, PlanFacts } from "../types.ts";
import { shareOf } from "./plan-work.ts";

/** The groups of which a plan has less than the theme asks, with their share. Empty when it keeps the theme. */
export function shortOfTheme(plan: PlanFacts, { shares = {} }: MonthTheme): Partial<Record<Group, number>> {
  const short = GROUPS.flatMap((group): [Group, number][] => {
    const least = shares[group];
    const share = shareOf(plan, group);
    return least !== undefined && share < least - NOISE ? [[group, share]] : [];
  });
  return Object.fromEntries(short);
}

/** `classes`: those of from..to with the theme. */
export function themeSums(classes: readonly MonthClass[], theme: MonthTheme): ThemeSums {
  const keeps = ({ plan }: MonthClass): boolean =>
    plan !== undefined && Object.keys(shortOfTheme(plan, theme)).length === 0;
  return { promised: theme.promised ?? null, slots: classes.length, kept: classes.filter(keeps).length };
}

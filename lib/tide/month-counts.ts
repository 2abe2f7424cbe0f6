/** The month in numbers, for its head and its foot. */
import type { MonthSums } from "#lib/month/sums-types.ts";
import type { MonthFile, MonthFinding } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";

export interface MonthCounts {
  readonly classes: number;
  readonly must: number;
  readonly look: number;
  /** Classes that are on and have no plan. */
  readonly empty: number;
}

export function monthCounts(
  { dates }: Pick<MonthFile, "dates">,
  sums: MonthSums,
  findings: readonly MonthFinding[],
): MonthCounts {
  const on = sums.slots.filter(({ slot }) => slot.out !== true && slot.date >= dates.from && slot.date <= dates.to);
  const count = (level: string) => findings.filter((finding) => finding.level === level).length;
  return {
    classes: on.length,
    must: count("must"),
    look: count("look"),
    empty: on.filter(({ slot }) => slot.plan == null).length,
  };
}

/** "2 must fix before it can be signed, 16 look again." */
export function openCounts({ must, look }: MonthCounts): string {
  const parts = [
    ...(must > 0 ? [`${must} must fix before it can be signed`] : []),
    ...(look > 0 ? [`${look} look again`] : []),
  ];
  return parts.length === 0 ? "Nothing to fix." : `${parts.join(", ")}.`;
}

/** "Themes promised: 7 of 7 there", or nothing where nothing is promised. */
export function promiseWords(sums: MonthSums): string {
  const themes = Object.values(sums.themes).filter(({ promised }) => promised !== null);
  const kept = themes.filter(({ promised, slots }) => slots >= (promised ?? 0)).length;
  return themes.length === 0 ? "" : `Themes promised: ${kept} of ${plural(themes.length, "theme")} there`;
}

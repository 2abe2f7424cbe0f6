/** What a fill comes to, in words. Pure; English on every device. */

import { percent } from "#lib/formats/percent.ts";
import type { MonthSums } from "#lib/month/sums-types.ts";
import { plural } from "#lib/plan/format.ts";

interface FillOutcome {
  readonly proven: boolean;
  /** Proposed plans that were turned down. */
  readonly leftOut: number;
  /** Findings now, and with the plans that are still proposed. */
  readonly before: number;
  readonly after: number;
  /** Mean likeness of classes in a row, 0 to 1; null without two known plans in a row. */
  readonly alike: number | null;
}

/** How good it is, to stand out, and what it leaves to fix. */
export function outcomeWords({ proven, leftOut, before, after, alike }: FillOutcome): [best: string, rest: string] {
  const found = `Findings left: ${after} instead of ${before}.`;
  const like = alike === null ? "" : ` Classes in a row are ${percent(alike)} alike on average.`;
  if (leftOut > 0)
    return [`Without ${plural(leftOut, "plan")} you turned down`, `: others may now be better. ${found}${like}`];
  const best = proven ? "Proven best" : "Best found";
  return [best, `: other plans ${proven ? "come out no better" : "may come out better"}. ${found}${like}`];
}

/** Of the classes that each group of regulars has one after another. */
export function meanLikeness({ regulars }: MonthSums): number | null {
  const all = Object.values(regulars).flatMap(({ neighbours }) => neighbours.flatMap(({ likeness }) => likeness ?? []));
  return all.length === 0 ? null : all.reduce((a, b) => a + b, 0) / all.length;
}

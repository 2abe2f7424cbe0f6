/** Muscle groups as the columns of the sheet: from head to foot, each in its region. */

import type { MonthFile, MonthSlot } from "#lib/month/types.ts";
import { tagWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Group } from "#lib/plan/schema.ts";
import { REGIONS, type TideRegion, type TideTint } from "./types.ts";

/** From head to foot. Common practice, no source: which side of the body a push or a pull works. */
const REGION_OF: Readonly<Record<Group, TideRegion>> = {
  shoulders: "push",
  chest: "push",
  "upper-back": "pull",
  biceps: "pull",
  triceps: "push",
  forearms: "pull",
  abdominals: "trunk",
  obliques: "trunk",
  "lower-back": "trunk",
  "hip-flexors": "trunk",
  glutes: "legs",
  abductors: "legs",
  adductors: "legs",
  quadriceps: "legs",
  hamstrings: "legs",
  calves: "legs",
};

export const HEAD_TO_FOOT = Object.keys(REGION_OF) as readonly Group[];
export const regionOf = (group: Group): TideRegion => REGION_OF[group];
export const groupWords = (group: Group): string => tagWords(group);

/** A region that has at least this share of a class's work gives it its tint. */
const MOST_OF_IT = 0.45;

type Shares = Partial<Record<Group, number>>;

/** Work by group as one tint. */
function tideTintOf(work: Shares): TideTint {
  const sums = new Map<TideRegion, number>();
  for (const [group, seconds] of Object.entries(work) as [Group, number][]) {
    const region = regionOf(group);
    sums.set(region, (sums.get(region) ?? 0) + seconds);
  }
  const all = [...sums.values()].reduce((a, b) => a + b, 0);
  if (all <= 0) return "none";
  const most = REGIONS.reduce((a, b) => ((sums.get(b) ?? 0) > (sums.get(a) ?? 0) ? b : a));
  return (sums.get(most) ?? 0) >= MOST_OF_IT * all ? most : "whole";
}

/** A class's tint: by its plan's work, else by its theme's shares. */
export function tintOfSlot(month: Pick<MonthFile, "plans" | "themes">, slot: MonthSlot): TideTint {
  const plan = slot.plan == null ? undefined : own(month.plans, slot.plan);
  if (plan && plan.known !== false) return tideTintOf(plan.groups);
  const theme = slot.theme == null ? undefined : own(month.themes ?? {}, slot.theme);
  return tideTintOf(theme?.shares ?? {});
}

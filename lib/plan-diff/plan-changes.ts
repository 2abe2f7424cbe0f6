/** The differences between two plans as sentences, for a lead whose plan has changed since it was read. */

import { sameData } from "#lib/plan/same-data.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { equipmentChanges, headChanges, libraryChanges, standardsChanges } from "./head.ts";
import { itemChanges } from "./items.ts";

/**
 * One sentence for each change: the class first, then its items in their new order, then machines, standards and moves.
 * Empty only when the two are equal.
 */
export function planChanges(before: Plan, after: Plan): string[] {
  if (sameData(before, after)) return [];
  const changes = [...headChanges(before, after), ...itemChanges(before, after), ...studioChanges(before, after)];
  return changes.length > 0 ? changes : ["The plan is written differently."];
}

/** What changed besides the plates. */
export const changesBesides = (before: Plan, after: Plan): string[] => [
  ...headChanges(before, after),
  ...studioChanges(before, after),
];

const studioChanges = (before: Plan, after: Plan): string[] => [
  ...equipmentChanges(before.equipment, after.equipment),
  ...standardsChanges(before.standards, after.standards),
  ...libraryChanges(before.moves, after.moves),
];

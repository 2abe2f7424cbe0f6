/** What is different between two plans, in sentences for a person: shown to a lead whose reading has been overtaken. */

import { sameData } from "#lib/plan/same-data.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { equipmentChanges, headChanges, libraryChanges, standardsChanges } from "./head.ts";
import { itemChanges } from "./items.ts";

/**
 * One sentence a change: the class itself first, then its items in their new order, then what the plan carries along.
 * Complete: empty exactly when the two are the same data.
 */
export function planChanges(before: Plan, after: Plan): string[] {
  if (sameData(before, after)) return [];
  const changes = [
    ...headChanges(before, after),
    ...itemChanges(before, after),
    ...equipmentChanges(before.equipment, after.equipment),
    ...standardsChanges(before.standards, after.standards),
    ...libraryChanges(before.moves, after.moves),
  ];
  return changes.length > 0 ? changes : ["The plan is written differently."];
}

/** What is different between two plans, in sentences for a person: shown to a lead whose reading has been overtaken. */
import { equipmentChanges, headChanges, libraryChanges, standardsChanges } from "./diff/head.ts";
import { itemChanges } from "./diff/items.ts";
import { sameData } from "./same-data.ts";
import type { Plan } from "./schema.ts";

export interface PlanChange {
  /** A whole sentence. */
  readonly message: string;
}

/** The changes as they are sent to a page. Complete: empty exactly when the two plans are the same data. */
export const planChanges = (before: Plan, after: Plan): PlanChange[] =>
  changeSentences(before, after).map((message) => ({ message }));

/** One sentence a change: the class itself first, then its items in their new order, then what the plan carries along. */
export function changeSentences(before: Plan, after: Plan): string[] {
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

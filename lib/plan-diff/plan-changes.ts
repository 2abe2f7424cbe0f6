/** The differences between two plans as sentences, for a lead whose plan has changed since it was read. */

import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { sameData } from "#lib/plan/same-data.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { DiffUnits } from "./field-words.ts";
import { equipmentChanges, headChanges, libraryChanges } from "./head.ts";
import { itemChanges } from "./items.ts";
import { standardsChanges } from "./standards.ts";

/**
 * One sentence for each change: the class first, then its items in their new order, then machines, standards and moves.
 * Empty only when the two are equal. `f`: the units of whoever reads them.
 */
export function planChanges(before: Plan, after: Plan, f: DiffUnits = STANDARD_FORMATS): string[] {
  if (sameData(before, after)) return [];
  const changes = [...headChanges(before, after), ...itemChanges(before, after, f), ...studioChanges(before, after, f)];
  return changes.length > 0 ? changes : ["The plan is written differently."];
}

/** What changed besides the plates. */
export const changesBesides = (before: Plan, after: Plan, f: DiffUnits): string[] => [
  ...headChanges(before, after),
  ...studioChanges(before, after, f),
];

const studioChanges = (before: Plan, after: Plan, f: DiffUnits): string[] => [
  ...equipmentChanges(before.equipment, after.equipment, f),
  ...standardsChanges(before.standards, after.standards, f),
  ...libraryChanges(before.moves, after.moves, f),
];

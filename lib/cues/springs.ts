/** The springs of a set-up as a list, for screens that draw them. */
import { own } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";

/** How many of which spring, and how stiff each is. */
export interface SpringCount {
  readonly id: string;
  readonly label: string;
  readonly count: number;
  readonly stiffnessNPerMm: number;
}

/** Springs with a count above 0, in the order of the equipment. Springs that the room lacks come last, under their id. */
export function springCounts(plan: Plan, counts: Readonly<Record<string, number>>): SpringCount[] {
  const known = plan.equipment.springs.map(({ id, label, stiffnessNPerMm }) => ({ id, label, stiffnessNPerMm }));
  const unknown = Object.keys(counts)
    .filter((id) => !known.some((spring) => spring.id === id))
    .map((id) => ({ id, label: id, stiffnessNPerMm: 0 }));
  return [...known, ...unknown]
    .map((spring) => ({ ...spring, count: own(counts, spring.id) ?? 0 }))
    .filter((spring) => spring.count > 0);
}

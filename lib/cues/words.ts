/** Numbers and springs in words, as a coach says them and as the floor and the paper write them. */
import { own } from "#lib/plan/lookup.ts";
import type { ItemSide, Plan } from "#lib/plan/schema.ts";

const SMALL = "no one two three four five six seven eight nine ten eleven twelve".split(" ");

/** "three"; figures above twelve. */
export const countWord = (n: number): string => SMALL[n] ?? String(n);

/** How many of which spring, and how stiff one is, for a screen that draws it. */
export interface SpringCount {
  readonly id: string;
  readonly label: string;
  readonly count: number;
  readonly stiffnessNPerMm: number;
}

/** Springs with a count above zero, in the order of the equipment; one that the room has not comes last, under its id. */
export function springCounts(plan: Plan, counts: Readonly<Record<string, number>>): SpringCount[] {
  const known = plan.equipment.springs.map(({ id, label, stiffnessNPerMm }) => ({ id, label, stiffnessNPerMm }));
  const unknown = Object.keys(counts)
    .filter((id) => !known.some((spring) => spring.id === id))
    .map((id) => ({ id, label: id, stiffnessNPerMm: 0 }));
  return [...known, ...unknown]
    .map((spring) => ({ ...spring, count: own(counts, spring.id) ?? 0 }))
    .filter((spring) => spring.count > 0);
}

/** "three light, one heavy"; "no springs" when there is none. */
export function springWords(springs: readonly SpringCount[]): string {
  if (springs.length === 0) return "no springs";
  return springs.map((spring) => `${countWord(spring.count)} ${spring.label.toLowerCase()}`).join(", ");
}

const SIDE_WORDS: Record<ItemSide, string> = {
  left: "left",
  right: "right",
  both: "both sides",
  alternating: "side to side",
};
export const sideWord = (side: ItemSide): string => SIDE_WORDS[side];

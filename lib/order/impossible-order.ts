/** Why no order of a block keeps its constraints. */
import { itemName, listWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Block } from "./block.ts";
import { mayComeNext } from "./sequencing.ts";

/** Places everything that can be placed. The rest wait for each other in a circle, or for a pause. */
export function impossibleOrderSentence(plan: Plan, block: Block): string {
  const stuck = stuckUnits(block);
  const circle = circleOf(block, stuck);
  const names = (circle.length > 0 ? circle : stuck.slice(0, 1)).map((u) => nameOf(plan, block, u));
  if (circle.length === 0)
    return `${names[0] ?? "An item"} should come after a pause that no order can put before it. Move the pause, or drop the condition.`;
  return `${listWords(names)} should each come after another of them, so no order keeps them all. Drop one of these conditions.`;
}

function stuckUnits({ problem }: Block): number[] {
  const done = new Set<number>();
  let place = 0;
  let left = Array.from({ length: problem.count }, (_, u) => u);
  for (;;) {
    const unit = left.find((u) => mayComeNext(problem, u, { done, place }));
    if (unit === undefined) return left;
    done.add(unit);
    place += problem.sizes[unit] ?? 1;
    left = left.filter((u) => u !== unit);
  }
}

/** Follows the waits until an item comes up again; empty when one waits for none of the others. */
function circleOf({ problem }: Block, stuck: readonly number[]): number[] {
  const path: number[] = [];
  let unit = stuck[0];
  while (unit !== undefined && !path.includes(unit)) {
    path.push(unit);
    unit = problem.after[unit]?.find((other) => stuck.includes(other));
  }
  return unit === undefined ? [] : path.slice(path.indexOf(unit));
}

function nameOf(plan: Plan, block: Block, unit: number): string {
  const item = block.units[unit]?.[0];
  return item ? itemName(plan, item) : "";
}

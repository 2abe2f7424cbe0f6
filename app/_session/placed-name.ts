/** Names that tell items of one plan apart, with the time where several have one name. Pure. */
import { classClock } from "#lib/clock/clock.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { clockTime, itemName } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";

/** "Kneeling row, right"; where the plan has several of that name "Kneeling row, right at 4:29". */
export function placedName(plan: Plan, item: PlanItem): string {
  const name = itemName(plan, item);
  const at = startIfTwins(plan, item);
  return at === null ? name : `${name} at ${at}`;
}

/** When an item starts, if others have its name; null if its name is the only one. */
export function startIfTwins(plan: Plan, item: PlanItem): string | null {
  if ((howOften(plan).get(itemName(plan, item)) ?? 0) < 2) return null;
  const start = starts(plan).get(item.id);
  return start === undefined ? null : clockTime(start);
}

/** How many items have a name. */
const howOften = perValue((plan: Plan) => {
  const counts = new Map<string, number>();
  for (const item of plan.items) {
    const name = itemName(plan, item);
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
});

const starts = perValue((plan: Plan) => new Map(classClock(plan).rows.map(({ item, start }) => [item, start])));

/** By ids, as a list: "A, B and C". */
export function placedNames(plan: Plan, ids: readonly string[]): string {
  const names = ids.flatMap((id) => {
    const item = itemById(plan, id);
    return item ? [placedName(plan, item)] : [];
  });
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

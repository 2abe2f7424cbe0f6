/** What a finding is about, in the plan as it is now. */
import { itemById } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";

/** The one move that it is about; undefined where it is about several, or none. */
export function moveOfFinding(plan: Plan, { items }: Pick<Finding, "items">): MoveItem | undefined {
  const [id] = items;
  const item = id === undefined || items.length !== 1 ? undefined : itemById(plan, id);
  return item?.kind === "move" ? item : undefined;
}

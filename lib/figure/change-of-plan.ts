/** The change into an item of a plan as a figure. */
import { isMoveItem, moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { type ChangeFigure, changeFigure, type FigureSetup } from "./change.ts";

/** The two set-ups of a change and the machine: all that its figure depends on. */
export interface ChangeSetups {
  readonly from: FigureSetup;
  readonly to: FigureSetup;
  readonly equipment: Plan["equipment"];
}

/** Null for the first move, and where one of the two moves is not known. */
export function changeSetups(plan: Plan, itemId: string): ChangeSetups | null {
  const at = plan.items.findIndex(({ id }) => id === itemId);
  const item = plan.items[at];
  const before = plan.items.slice(0, Math.max(0, at)).findLast(isMoveItem);
  const [from, to] = [before && setupFor(plan, before), item && isMoveItem(item) ? setupFor(plan, item) : undefined];
  return from && to ? { from, to, equipment: plan.equipment } : null;
}

/** Null as for `changeSetups`. */
export function changeInto(plan: Plan, itemId: string): ChangeFigure | null {
  const setups = changeSetups(plan, itemId);
  return setups && changeFigure(setups.from, setups.to, setups.equipment);
}

function setupFor(plan: Plan, item: MoveItem): FigureSetup | undefined {
  const move = moveOf(plan, item);
  const side = item.side === "alternating" ? undefined : item.side;
  return move && { move, springs: item.springs, side, facing: item.facing };
}

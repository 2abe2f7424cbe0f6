/**
 * Fewer set-ups: the order of a block with the least seconds of changes between what comes before and after it. Exact up
 * to 16 units (an item, or the items of a tie); above that the best order found, marked as such.
 */
import { ACTIONS, type Action, type Plan, type PlanItem } from "#lib/plan/schema.ts";
import { type ActionCounts, changeBetween, type Setup, setupOf } from "#lib/transitions/transitions.ts";
import { asItems, type Block, blockOf } from "./block.ts";
import { lowerBound } from "./bound.ts";
import type { OrderConstraint } from "./constraints.ts";
import { impossibleOrderSentence } from "./impossible-order.ts";
import { keepsRules, sequenceSeconds } from "./sequencing.ts";
import { solveOrder } from "./solve-order.ts";

export type BlockOrder =
  | {
      readonly ok: true;
      /** Estimated seconds of all changes from the last move before the block to the first after it. */
      readonly before: number;
      readonly after: number;
      /** False: better orders may exist. */
      readonly proven: boolean;
      /** Every item of the block, moves and pauses, in the new order. */
      readonly items: readonly string[];
      readonly actionsBefore: ActionCounts;
      readonly actionsAfter: ActionCounts;
      /** The constraints on items of the block, whether they cost seconds or not. */
      readonly heldBy: readonly OrderConstraint[];
    }
  | { readonly ok: false; readonly say: string };

/**
 * The best order of the items under a heading. The items of a tie (`keep`) follow each other directly in their order, and
 * an item follows those in its `after`. A tie across the block's edge stays at that edge. An `after` that names something
 * above the block is always kept; one that names something below it never can be. Pauses keep their place in the sequence,
 * or go after a tie that they would split. Changes count with their estimates, whatever is planned. An item of an unknown
 * move counts nothing and may go anywhere.
 *
 * The present order stays unless another takes fewer seconds or it breaks a constraint. Where no order can save
 * `worthSeconds` the search ends at once. Never throws. The same plan always gets the same answer.
 */
export function bestOrder(plan: Plan, headingId: string, worthSeconds = 1): BlockOrder {
  const found = blockOf(plan, headingId);
  if (!found.ok) return found;
  const { block } = found;
  const solved = solveBlock(block, worthSeconds);
  if (!solved) return { ok: false, say: impossibleOrderSentence(plan, block) };
  const { items, proven } = solved;
  const before = changesThrough(plan, block, block.items);
  const after = changesThrough(plan, block, items);
  return {
    ok: true,
    before: before.seconds,
    after: after.seconds,
    proven,
    items: items.map((item) => item.id),
    actionsBefore: before.actions,
    actionsAfter: after.actions,
    heldBy: block.holds,
  };
}

/** The block's items in the best order, or in the present one where no other is quicker or worth it. */
function solveBlock(block: Block, worth: number): { items: readonly PlanItem[]; proven: boolean } | null {
  const stands = standsAlready(block);
  const seconds = stands ? sequenceSeconds(block.problem, present(block)) : Number.POSITIVE_INFINITY;
  const least = stands ? lowerBound(block.problem) : 0;
  if (stands && seconds - least < worth) return { items: block.items, proven: seconds <= least };
  const solved = solveOrder(block.problem);
  if (!solved) return null;
  const items = seconds <= solved.seconds ? block.items : asItems(block, solved.order);
  return { items, proven: solved.proven };
}

const present = (block: Block): number[] => block.units.map((_, unit) => unit);

/** Whether the present order keeps all constraints. */
function standsAlready(block: Block): boolean {
  const order = present(block);
  return keepsRules(block.problem, order) && asItems(block, order).every((item, i) => item === block.items[i]);
}

/** Seconds and actions from the last known set-up before the block to the first after it. */
function changesThrough(plan: Plan, block: Block, items: readonly PlanItem[]) {
  const inside = items.flatMap((item) => (item.kind === "move" ? (setupOf(plan, item) ?? []) : []));
  const actions: Partial<Record<Action, number>> = {};
  let seconds = 0;
  let last: Setup | null = block.above;
  for (const setup of [...inside, ...(block.below ? [block.below] : [])]) {
    const change = changeBetween(plan, last, setup);
    seconds += change.estimate;
    for (const action of ACTIONS) {
      const count = change.actions[action];
      if (count !== undefined) actions[action] = (actions[action] ?? 0) + count;
    }
    last = setup;
  }
  return { seconds, actions };
}

/** What *Fewer set-ups* shows: both orders with their changes, what is saved by kind, and the findings of each. Pure. */

import { checkPlan } from "#lib/analysis/check-plan.ts";
import { classClock } from "#lib/clock/clock.ts";
import { type BlockOrder, bestOrder } from "#lib/order/order.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { movedIds } from "#lib/plan/moved.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { blockAround } from "#lib/plan/ties.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { type Change, changesInto, NO_CHANGE } from "#lib/transitions/transitions.ts";

export type FoundOrder = BlockOrder & { readonly ok: true };

/** One item of the block in one of the two orders. */
export interface OrderLine {
  readonly item: PlanItem;
  /** Place in the block, from 1. */
  readonly place: number;
  /** Its place in the other order. */
  readonly other: number;
  /** One of the few that move, while the others stay where they are. */
  readonly moved: boolean;
  /** The change into it; no change for a pause. */
  readonly change: Change;
  /** The first move of the class, which is set up during the opening. */
  readonly opens: boolean;
}

export interface OrderList {
  readonly lines: readonly OrderLine[];
  /** The first move after the block, and the change into it. */
  readonly next: { readonly item: MoveItem; readonly change: Change } | undefined;
}

export interface OrderPreview {
  readonly order: FoundOrder;
  readonly present: OrderList;
  readonly better: OrderList;
  /** The items that move, in the new order. */
  readonly moved: readonly OrderLine[];
  /** Seconds on the class's clock. */
  readonly clock: { readonly before: number; readonly after: number };
  /** Move items with a planned change that would become another change. */
  readonly planned: readonly MoveItem[];
  readonly findings: FindingsCompared;
}

interface FindingsCompared {
  readonly before: number;
  readonly after: number;
  readonly added: readonly Finding[];
  readonly gone: readonly Finding[];
}

/** `free`: planned times of changes that become others are dropped, so that their estimates count. */
export interface OrderChoice {
  readonly heading: string;
  readonly free: boolean;
}

export interface SolvedBlock {
  readonly order: BlockOrder;
  /** Estimated seconds of the best order if no item were held; null where none is, or it makes no difference. */
  readonly unheld: number | null;
}

/** The slow part: up to some tenths of a second. Depends on nothing but what `solvedFrom` returns. */
export function solveBlock(plan: Plan, heading: string): SolvedBlock {
  const order = bestOrder(plan, heading);
  return { order, unheld: order.ok ? unheldSeconds(plan, heading, order) : null };
}

/** Everything that the order of a block depends on, as text; scripts and seconds are not part of it. */
export function solvedFrom({ equipment, people = 1, moves, items }: Plan, heading: string): string {
  const setups = items.map((item) => {
    if (item.kind !== "move") return [item.id, item.kind];
    const { script: _script, seconds: _seconds, locked: _locked, range: _range, ...setup } = item;
    return setup;
  });
  return JSON.stringify([heading, setups, equipment, people, moves]);
}

export function orderPreview(plan: Plan, order: FoundOrder, { heading, free }: OrderChoice): OrderPreview {
  const ordered = planInOrder(plan, heading, order.items);
  const planned = staleTimes(plan, ordered);
  const after = free ? withoutPlanned(ordered, planned) : ordered;
  const block = blockAround(plan, heading)?.items ?? [];
  const was = block.map((item) => item.id);
  const moved = movedIds(was, order.items);
  const lists = { was, is: order.items, moved };
  const better = listOf(ordered, heading, { ...lists, here: order.items });
  return {
    order,
    present: listOf(plan, heading, { ...lists, here: was }),
    better,
    moved: better.lines.filter((line) => line.moved),
    clock: { before: classClock(plan).total, after: classClock(after).total },
    planned,
    findings: compare(checkPlan(plan).findings, checkPlan(after).findings),
  };
}

/** The plan with the block in this order; everything else stays where it is. */
export function planInOrder(plan: Plan, heading: string, ids: readonly string[]): Plan {
  const byId = new Map(plan.items.map((item) => [item.id, item]));
  const block = new Set(ids);
  const at = plan.items.findIndex((item) => item.id === heading) + 1;
  const placed = ids.flatMap((id) => byId.get(id) ?? []);
  const rest = plan.items.filter((item) => !block.has(item.id));
  return { ...plan, items: [...rest.slice(0, at), ...placed, ...rest.slice(at)] };
}

/** Moves whose change was planned for another move before them than the new order has. */
function staleTimes(before: Plan, after: Plan): MoveItem[] {
  const above = (plan: Plan) => {
    const moves = plan.items.filter(isMoveItem);
    return new Map(moves.map((item, i) => [item.id, moves[i - 1]?.id]));
  };
  const [was, is] = [above(before), above(after)];
  return after.items
    .filter(isMoveItem)
    .filter((item) => item.transitionSeconds !== undefined && was.get(item.id) !== is.get(item.id));
}

function withoutPlanned(plan: Plan, planned: readonly MoveItem[]): Plan {
  const ids = new Set(planned.map((item) => item.id));
  const items = plan.items.map((item) => {
    if (item.kind !== "move" || !ids.has(item.id)) return item;
    const { transitionSeconds: _, ...rest } = item;
    return rest;
  });
  return { ...plan, items };
}

interface Orders {
  readonly was: readonly string[];
  readonly is: readonly string[];
  readonly moved: ReadonlySet<string>;
  readonly here: readonly string[];
}

function listOf(plan: Plan, heading: string, { was, is, moved, here }: Orders): OrderList {
  const changes = changesInto(plan);
  const other = here === is ? was : is;
  const first = plan.items.find(isMoveItem);
  const block = blockAround(plan, heading)?.items ?? [];
  const lines = block.map((item, i) => ({
    item,
    place: i + 1,
    other: other.indexOf(item.id) + 1,
    moved: moved.has(item.id),
    change: changes.get(item.id) ?? NO_CHANGE,
    opens: item === first,
  }));
  const end = plan.items.findIndex((item) => item.id === heading) + block.length + 1;
  const next = plan.items.slice(end).find(isMoveItem);
  return { lines, next: next && { item: next, change: changes.get(next.id) ?? NO_CHANGE } };
}

function compare(before: readonly Finding[], after: readonly Finding[]): FindingsCompared {
  const key = (finding: Finding): string => finding.key ?? `${finding.rule}:${finding.message}`;
  const [was, is] = [new Set(before.map(key)), new Set(after.map(key))];
  return {
    before: before.length,
    after: after.length,
    added: after.filter((finding) => !was.has(key(finding))),
    gone: before.filter((finding) => !is.has(key(finding))),
  };
}

function unheldSeconds(plan: Plan, heading: string, order: FoundOrder): number | null {
  if (order.heldBy.length === 0) return null;
  const block = new Set(order.items);
  const items = plan.items.map((item) => {
    if (item.kind !== "move" || !block.has(item.id)) return item;
    const { keep: _keep, after: _after, ...rest } = item;
    return rest;
  });
  const free = bestOrder({ ...plan, items }, heading);
  return free.ok && free.after < order.after ? free.after : null;
}

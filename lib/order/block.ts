/**
 * A block of a plan as units to put in order. The items of a tie are one unit; each unit knows which ones it must
 * follow.
 */
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { type Setup, setupOf } from "#lib/transitions/transitions.ts";
import { Constraints, type OrderConstraint } from "./constraints.ts";
import { transitiveReduction } from "./reduce.ts";
import { secondsBetween } from "./seconds-between.ts";
import type { Sequencing } from "./sequencing.ts";

export interface Block {
  /** All items under the heading, in their present order. */
  readonly items: readonly PlanItem[];
  /** Move items in their present order, those of a tie together; each unit has at least one item. */
  readonly units: readonly (readonly MoveItem[])[];
  readonly problem: Sequencing;
  readonly holds: readonly OrderConstraint[];
  /** The last set-up before the block and the first after it. */
  readonly above: Setup | null;
  readonly below: Setup | null;
}
export type BlockOf = { readonly ok: true; readonly block: Block } | { readonly ok: false; readonly say: string };

/** The block under a heading, or a sentence that says why no order keeps its constraints. */
export function blockOf(plan: Plan, headingId: string): BlockOf {
  const from = plan.items.findIndex((item) => item.kind === "heading" && item.id === headingId);
  if (from < 0) return { ok: false, say: `There is no heading "${headingId}" in this plan.` };
  const next = plan.items.findIndex((item, i) => i > from && item.kind === "heading");
  const around = { from: from + 1, to: next < 0 ? plan.items.length : next };
  const items = plan.items.slice(around.from, around.to);
  const units = unitsOf(items);
  const constraints = new Constraints(plan, around, units);
  const say = constraints.read();
  if (say) return { ok: false, say };
  const setups = units.map((unit) => setupsOf(plan, unit));
  const above = firstSetup(plan, { from: around.from - 1, to: -1, step: -1 });
  const below = firstSetup(plan, { from: around.to, to: plan.items.length, step: 1 });
  const problem: Sequencing = {
    count: units.length,
    seconds: secondsBetween(plan, { above, units: setups, below }),
    after: transitiveReduction(constraints.after.map((others) => [...others])),
    sizes: units.map((unit) => unit.length),
    earliest: constraints.earliest,
    silent: setups.map((list) => list.length === 0),
  };
  return { ok: true, block: { items, units, problem, holds: constraints.holds, above, below } };
}

/**
 * A block's items with its units in this order. Each pause follows as many moves as it does now, or the unit that it would
 * split.
 */
export function asItems({ items, units }: Block, order: readonly number[]): PlanItem[] {
  const result: PlanItem[] = [];
  const pauses: { item: PlanItem; behind: number }[] = [];
  let moves = 0;
  for (const item of items) {
    if (isMove(item)) moves++;
    else pauses.push({ item, behind: moves });
  }
  let placed = 0;
  for (const unit of [...order, -1]) {
    while (pauses[0] && (pauses[0].behind <= placed || unit === -1))
      result.push(...pauses.splice(0, 1).map((p) => p.item));
    result.push(...(units[unit] ?? []));
    placed += units[unit]?.length ?? 0;
  }
  return result;
}

/** The first known set-up from one index to another. */
function firstSetup(plan: Plan, way: { from: number; to: number; step: number }): Setup | null {
  for (let place = way.from; place !== way.to; place += way.step) {
    const item = plan.items[place];
    const setup = item?.kind === "move" ? setupOf(plan, item) : null;
    if (setup) return setup;
  }
  return null;
}

const setupsOf = (plan: Plan, items: readonly PlanItem[]): Setup[] =>
  items.flatMap((item) => (item.kind === "move" ? (setupOf(plan, item) ?? []) : []));

const isMove = (item: PlanItem): item is MoveItem => item.kind === "move";

/** Move items one by one, those of a tie together at the place of the first. */
function unitsOf(items: readonly PlanItem[]): MoveItem[][] {
  const units: MoveItem[][] = [];
  const ties = new Map<string, MoveItem[]>();
  for (const item of items.filter(isMove)) {
    const tied = item.keep === undefined ? undefined : ties.get(item.keep);
    if (tied) tied.push(item);
    else {
      const unit = [item];
      units.push(unit);
      if (item.keep !== undefined) ties.set(item.keep, unit);
    }
  }
  return units;
}

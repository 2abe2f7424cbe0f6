/** A block of a plan as units to put in order: what a tie holds together is one unit, what must wait knows for whom. */
import { itemName } from "#lib/plan/format.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { changeBetween, type Setup, setupOf } from "#lib/transitions/transitions.ts";
import type { Sequencing } from "./sequencing.ts";

/** One constraint that holds an item: it stays right behind `other` (keep), or somewhere behind it (after). */
export interface Hold {
  readonly item: string;
  readonly by: "keep" | "after";
  readonly other: string;
}

export interface Block {
  /** All items under the heading, as they stand. */
  readonly items: readonly PlanItem[];
  /** Move items in the order in which they stand, a tie's together; each at least one item. */
  readonly units: readonly (readonly MoveItem[])[];
  readonly problem: Sequencing;
  readonly holds: readonly Hold[];
  /** The last set-up before the block and the first after it. */
  readonly above: Setup | null;
  readonly below: Setup | null;
}
export type BlockOf = { readonly ok: true; readonly block: Block } | { readonly ok: false; readonly say: string };

/** The block under a heading, or a sentence why it has no order that keeps its constraints. */
export function blockOf(plan: Plan, headingId: string): BlockOf {
  const from = plan.items.findIndex((item) => item.kind === "heading" && item.id === headingId);
  if (from < 0) return { ok: false, say: `There is no heading "${headingId}" in this plan.` };
  const next = plan.items.findIndex((item, i) => i > from && item.kind === "heading");
  const around = { from: from + 1, to: next < 0 ? plan.items.length : next };
  const items = plan.items.slice(around.from, around.to);
  const units = unitsOf(items);
  const rules = new Rules(plan, around, units);
  const say = rules.read();
  if (say) return { ok: false, say };
  const setups = units.map((unit) => setupsOf(plan, unit));
  const above = setupsOf(plan, plan.items.slice(0, around.from)).at(-1) ?? null;
  const below = setupsOf(plan, plan.items.slice(around.to)).at(0) ?? null;
  const problem: Sequencing = {
    count: units.length,
    seconds: secondsBetween(plan, { above, units: setups, below }),
    after: rules.after.map((others) => [...others]),
    sizes: units.map((unit) => unit.length),
    earliest: rules.earliest,
    silent: setups.map((list) => list.length === 0),
  };
  return { ok: true, block: { items, units, problem, holds: rules.holds, above, below } };
}

/**
 * A block's items with its units in this order. Each pause stands behind as many moves as it does now, or behind the unit
 * that it would part.
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

const setupsOf = (plan: Plan, items: readonly PlanItem[]): Setup[] =>
  items.flatMap((item) => (item.kind === "move" ? (setupOf(plan, item) ?? []) : []));

const isMove = (item: PlanItem): item is MoveItem => item.kind === "move";

/** Move items one by one, those of one tie together where the first of them stands. */
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

interface Around {
  readonly from: number;
  readonly to: number;
}

/** The constraints of a block, read from its items. */
class Rules {
  readonly holds: Hold[] = [];
  readonly after: Set<number>[];
  readonly earliest: number[];
  private readonly unitOf = new Map<string, number>();
  private readonly placeOf: ReadonlyMap<string, number>;
  /** Move items of the block before each of its items. */
  private readonly movesBefore: readonly number[];

  constructor(
    private readonly plan: Plan,
    private readonly around: Around,
    private readonly units: readonly (readonly MoveItem[])[],
  ) {
    this.after = units.map(() => new Set());
    this.earliest = units.map(() => 0);
    this.placeOf = new Map(plan.items.map((item, place) => [item.id, place]));
    let moves = 0;
    this.movesBefore = plan.items.slice(around.from, around.to).map((item) => (isMove(item) ? moves++ : moves));
    units.forEach((unit, u) => {
      for (const item of unit) this.unitOf.set(item.id, u);
    });
  }

  /** A sentence when an item can never come after what it should. Circles show only once an order is looked for. */
  read(): string | undefined {
    this.readEdges();
    for (const [u, unit] of this.units.entries()) {
      for (const [i, item] of unit.entries()) {
        const before = unit[i - 1];
        if (before) this.holds.push({ item: item.id, by: "keep", other: before.id });
        for (const other of item.after ?? []) {
          const wrong = this.readAfter(u, i, other);
          if (wrong) return wrong;
        }
      }
    }
    return undefined;
  }

  private readAfter(u: number, i: number, other: string): string | undefined {
    const item = this.units[u]?.[i];
    const place = this.placeOf.get(other);
    if (!item || place === undefined || place < this.around.from) return undefined;
    const wish = `${this.name(item.id)} is to come after ${this.name(other)}`;
    if (place >= this.around.to) return `${wish}, which stands further down than this block.`;
    const unit = this.unitOf.get(other);
    this.holds.push({ item: item.id, by: "after", other });
    if (unit === undefined) {
      // Of a block's own items only a pause is in no unit: it keeps its place, so the item's unit begins behind that.
      this.earliest[u] = Math.max(this.earliest[u] ?? 0, this.movesBefore[place - this.around.from] ?? 0);
    } else if (unit !== u) this.after[u]?.add(unit);
    else if (other === item.id) return `${this.name(other)} is to come after itself.`;
    else if ((this.units[u] ?? []).findIndex((it) => it.id === other) >= i)
      return `${wish}, but their tie puts it before.`;
    return undefined;
  }

  /** A tie that reaches over the block's edge holds its unit to that edge, where it stands there now. */
  private readEdges(): void {
    const { items } = this.plan;
    const above = items.slice(0, this.around.from).findLast(isMove);
    const below = items.slice(this.around.to).find(isMove);
    const inside = items.slice(this.around.from, this.around.to).filter(isMove);
    const [first, last] = [inside.at(0), inside.at(-1)];
    if (first && above && first.keep !== undefined && first.keep === above.keep) {
      this.holds.push({ item: first.id, by: "keep", other: above.id });
      const u = this.unitOf.get(first.id) ?? 0;
      for (const [v, others] of this.after.entries()) if (v !== u) others.add(u);
    }
    if (last && below && last.keep !== undefined && last.keep === below.keep) {
      this.holds.push({ item: last.id, by: "keep", other: below.id });
      const u = this.unitOf.get(last.id) ?? 0;
      for (const v of this.units.keys()) if (v !== u) this.after[u]?.add(v);
    }
  }

  private name(id: string): string {
    const item = this.plan.items[this.placeOf.get(id) ?? -1];
    return item ? itemName(this.plan, item) : id;
  }
}

interface Line {
  readonly above: Setup | null;
  readonly units: readonly (readonly Setup[])[];
  readonly below: Setup | null;
}

/**
 * Seconds from the end of one unit to the start of the next, 0 where there is no move on one side. Worked out once for
 * any two different set-ups, when asked for: with thousands of items not all are.
 */
function secondsBetween(plan: Plan, { above, units, below }: Line): (unit: number, next: number) => number {
  const kinds = new Kinds();
  const starts = [...units.map((unit) => unit[0] ?? null), below].map((setup) => kinds.of(setup));
  const ends = [...units.map((unit) => unit.at(-1) ?? null), above].map((setup) => kinds.of(setup));
  const { list } = kinds;
  // One more than the seconds; 0 is not worked out yet.
  const found = new Int32Array(list.length ** 2);
  return (unit: number, next: number): number => {
    const [a, b] = [ends[unit] ?? 0, starts[next] ?? 0];
    const at = a * list.length + b;
    const seconds = found[at] ?? 0;
    if (seconds > 0) return seconds - 1;
    const { estimate } = changeBetween(plan, list[a] ?? null, list[b] ?? null);
    found[at] = estimate + 1;
    return estimate;
  };
}

/** Different set-ups, numbered. */
class Kinds {
  readonly list: (Setup | null)[] = [];
  private readonly numbers = new Map<string, number>();

  of(setup: Setup | null): number {
    const springs = Object.entries(setup?.springs ?? {}).filter(([, n]) => n > 0);
    const key = JSON.stringify(setup && { ...setup, springs: springs.sort(([a], [b]) => (a < b ? -1 : 1)) });
    const known = this.numbers.get(key);
    if (known !== undefined) return known;
    this.list.push(setup);
    this.numbers.set(key, this.list.length - 1);
    return this.list.length - 1;
  }
}

/** The constraints on the items of a block: ties, and what comes after what. */
import { itemName } from "#lib/plan/format.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";

/** One constraint of an item: it stays right after `other` (keep), or somewhere after it (after). */
export interface OrderConstraint {
  readonly item: string;
  readonly by: "keep" | "after";
  readonly other: string;
}

/** Indexes of a block among the plan's items: `from` up to but not including `to`. */
export interface BlockRange {
  readonly from: number;
  readonly to: number;
}

/** The constraints of a block, read from its items. */
export class Constraints {
  readonly holds: OrderConstraint[] = [];
  readonly after: Set<number>[];
  readonly earliest: number[];
  private readonly unitOf = new Map<string, number>();
  private places: ReadonlyMap<string, number> | undefined;
  /** Move items of the block before each of its items. */
  private readonly movesBefore: readonly number[];

  constructor(
    private readonly plan: Plan,
    private readonly around: BlockRange,
    private readonly units: readonly (readonly MoveItem[])[],
  ) {
    this.after = units.map(() => new Set());
    this.earliest = units.map(() => 0);
    let moves = 0;
    this.movesBefore = plan.items.slice(around.from, around.to).map((item) => (isMove(item) ? moves++ : moves));
    units.forEach((unit, u) => {
      for (const item of unit) this.unitOf.set(item.id, u);
    });
  }

  /** A sentence where an item can never come after what it should. Circles are found only when an order is searched for. */
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
    const place = this.placeOf(other);
    if (!item || place === undefined || place < this.around.from) return undefined;
    const wish = `${this.name(item.id)} should come after ${this.name(other)}`;
    if (place >= this.around.to)
      return `${wish}, which is further down than this block. Move it, or drop the condition.`;
    const unit = this.unitOf.get(other);
    this.holds.push({ item: item.id, by: "after", other });
    if (unit === undefined) {
      // Only a pause is in no unit. It keeps its place, so the item's unit begins after it.
      this.earliest[u] = Math.max(this.earliest[u] ?? 0, this.movesBefore[place - this.around.from] ?? 0);
    } else if (unit !== u) this.after[u]?.add(unit);
    else if (other === item.id) return `${this.name(other)} should come after itself. Drop that condition.`;
    else if ((this.units[u] ?? []).findIndex((it) => it.id === other) >= i)
      return `${wish}, but their tie puts it before. Untie them, or drop the condition.`;
    return undefined;
  }

  /** A tie that crosses the block's edge keeps its unit at that edge, if it is there now. */
  private readEdges(): void {
    const { items } = this.plan;
    const inside = items.slice(this.around.from, this.around.to).filter(isMove);
    const [first, last] = [inside.at(0), inside.at(-1)];
    if (first?.keep === undefined && last?.keep === undefined) return;
    const above = items.slice(0, this.around.from).findLast(isMove);
    const below = items.slice(this.around.to).find(isMove);
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

  /** Worked out on first use, since most blocks have no such constraints. */
  private placeOf(id: string): number | undefined {
    this.places ??= new Map(this.plan.items.map((item, place) => [item.id, place]));
    return this.places.get(id);
  }

  private name(id: string): string {
    const item = this.plan.items[this.placeOf(id) ?? -1];
    return item ? itemName(this.plan, item) : id;
  }
}

const isMove = (item: PlanItem): item is MoveItem => item.kind === "move";

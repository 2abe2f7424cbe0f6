/**
 * How far must people move to feel this load with the springs that are already on? The answer is in whole centimetres,
 * since nobody sits down more exactly, with the loads at both ends.
 */
import { isMoveItem, moveOf, own } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { changesInto } from "#lib/transitions/transitions.ts";
import { forceN, loadRows, slackMm, springItemBefore, travelMm } from "./load.ts";

export interface KeptSprings {
  /** The spring item before, whose springs would stay on. */
  readonly before: MoveItem;
  /** Where to start, mm from the move's usual place, in whole centimetres. */
  readonly offsetMm: number;
  /** The same, from where the item before starts; above 0 is further from the anchor. */
  readonly byMm: number;
  readonly newtons: { readonly atStart: number; readonly atMid: number; readonly atEnd: number };
  /** Travel at the start in which the kept springs would hang slack, mm; 0 where they pull at once. */
  readonly slackMm: number;
  /** The middle load that the item has now. */
  readonly wantedN: number;
  /** Why they cannot stay on, in the studio's order of springs; empty when they can. */
  readonly against: readonly AgainstKeeping[];
  /** Seconds of changes that the class saves, by the estimates. */
  readonly savedSeconds: number;
}

/** A limit on one spring of the room that the kept springs would break. */
export interface AgainstKeeping {
  /** The studio's name of it. */
  readonly spring: string;
  readonly by: "library-least" | "library-most" | "room";
  readonly limit: number;
}

/**
 * Null unless the item's springs differ from those of the spring item before and some offset within reach gives the same
 * middle load with those. Also null where the item has no springs on, where the machine lacks them, or where the load is
 * outside what the library asks for.
 */
export function keepSprings(plan: Plan, item: MoveItem): KeptSprings | null {
  const row = loadRows(plan).find((r) => r.item === item.id);
  const before = springItemBefore(plan, item.id);
  const move = moveOf(plan, item);
  if (!row || row.offsetToMatchPrevious === null || !row.atMidN || !before || !move) return null;
  if (!isWorthMatching(plan, move, { item, atMidN: row.atMidN })) return null;
  const offsetMm = Math.round(row.offsetToMatchPrevious / 10) * 10;
  const [from, to] = travelMm(plan, move);
  const at = (xMm: number) => forceN(plan.equipment, before.springs, { xMm, offsetMm });
  return {
    before,
    offsetMm,
    byMm: offsetMm - (before.offsetMm ?? 0),
    newtons: { atStart: at(from), atMid: at((from + to) / 2), atEnd: at(to) },
    slackMm: slackMm(plan.equipment, before.springs, { fromMm: from, toMm: to, offsetMm }),
    wantedN: row.atMidN,
    against: againstKeeping(plan, move, before.springs),
    savedSeconds: setupSeconds(plan) - setupSeconds(withKept(plan, { ...item, springs: before.springs, offsetMm })),
  };
}

/** People are not sent to a place where the load is outside what the move is meant for. */
function isWorthMatching({ equipment }: Plan, { loadN }: Move, at: { item: MoveItem; atMidN: number }): boolean {
  const isThere = Object.entries(at.item.springs).every(
    ([id, n]) => n <= (equipment.springs.find((spring) => spring.id === id)?.count ?? 0),
  );
  return isThere && (!loadN || (at.atMidN >= loadN[0] && at.atMidN <= loadN[1]));
}

/** Lists the springs that `allows` in `neighbours.ts` would refuse. */
function againstKeeping({ equipment }: Plan, { springs: range }: Move, springs: MoveItem["springs"]): AgainstKeeping[] {
  return equipment.springs.flatMap(({ id, label, count }): AgainstKeeping[] => {
    const n = own(springs, id) ?? 0;
    const [least, most] = [own(range?.min, id) ?? 0, own(range?.max, id) ?? Number.POSITIVE_INFINITY];
    if (n < least) return [{ spring: label, by: "library-least", limit: least }];
    if (n > most) return [{ spring: label, by: "library-most", limit: most }];
    return n > count ? [{ spring: label, by: "room", limit: count }] : [];
  });
}

const withKept = (plan: Plan, kept: MoveItem): Plan => ({
  ...plan,
  items: plan.items.map((item) => (isMoveItem(item) && item.id === kept.id ? kept : item)),
});

const setupSeconds = (plan: Plan): number => [...changesInto(plan).values()].reduce((sum, c) => sum + c.estimate, 0);

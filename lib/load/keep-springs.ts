/**
 * The question coaches ask: how far must people move to feel this load with the springs that are already on? Answered
 * in whole centimetres, because nobody sits down more exactly, with what it does to the load at both ends.
 */
import { isMoveItem, moveOf, own } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { changesInto } from "#lib/transitions/transitions.ts";
import { forceN, loadRows, springItemBefore, travelMm } from "./load.ts";

export interface KeptSprings {
  /** The spring item before, whose springs would stay on. */
  readonly before: MoveItem;
  /** Where to start, mm from the move's usual place; whole centimetres. */
  readonly offsetMm: number;
  /** The same from where the item before starts: above 0 further from the anchor. */
  readonly byMm: number;
  readonly newtons: { readonly atStart: number; readonly atMid: number; readonly atEnd: number };
  /** The middle load that the item has now. */
  readonly wantedN: number;
  /** What stands against keeping them, in the studio's order of springs; empty: they can stay on. */
  readonly against: readonly AgainstKeeping[];
  /** Seconds of set-up that the class saves, by the estimates of its changes. */
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
 * Not null exactly when the item's springs differ from those of the spring item before and some offset in reach gives
 * its middle load with them. No load is matched where none is on, where the machine lacks the springs that make it, or
 * where the library asks for another.
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
    wantedN: row.atMidN,
    against: againstKeeping(plan, move, before.springs),
    savedSeconds: setupSeconds(plan) - setupSeconds(withKept(plan, { ...item, springs: before.springs, offsetMm })),
  };
}

/** Nobody is sent to a place where they would feel a load that the move is not meant for. */
function isWorthMatching({ equipment }: Plan, { loadN }: Move, at: { item: MoveItem; atMidN: number }): boolean {
  const isThere = Object.entries(at.item.springs).every(
    ([id, n]) => n <= (equipment.springs.find((spring) => spring.id === id)?.count ?? 0),
  );
  return isThere && (!loadN || (at.atMidN >= loadN[0] && at.atMidN <= loadN[1]));
}

/** Agrees with `allows` of the neighbours: a spring is in it exactly when that says no. */
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

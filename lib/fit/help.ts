/**
 * What would make an impossible class fit: one lock fewer, a wider range, a shorter opening, another length. Each is tried
 * before it is offered, and is the smallest change of its kind.
 */
import { classClock } from "#lib/clock/clock.ts";
import { headSeconds, isMoveItem, sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { fitToLength } from "./fit.ts";
import type { ImpossibleFit } from "./impossible-fit.ts";
import { moreMoves } from "./more-moves.ts";
import { boundsOf } from "./problem.ts";

export type FitHelp =
  /** Add about so many moves: the class is short by more than the longest times allow. */
  | { readonly by: "moves"; readonly count: number }
  /** Unlock all of these; only one where that is enough. */
  | { readonly by: "unlock"; readonly items: readonly string[] }
  /** Includes both sides of a move that share their time. Seconds, both ends included. */
  | {
      readonly by: "range";
      readonly items: readonly string[];
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
    }
  | { readonly by: "opening" | "closing"; readonly from: number; readonly to: number }
  | { readonly by: "length"; readonly from: number; readonly to: number };

/** Most offers of one kind. */
const MOST = 3;
const MINUTE = 60;
/** The length that a class may have, seconds. */
const SHORTEST_CLASS = 60;
const LONGEST_CLASS = 14400;

/**
 * Tried one by one with the fit itself, in the order unlock, range, opening, closing, length. More moves come first and are
 * not tried, since the author chooses them; a class that lacks several is half-written, and no range or opening is offered
 * to stretch over them. Never throws.
 */
export function whatHelps(plan: Plan, fit: ImpossibleFit): FitHelp[] {
  const count = moreMoves(plan, classClock(plan));
  const moves: FitHelp[] = count > 0 ? [{ by: "moves", count }] : [];
  const wider = count > 1 ? [] : [...ranges(plan, fit), ...heads(plan, fit)];
  return [...moves, ...unlocks(plan), ...wider, ...lengths(plan, fit)];
}

const fits = (plan: Plan): boolean => fitToLength(plan).possible;

function unlocks(plan: Plan): FitHelp[] {
  const locked = plan.items.filter(isMoveItem).filter((item) => item.locked);
  if (locked.length === 0) return [];
  const without = (ids: readonly string[]): Plan => changed(plan, ids, { locked: false });
  const pairs = pairsOf(plan);
  const groups = new Map(
    locked.map((item) => {
      const ids = (pairs.get(item.id) ?? [item]).filter((i) => i.locked).map((i) => i.id);
      return [ids.join(" "), ids];
    }),
  );
  const alone = [...groups.values()].filter((ids) => fits(without(ids)));
  if (alone.length > 0) return alone.slice(0, MOST).map((items) => ({ by: "unlock", items }));
  const all = locked.map((item) => item.id);
  return fits(without(all)) ? [{ by: "unlock", items: all }] : [];
}

/** Items or pairs that could each make up the difference alone, those that change least first. */
function ranges(plan: Plan, fit: ImpossibleFit): FitHelp[] {
  const pairs = pairsOf(plan);
  const seen = new Set<string>();
  const offers: (FitHelp & { by: "range"; share: number })[] = [];
  for (const item of plan.items.filter(isMoveItem)) {
    if (item.locked || !fit.stoppedBy.includes(item.id) || seen.has(item.id)) continue;
    const group = pairs.get(item.id) ?? [item];
    for (const one of group) seen.add(one.id);
    if (group.some((one) => one.locked)) continue;
    const to = widened(plan, fit, group);
    const items = group.map((one) => one.id);
    const from = boundsOf(plan, item);
    if (!to || !fits(changed(plan, items, { range: to }))) continue;
    offers.push({ by: "range", items, from, to, share: Math.abs(to[0] - from[0] + to[1] - from[1]) / item.seconds });
  }
  offers.sort((a, b) => a.share - b.share);
  return offers.slice(0, MOST).map(({ share: _, ...offer }) => offer);
}

/** The bounds of both sides together, in whole grid steps, widened by what the class lacks. */
function widened(
  plan: Plan,
  { shortest, longest }: ImpossibleFit,
  group: readonly MoveItem[],
): [number, number] | undefined {
  const grid = headSeconds(plan, "gridSeconds");
  const bounds = group.map((item) => boundsOf(plan, item));
  const over = Math.max(0, shortest - plan.lengthSeconds) / group.length;
  const short = Math.max(0, plan.lengthSeconds - longest) / group.length;
  const low = Math.floor((Math.min(...bounds.map((b) => b[0])) - over) / grid) * grid;
  const high = Math.ceil((Math.max(...bounds.map((b) => b[1])) + short) / grid) * grid;
  return low >= Math.max(1, grid) ? [low, high] : undefined;
}

/** A shorter opening or closing, or one at most twice as long. */
function heads(plan: Plan, { shortest, longest }: ImpossibleFit): FitHelp[] {
  const off = shortest > plan.lengthSeconds ? shortest - plan.lengthSeconds : longest - plan.lengthSeconds;
  if (shortest <= plan.lengthSeconds && longest >= plan.lengthSeconds) return [];
  return (["opening", "closing"] as const).flatMap((by): FitHelp[] => {
    const key = `${by}Seconds` as const;
    const from = headSeconds(plan, key);
    const to = Math.floor(from - off);
    if (to < 0 || to > 2 * from || !fits({ ...plan, [key]: to })) return [];
    return [{ by, from, to }];
  });
}

/** The nearest length that works: whole minutes if one is near, else whole seconds. */
function lengths(plan: Plan, { shortest, longest }: ImpossibleFit): FitHelp[] {
  const from = plan.lengthSeconds;
  const grid = Math.ceil(headSeconds(plan, "gridSeconds"));
  const tries =
    shortest > from
      ? [Math.ceil(shortest / MINUTE) * MINUTE, Math.ceil(shortest)]
      : longest < from
        ? [Math.floor(longest / MINUTE) * MINUTE, Math.floor(longest)]
        : [from + grid, from - grid];
  const to = tries.find(
    (seconds) => seconds >= SHORTEST_CLASS && seconds <= LONGEST_CLASS && fits({ ...plan, lengthSeconds: seconds }),
  );
  return to === undefined ? [] : [{ by: "length", from, to }];
}

/** Each item that has another side, mapped to both. */
function pairsOf(plan: Plan): Map<string, readonly MoveItem[]> {
  return new Map(
    sidePairs(plan).flatMap(({ left, right }) => {
      if (!left || !right) return [];
      const both = plan.items.filter((item): item is MoveItem => item === left || item === right);
      return both.map((item): [string, readonly MoveItem[]] => [item.id, both]);
    }),
  );
}

function changed(plan: Plan, ids: readonly string[], change: Partial<MoveItem>): Plan {
  const items = plan.items.map((item) =>
    item.kind === "move" && ids.includes(item.id) ? { ...item, ...change } : item,
  );
  return { ...plan, items };
}

/** A plan as a fit sees it: what is fixed, what may change between which bounds, in whole numbers of one smallest unit. */
import { headSeconds, moveOf, sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { changesInto } from "#lib/transitions/transitions.ts";
import type { Spot, Variable } from "./steps.ts";

export interface FitProblem {
  /** Ticks in a second: 1, 10, ... 1 000 000, as few as the plan's decimals need. */
  readonly perSecond: number;
  /** Ticks in a grid step. */
  readonly grid: number;
  /** Ticks of the class's slot, and of all in it that the fit does not touch. */
  readonly length: number;
  readonly fixed: number;
  readonly singles: readonly Variable[];
  readonly pairs: readonly Variable[];
  /** Items that take the seconds of their locked other side. */
  readonly followers: readonly Follower[];
}
export interface Follower {
  readonly place: number;
  readonly seconds: number;
  /** The locked seconds are not within the item's own bounds. */
  readonly outside: boolean;
}

/** Times finer than a microsecond are taken to the nearest one: they are noise of binary fractions. */
const FINEST = 6;

/**
 * Never throws and never takes long: a plan from elsewhere may hold times that the format does not allow. One that is no
 * number counts as none, one beyond all bounds as the bound.
 */
export function fitProblem(plan: Plan): FitProblem {
  const groups = groupItems(plan);
  const fixed = fixedSeconds(plan, groups);
  const grid = Math.min(Math.max(sane(headSeconds(plan, "gridSeconds")), 1), 600);
  const length = sane(plan.lengthSeconds);
  const numbers = groups.open.flatMap((group) => group.flatMap(({ item, bounds }) => [item.seconds, ...bounds]));
  const perSecond = 10 ** Math.max(...[grid, fixed, length, ...numbers].map(decimals));
  const ticks = (seconds: number): number => Math.round(seconds * perSecond);
  const variables = groups.open.map((group) => variableOf(group, ticks, ticks(grid)));
  return {
    perSecond,
    grid: ticks(grid),
    length: ticks(length),
    fixed: ticks(fixed),
    singles: variables.filter((v) => v.spots.length === 1),
    pairs: variables.filter((v) => v.spots.length === 2),
    followers: groups.followers,
  };
}

interface Placed {
  readonly item: MoveItem;
  readonly place: number;
  readonly bounds: readonly [number, number];
}
interface Groups {
  /** Single items and pairs whose seconds may change. */
  readonly open: readonly (readonly Placed[])[];
  readonly followers: readonly Follower[];
}

function groupItems(plan: Plan): Groups {
  const other = new Map(
    sidePairs(plan).flatMap(({ left, right }) =>
      left && right && allowed(left) && allowed(right)
        ? [
            [left, right],
            [right, left],
          ]
        : [],
    ),
  );
  const places = new Map(plan.items.map((item, place) => [item, place]));
  const placed = (item: MoveItem): Placed => ({ item, place: places.get(item) ?? -1, bounds: boundsOf(plan, item) });
  const open: Placed[][] = [];
  const followers: Follower[] = [];
  for (const item of plan.items) {
    if (item.kind !== "move" || item.locked || !allowed(item)) continue;
    const partner = other.get(item);
    const self = placed(item);
    if (partner?.locked) followers.push(follow(self, partner.seconds));
    else if (!partner) open.push([self]);
    else if (self.place < (places.get(partner) ?? -1)) open.push([self, placed(partner)]);
  }
  return { open, followers };
}

function follow({ place, bounds: [shortest, longest] }: Placed, seconds: number): Follower {
  return { place, seconds, outside: seconds < shortest || seconds > longest };
}

/** Seconds, both ends allowed: the item's own range, else its move's, else half to one and a half times the wish. */
export function boundsOf(plan: Plan, item: MoveItem): readonly [number, number] {
  const [low, high] = item.range ?? moveOf(plan, item)?.seconds ?? [item.seconds / 2, item.seconds * 1.5];
  return [sane(low), sane(high)];
}

/** What two sides share lies within the bounds of both. Bounds go inwards to the grid; `low > high` leaves nothing. */
function variableOf(group: readonly Placed[], ticks: (seconds: number) => number, grid: number): Variable {
  return {
    spots: group.map(({ item, place }): Spot => ({ place, wish: ticks(item.seconds) })),
    low: Math.max(...group.map(({ bounds }) => Math.ceil(ticks(bounds[0]) / grid))),
    high: Math.min(...group.map(({ bounds }) => Math.floor(ticks(bounds[1]) / grid))),
  };
}

/** Opening, closing, pauses, transitions, locked items and those that follow one. */
function fixedSeconds(plan: Plan, groups: Groups): number {
  const changes = changesInto(plan);
  const open = new Set(groups.open.flatMap((group) => group.map(({ place }) => place)));
  const followed = new Map(groups.followers.map(({ place, seconds }) => [place, seconds]));
  let sum = sane(headSeconds(plan, "openingSeconds")) + sane(headSeconds(plan, "closingSeconds"));
  plan.items.forEach((item, place) => {
    if (item.kind === "pause") sum += sane(item.seconds);
    if (item.kind !== "move") return;
    sum += sane(item.transitionSeconds ?? changes.get(item.id)?.estimate ?? 0);
    if (!open.has(place)) sum += sane(followed.get(place) ?? item.seconds);
  });
  return Math.round(sum * 10 ** FINEST) / 10 ** FINEST;
}

/** Far above what the format allows. */
const MOST_SECONDS = 100_000;
const sane = (seconds: number): number => (Number.isNaN(seconds) ? 0 : Math.min(Math.max(seconds, 0), MOST_SECONDS));
/** Has an item the seconds of work that the format allows? */
const allowed = ({ seconds }: MoveItem): boolean => seconds >= 1 && seconds <= MOST_SECONDS;

/** Decimals a time is written with, up to the finest. */
function decimals(seconds: number): number {
  for (let n = 0; n < FINEST; n++) if (Number.isInteger(cut(seconds * 10 ** n))) return n;
  return FINEST;
}

/** 4.1 x 10 is 41 but 4.35 x 100 is 434.99999999999994. */
const cut = (x: number): number => Math.round(x * 1e9) / 1e9;

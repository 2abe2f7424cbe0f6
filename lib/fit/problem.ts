/** A plan as the fit sees it: what is fixed, and what may change within which bounds. */
import { cycleSeconds } from "#lib/clock/clock.ts";
import { millionth } from "#lib/numbers/round.ts";
import { headSeconds, moveOf, sidePairs } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { tellingsOf } from "#lib/talk/telling.ts";
import { changesInto, transitionSeconds } from "#lib/transitions/transitions.ts";
import type { Spot, Variable } from "./values.ts";

export interface FitProblem extends OpenItems {
  /** Seconds of the slot, and of everything that the fit does not change. */
  readonly length: number;
  readonly fixed: number;
}
/** What the fit may change, whatever the class lasts. */
interface OpenItems {
  /** Seconds of a grid step. */
  readonly grid: number;
  /** In plan order of their first items. */
  readonly variables: readonly Variable[];
  /** Items that take the seconds of their locked other side. */
  readonly followers: readonly Follower[];
}
interface Follower {
  readonly place: number;
  readonly wish: number;
  readonly seconds: number;
  /** The locked seconds are not within the item's own bounds. */
  readonly outside: boolean;
}

/**
 * Never throws and never takes long, even for times that the format does not allow: what is not a number counts as 0, what
 * is out of bounds as the bound.
 */
export function fitProblem(plan: Plan): FitProblem {
  const groups = groupItems(plan);
  return { ...openOf(plan, groups), length: sane(plan.lengthSeconds), fixed: fixedSeconds(plan, groups) };
}

/** Without a look at the clock. */
export const openItems = (plan: Plan): OpenItems => openOf(plan, groupItems(plan));

function openOf(plan: Plan, { open, followers }: Groups): OpenItems {
  const grid = millionth(Math.min(Math.max(sane(headSeconds(plan, "gridSeconds")), 1), 600));
  return { grid, variables: open.map((group) => variableOf(plan, group, grid)), followers };
}

/** Seconds of one repetition of an item's move, null where it has none. */
export function repOf(plan: Plan, item: MoveItem): number | null {
  const move = moveOf(plan, item);
  const rep = move ? cycleSeconds(move) : null;
  return rep !== null && rep > 0 && rep <= MOST_SECONDS ? millionth(rep) : null;
}

/** The variable of an item, shared with its other side where both may change; undefined where its time is fixed. */
export function variableFor(plan: Plan, item: MoveItem): Variable | undefined {
  const place = plan.items.indexOf(item);
  return openItems(plan).variables.find((v) => v.spots.some((spot) => spot.place === place));
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

function follow({ item, place, bounds: [shortest, longest] }: Placed, seconds: number): Follower {
  return { place, wish: item.seconds, seconds, outside: seconds < shortest || seconds > longest };
}

/** Seconds, both ends allowed: the item's own range, else its move's, else half to one and a half times the wish. */
export function boundsOf(plan: Plan, item: MoveItem): readonly [number, number] {
  const [low, high] = item.range ?? moveOf(plan, item)?.seconds ?? [item.seconds / 2, item.seconds * 1.5];
  return [sane(low), sane(high)];
}

/** The shared time of two sides lies within the bounds of both. */
function variableOf(plan: Plan, group: readonly Placed[], grid: number): Variable {
  const [first] = group;
  return {
    spots: group.map(({ item, place }): Spot => ({ place, wish: item.seconds })),
    low: Math.max(...group.map(({ bounds }) => bounds[0])),
    high: Math.min(...group.map(({ bounds }) => bounds[1])),
    rep: first ? repOf(plan, first.item) : null,
    grid,
  };
}

/** Opening, closing, pauses, transitions, locked items and those that follow one. */
function fixedSeconds(plan: Plan, groups: Groups): number {
  const changes = changesInto(plan);
  const tellings = tellingsOf(plan);
  const open = new Set(groups.open.flatMap((group) => group.map(({ place }) => place)));
  const followed = new Map(groups.followers.map(({ place, seconds }) => [place, seconds]));
  let sum = sane(headSeconds(plan, "openingSeconds")) + sane(headSeconds(plan, "closingSeconds"));
  plan.items.forEach((item, place) => {
    if (item.kind === "pause") sum += sane(item.seconds);
    if (item.kind !== "move") return;
    sum += sane(transitionSeconds(item, changes.get(item.id)?.estimate ?? 0, tellings.get(item.id) ?? 0));
    if (!open.has(place)) sum += sane(followed.get(place) ?? item.seconds);
  });
  return millionth(sum);
}

/** Far above what the format allows. */
const MOST_SECONDS = 100_000;
const sane = (seconds: number): number => (Number.isNaN(seconds) ? 0 : Math.min(Math.max(seconds, 0), MOST_SECONDS));
/** Whether an item's seconds are within what the format allows. */
const allowed = ({ seconds }: MoveItem): boolean => seconds >= 1 && seconds <= MOST_SECONDS;

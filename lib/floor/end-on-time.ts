/**
 * Makes a class that runs late or early end on time. The work still to do gets new seconds, as near to the plan's as the
 * remaining time allows (the exact optimum of `lib/fit`, on a grid of one second). Both sides stay equal and locks are kept
 * where possible, and no move gets less than its shortest time. If that is still too long, whole moves are left out, both
 * sides of a pair together.
 */

import { shareOut } from "#lib/fit/share-out.ts";
import type { TickVariable } from "#lib/fit/steps.ts";
import { NOISE, tenth } from "#lib/numbers/round.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { dropSets } from "./drop-sets.ts";
import { type RestItem, type RestOfClass, restOfClass } from "./rest-of-class.ts";

export interface Retimed {
  readonly possible: true;
  /** New seconds of work, in plan order; only items that change. */
  readonly changed: readonly { readonly item: string; readonly from: number; readonly to: number }[];
  /** Items left out, in plan order. */
  readonly dropped: readonly string[];
  /** Items whose seconds differ from their other side's. */
  readonly uneven: readonly string[];
  /** Locked items whose seconds had to give way. */
  readonly unlocked: readonly string[];
  /** The closing that ends the class on time; longer than planned when the work cannot be stretched further. */
  readonly closingSeconds: number;
}
interface NotRetimed {
  readonly possible: false;
  /** Seconds by which the class would still be late. */
  readonly overBy: number;
}
export type EndOnTime = Retimed | NotRetimed;

/** From strict to lenient: keep everything; let a side differ from its finished other side; let locks give way too. */
const STRICTNESS = [
  { evenWithDone: true, locks: true },
  { evenWithDone: false, locks: true },
  { evenWithDone: false, locks: false },
] as const;
type Strictness = (typeof STRICTNESS)[number];

/**
 * New times for what is left of a class.
 *
 * `plan`: as the floor runs it now, earlier re-timings included. `position`: seconds of the plan already done.
 * `secondsLeft`: until the class is due to end, closing included; may be negative. Never throws.
 */
export function endOnTime(plan: Plan, position: number, secondsLeft: number): EndOnTime {
  let overBy = Number.POSITIVE_INFINITY;
  for (const dropped of dropSets(plan, position)) {
    const rest = restOfClass(plan, position, new Set(dropped));
    for (const strict of STRICTNESS) {
      const tried = tryOnce(rest, strict, secondsLeft);
      if (tried.possible) return { ...tried, dropped };
      overBy = Math.min(overBy, tried.overBy);
    }
  }
  return { possible: false, overBy: tenth(overBy) };
}

type Tried = Omit<Retimed, "dropped"> | NotRetimed;

function tryOnce(rest: RestOfClass, strict: Strictness, secondsLeft: number): Tried {
  const open = rest.items.filter((item) => !isKept(item, strict));
  const kept = rest.items.filter((item) => isKept(item, strict));
  const fixed = rest.fixedSeconds + kept.reduce((sum, item) => sum + keptSeconds(item, strict) - item.doneSeconds, 0);
  const done = open.reduce((sum, item) => sum + item.doneSeconds, 0);
  const variables = variablesOf(open);
  const least = variables.reduce((sum, v) => sum + v.low * v.spots.length, 0);
  const most = variables.reduce((sum, v) => sum + v.high * v.spots.length, 0);
  const room = secondsLeft - fixed + done;
  const overBy = least - room;
  if (overBy > 1e-6) return { possible: false, overBy };
  const values = valuesFor(variables, Math.min(most, Math.floor(room + 1e-6)), least);
  if (!values) return { possible: false, overBy: 1 };
  return answer(rest, strict, values, { room });
}

/** A pair takes two seconds at a time; if one second remains, the closing takes it. */
function valuesFor(variables: readonly TickVariable[], total: number, least: number) {
  const singles = variables.filter((v) => v.spots.length === 1);
  const pairs = variables.filter((v) => v.spots.length === 2);
  const share = (units: number) => shareOut({ grid: 1, singles, pairs }, units);
  return share(total - least) ?? (total > least ? share(total - least - 1) : undefined);
}

function answer(
  rest: RestOfClass,
  strict: Strictness,
  values: ReadonlyMap<TickVariable, number>,
  { room }: { room: number },
): Tried {
  const seconds = new Map<number, number>();
  let filled = 0;
  for (const [variable, value] of values) {
    filled += value * variable.spots.length;
    for (const spot of variable.spots) seconds.set(spot.place, value);
  }
  const to = (item: RestItem) => seconds.get(item.place) ?? keptSeconds(item, strict);
  const all = rest.items.map((item) => ({ item, to: to(item) }));
  const partners = new Map(all.map((row) => [row.item.id, row.to]));
  return {
    possible: true,
    changed: all
      .filter((row) => row.to !== row.item.seconds)
      .map((row) => ({ item: row.item.id, from: row.item.seconds, to: row.to })),
    uneven: all
      .filter(({ item, to }) => item.otherSide && (partners.get(item.otherSide.id) ?? item.otherSide.seconds) !== to)
      .map(({ item }) => item.id),
    unlocked: all.filter((row) => row.item.locked && row.to !== row.item.seconds).map((row) => row.item.id),
    closingSeconds: tenth(rest.closingSeconds + room - filled),
  };
}

const isKept = (item: RestItem, strict: Strictness): boolean =>
  (strict.locks && item.locked) || (strict.evenWithDone && item.otherSide?.done === true);

/** A side gets what its finished other side got; a locked item keeps its own seconds. */
function keptSeconds(item: RestItem, strict: Strictness): number {
  const even = strict.evenWithDone && item.otherSide?.done ? item.otherSide.seconds : item.seconds;
  return Math.max(item.doneSeconds, item.locked ? item.seconds : even);
}

/** A pair with both sides still to come shares one time; every other item has its own. */
function variablesOf(open: readonly RestItem[]): TickVariable[] {
  const byId = new Map(open.map((item) => [item.id, item]));
  const variables: TickVariable[] = [];
  const taken = new Set<string>();
  for (const item of open) {
    if (taken.has(item.id)) continue;
    const other = item.otherSide && !item.begun ? byId.get(item.otherSide.id) : undefined;
    const pair = other && !other.begun ? variableOf([item, other]) : null;
    // Two sides whose ranges do not overlap cannot be equal.
    const fits = pair !== null && pair.low <= pair.high;
    for (const member of fits && other ? [item, other] : [item]) taken.add(member.id);
    variables.push(fits ? pair : singleOf(item));
  }
  return variables;
}

/** Wishes in whole seconds, the grid of the floor. */
function variableOf(group: readonly RestItem[]): TickVariable {
  return {
    spots: group.map(({ place, seconds }) => ({ place, wish: Math.max(1, Math.round(seconds)) })),
    low: Math.max(...group.map((member) => Math.ceil(member.shortest - NOISE))),
    high: Math.min(...group.map((member) => Math.floor(member.longest + NOISE))),
  };
}

/** When no whole second lies between the bounds, the next one up is taken: never shorter than the shortest. */
function singleOf(item: RestItem): TickVariable {
  const single = variableOf([item]);
  return { ...single, high: Math.max(single.low, single.high) };
}

/**
 * From one set-up to the next: which actions people must do and how long they take. The counts are exact; the seconds of
 * an action are the room's own timings or the defaults below.
 */
import { NOISE } from "#lib/numbers/round.ts";
import { moveOf, own } from "#lib/plan/lookup.ts";
import { ACTIONS, type Action, FACINGS, type Facing, type Move, type MoveItem, type Plan } from "#lib/plan/schema.ts";
import { slowestFactor } from "./slowest.ts";

/** Seconds (common practice, no source). A room's own timings in `equipment.actionSeconds` replace them. */
export const DEFAULT_ACTION_SECONDS: Readonly<Record<Action | "base", number>> = {
  base: 2,
  springOn: 3,
  springOff: 2,
  carriageHome: 2,
  quarterTurn: 1.5,
  positionChange: 3,
  stationChange: 3,
  handleUp: 1.5,
  handleDown: 1,
  handlesCross: 2,
  strapOn: 4,
  strapOff: 2,
  gripChange: 1.5,
  sideChange: 4,
};

export interface Setup {
  readonly springs: Readonly<Record<string, number>>;
  readonly station: Move["station"];
  readonly position: Move["position"];
  readonly facing: Facing;
  readonly hands: Move["hands"];
  readonly feet: Move["feet"];
  /** Not part of the set-up itself, but people change legs or arms with it, or the hand or foot that is held. */
  readonly side: MoveItem["side"];
}

export type ActionCounts = Readonly<Partial<Record<Action, number>>>;
export interface Change {
  /** Only actions that happen, each at least 1. */
  readonly actions: ActionCounts;
  /** Whole seconds. */
  readonly estimate: number;
}
export const NO_CHANGE: Change = { actions: {}, estimate: 0 };

/** How an item is set up: its own facing and springs, the rest from its move. Null when the plan does not have the move. */
export function setupOf(plan: Plan, item: MoveItem): Setup | null {
  const move = moveOf(plan, item);
  return move ? setupWith(move, item) : null;
}

/** The set-up of an item whose move is this one. */
export function setupWith(move: Move, item: MoveItem): Setup {
  const { station, position, hands, feet } = move;
  return { springs: item.springs, station, position, facing: item.facing ?? move.facing, hands, feet, side: item.side };
}

/** Counts of the actions between two set-ups, in the order of ACTIONS; those that do not happen are left out. */
export function actionsBetween(before: Setup, after: Setup): ActionCounts {
  const springs = springActions(before.springs, after.springs);
  const hands = handActions(before, after);
  const feet = strapActions(before, after);
  // Written out, because this runs for the whole class at every key press and for thousands of orders.
  const counts: Partial<Record<Action, number>> = {};
  put(counts, "springOn", springs.springOn);
  put(counts, "springOff", springs.springOff);
  put(counts, "carriageHome", springs.carriageHome);
  put(counts, "quarterTurn", quarterTurns(before.facing, after.facing));
  put(counts, "positionChange", Number(before.position !== after.position));
  put(counts, "stationChange", Number(before.station !== after.station));
  put(counts, "handleUp", hands.handleUp);
  put(counts, "handleDown", hands.handleDown);
  put(counts, "handlesCross", hands.handlesCross);
  put(counts, "strapOn", feet.strapOn);
  put(counts, "strapOff", feet.strapOff);
  put(counts, "gripChange", hands.gripChange);
  put(counts, "sideChange", sideChange(before, after));
  return counts;
}

function put(counts: Partial<Record<Action, number>>, action: Action, count: number): void {
  if (count > 0) counts[action] = count;
}

/**
 * Seconds for a change: 0 when nothing differs at all, else base + sum(count x seconds of the action), times the factor of
 * the slowest in the room, rounded up to a whole second. Feet that move without a strap cost the base, since no action
 * covers them.
 */
export function estimateSeconds(plan: Plan, before: Setup, after: Setup): number {
  return estimateOf(plan, actionsBetween(before, after), feetMove(before, after));
}

/** Actions and estimate of the change from one item's set-up to the next one's. Null (unknown move): no change. */
export function changeBetween(plan: Plan, before: Setup | null, after: Setup | null): Change {
  if (!before || !after) return NO_CHANGE;
  const actions = actionsBetween(before, after);
  return { actions, estimate: estimateOf(plan, actions, feetMove(before, after)) };
}

/**
 * The change into every move item, by item id. Pauses and headings between two moves do not matter, and the first move has
 * no change. An item whose move is unknown is skipped: the next one is compared with the last known set-up.
 */
export function changesInto(plan: Plan): Map<string, Change> {
  const changes = new Map<string, Change>();
  let last: Setup | null = null;
  for (const item of plan.items) {
    if (item.kind !== "move") continue;
    const setup = setupOf(plan, item);
    changes.set(item.id, changeBetween(plan, last, setup));
    last = setup ?? last;
  }
  return changes;
}

/** How long the transition into an item lasts, in seconds: as planned, 0 included, else until all is told and done. */
export const transitionSeconds = (item: MoveItem, estimate: number, telling: number): number =>
  item.transitionSeconds ?? Math.max(estimate, telling);

/** Seconds one action takes in this plan's room. */
export function actionSeconds(plan: Plan, action: Action | "base"): number {
  return plan.equipment.actionSeconds?.[action] ?? DEFAULT_ACTION_SECONDS[action];
}

/** Whether any spring's count differs; a spring left out counts as none. */
export function springsDiffer(a: Setup["springs"], b: Setup["springs"]): boolean {
  return springActions(a, b).carriageHome > 0;
}

function estimateOf(plan: Plan, actions: ActionCounts, feetMoved: boolean): number {
  let differs = feetMoved;
  let sum = actionSeconds(plan, "base");
  for (const action of ACTIONS) {
    const count = actions[action] ?? 0;
    if (count <= 0) continue;
    differs = true;
    sum += count * actionSeconds(plan, action);
  }
  if (!differs) return 0;
  // Decimal timings can add up to 7.000000000000001, which is 7 s and not 8.
  return Math.ceil(sum * slowestFactor(plan) - NOISE);
}

const feetMove = (before: Setup, after: Setup): boolean => before.feet !== after.feet;

function springActions(before: Setup["springs"], after: Setup["springs"]) {
  let [springOn, springOff] = [0, 0];
  for (const id of Object.keys(before)) {
    const more = (own(after, id) ?? 0) - (before[id] ?? 0);
    if (more > 0) springOn += more;
    else springOff -= more;
  }
  for (const id of Object.keys(after)) if (!Object.hasOwn(before, id)) springOn += after[id] ?? 0;
  return { springOn, springOff, carriageHome: Number(springOn > 0 || springOff > 0) };
}

/** Quarter turns by the shorter way round front, right, back, left: 0, 1 or 2. */
export function quarterTurns(from: Facing, to: Facing): number {
  const turns = Math.abs(FACINGS.indexOf(from) - FACINGS.indexOf(to));
  return Math.min(turns, FACINGS.length - turns);
}

const isPairOfHandles = (hands: Setup["hands"]): boolean => hands === "handles" || hands === "handles-crossed";
/** Handles in the hands: 0, 1 or 2. */
export const handlesHeld = (hands: Setup["hands"]): number =>
  isPairOfHandles(hands) ? 2 : hands === "one-handle" ? 1 : 0;

function otherSide(before: Setup, after: Setup): boolean {
  return (before.side === "left" && after.side === "right") || (before.side === "right" && after.side === "left");
}

/** The one handle goes into the other hand. */
const changesHand = (before: Setup, after: Setup): boolean =>
  before.hands === "one-handle" && after.hands === "one-handle" && otherSide(before, after);

/** The cable strap goes onto the other foot. */
const changesFoot = (before: Setup, after: Setup): boolean =>
  before.feet === "cable-strap" && after.feet === "cable-strap" && otherSide(before, after);

/** People change legs or arms, unless the other hand or foot is counted already. */
const sideChange = (before: Setup, after: Setup): number =>
  Number(otherSide(before, after) && !changesHand(before, after) && !changesFoot(before, after));

function handActions(before: Setup, after: Setup) {
  const held = handlesHeld(before.hands);
  const toHold = handlesHeld(after.hands);
  const changesHands = Number(changesHand(before, after));
  const differ = before.hands !== after.hands;
  return {
    handleUp: Math.max(0, toHold - held) + changesHands,
    handleDown: Math.max(0, held - toHold) + changesHands,
    handlesCross: Number(held === 2 && toHold === 2 && differ),
    gripChange: Number(differ && held === 0 && toHold === 0),
  };
}

export const isStrap = (feet: Setup["feet"]): boolean => feet.endsWith("-strap");

function strapActions(before: Setup, after: Setup) {
  const changesFeet = Number(changesFoot(before, after));
  const differ = before.feet !== after.feet;
  return {
    strapOn: Number(differ && isStrap(after.feet)) + changesFeet,
    strapOff: Number(differ && isStrap(before.feet)) + changesFeet,
  };
}

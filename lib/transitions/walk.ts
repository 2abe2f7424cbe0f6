/**
 * Follows the body through the class from set-up to set-up: what the hands hold, which foot is in a strap, which springs are
 * on, where the carriage is, and what must be let go before the next move can begin.
 */
import { Kept } from "#lib/memo/kept.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import type { Move, MoveItem, Pause, Plan } from "#lib/plan/schema.ts";
import { type Tellings, tellingsOf } from "#lib/talk/telling.ts";
import { slowestFactor } from "./slowest.ts";
import {
  type ActionCounts,
  actionSeconds,
  changeBetween,
  handlesHeld,
  isStrap,
  type Setup,
  setupWith,
  transitionSeconds,
} from "./transitions.ts";

/**
 * `home`: the move never takes the carriage out. `out`: it does, so it may be out when the move ends. `unknown`: the plan
 * does not say, or people have paused since and may have let it go.
 */
type CarriagePlace = "home" | "out" | "unknown";

/** The machine and the body during a move. */
interface BodyState {
  /** Handles in the hands: 0, 1 or 2. */
  readonly handles: number;
  readonly crossed: boolean;
  /** The strap a foot is in, or null. */
  readonly strap: Setup["feet"] | null;
  /** The side of that hand or foot, where one handle or one cable strap is used; else null. */
  readonly side: "left" | "right" | null;
  readonly springs: Setup["springs"];
  /** Where the carriage may be when the move ends. */
  readonly carriage: CarriagePlace;
}

/** What the hands or feet still hold from the move before and must let go. */
interface LetGo {
  /** Handles still in hands that must bear weight next: 0, 1 or 2. */
  readonly handles: number;
  /** The strap that a foot must leave because it is needed elsewhere, or null. */
  readonly strap: Setup["feet"] | null;
  /** Seconds that letting go takes by itself in this room. */
  readonly seconds: number;
}

/** The change into one move. */
export interface SetupStep {
  readonly item: MoveItem;
  readonly to: Setup;
  /** The body during this move. */
  readonly state: BodyState;
  /** The last move before it whose set-up is known; null for the first. */
  readonly before: { readonly item: MoveItem; readonly setup: Setup; readonly state: BodyState } | null;
  readonly actions: ActionCounts;
  /** Seconds the change takes, whole. */
  readonly estimate: number;
  /** Where the carriage may be as the change begins. */
  readonly carriage: CarriagePlace;
  readonly letGo: LetGo;
  /** The pauses between the two moves. */
  readonly pauses: readonly Pause[];
  /** Seconds that telling the set-up takes, whole. */
  readonly telling: number;
  /** Seconds available for the change: as planned, else until all is told and done, plus the pauses. */
  readonly seconds: number;
}

/**
 * One step for each move item whose move is known, in plan order. Headings do not matter. Never throws. `tellings` are the
 * plan's own, where already worked out; without them it walks once a plan, since words are counted for it.
 */
export const walkSetups = (plan: Plan, tellings?: Tellings): readonly SetupStep[] =>
  tellings ? walk(plan, tellings) : walkCounted(plan);

const walkCounted = perValue((plan: Plan) => walk(plan, tellingsOf(plan)));

function walk(plan: Plan, tellings: Tellings): SetupStep[] {
  const factor = slowestFactor(plan);
  const steps: SetupStep[] = [];
  let before: BodyIn | null = null;
  let pauses: Pause[] = [];
  for (const item of plan.items) {
    if (item.kind === "pause") pauses.push(item);
    if (item.kind !== "move") continue;
    const move = moveOf(plan, item);
    if (!move) continue;
    const body = keptOf(item).body.get([move], () => bodyIn(item, move));
    steps.push(keptStep(plan, factor, { body, before, pauses, telling: tellings.get(item.id) ?? 0 }));
    before = body;
    pauses = [];
  }
  return steps;
}

type BodyIn = NonNullable<SetupStep["before"]>;

function bodyIn(item: MoveItem, move: Move): BodyIn {
  const setup = setupWith(move, item);
  return { item, setup, state: stateIn(move, setup) };
}

/** What was last worked out for each item, since at a key press nearly all stay as they are: a step with words counted, and one without. */
const keptOf = perValue((_: MoveItem) => ({
  ...{ body: new Kept<BodyIn>(), told: new Kept<SetupStep>(), untold: new Kept<SetupStep>() },
}));

interface StepPlace extends Pick<SetupStep, "before" | "pauses" | "telling"> {
  readonly body: BodyIn;
}

function keptStep(plan: Plan, factor: number, place: StepPlace): SetupStep {
  const { body, before, pauses, telling } = place;
  const { told, untold } = keptOf(body.item);
  const reads: unknown[] = [plan.equipment, factor, body, before, telling];
  if (pauses.length > 0) reads.push(...pauses);
  return (telling > 0 ? told : untold).get(reads, () => stepInto(plan, place));
}

function stepInto(plan: Plan, { body, before, pauses, telling }: StepPlace): SetupStep {
  const { item, setup: to, state } = body;
  const { actions, estimate } = changeBetween(plan, before?.setup ?? null, to);
  const rest = pauses.reduce((sum, pause) => sum + pause.seconds, 0);
  const left = before?.state.carriage ?? "home";
  return {
    ...{ item, to, state, before, actions, estimate, pauses, telling },
    carriage: left === "out" && rest > 0 ? "unknown" : left,
    letGo: letGoBetween(plan, before?.setup ?? null, to),
    seconds: transitionSeconds(item, estimate, telling) + rest,
  };
}

function stateIn(move: Move, setup: Setup): BodyState {
  const handles = handlesHeld(setup.hands);
  const oneSided = handles === 1 || setup.feet === "cable-strap";
  return {
    handles,
    crossed: setup.hands === "handles-crossed",
    strap: isStrap(setup.feet) ? setup.feet : null,
    side: oneSided && (setup.side === "left" || setup.side === "right") ? setup.side : null,
    springs: setup.springs,
    carriage: carriageIn(move, handles),
  };
}

function carriageIn(move: Move, handles: number): CarriagePlace {
  if (move.travelMm) return move.travelMm[1] > 0 ? "out" : "home";
  if (move.resistance !== "bodyweight") return "out";
  const touched =
    handles > 0 ||
    move.station === "carriage" ||
    move.hands === "carriage" ||
    move.feet === "carriage" ||
    isStrap(move.feet);
  return touched ? "unknown" : "home";
}

const bearsWeight = (hands: Setup["hands"]): boolean => hands !== "free" && handlesHeld(hands) === 0;

function letGoBetween(plan: Plan, from: Setup | null, to: Setup): LetGo {
  const handles = from && bearsWeight(to.hands) ? handlesHeld(from.hands) : 0;
  const strap = from && isStrap(from.feet) && from.feet !== to.feet && to.feet !== "free" ? from.feet : null;
  const seconds = handles * actionSeconds(plan, "handleDown") + (strap ? actionSeconds(plan, "strapOff") : 0);
  return { handles, strap, seconds };
}

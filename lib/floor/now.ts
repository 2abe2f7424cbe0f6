/**
 * The class as the floor runs it: the card with its re-timings applied in turn, and where a log puts the class at any
 * moment. A re-timing never changes the past, so the position in seconds of the plan never jumps.
 */
import type { Card } from "#lib/card/schema.ts";
import { type ClassClock, classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import type { Cue } from "#lib/cues/types.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import {
  advanced,
  afterEvent,
  type FloorEvent,
  type FloorLog,
  type FloorPosition,
  isTouch,
  NOT_BEGUN,
  type TimedPosition,
} from "./log.ts";
import { type Retiming, retimedPlan } from "./retimed-plan.ts";
import { saidAndToCome } from "./said-and-to-come.ts";
import { type FloorStep, floorSteps } from "./steps.ts";
import { type FloorClass, type FloorView, floorClass, viewOf } from "./view.ts";

/** The class in force: the card's own, or the card's with re-timings. */
export interface FloorNow {
  readonly plan: Plan;
  readonly clock: ClassClock;
  readonly cues: readonly Cue[];
  readonly steps: readonly FloorStep[];
  readonly cls: FloorClass;
  /** The re-timings that led here, oldest first, as they were applied. */
  readonly retimings: readonly Retiming[];
}
/** The state after an event, valid until the next event. */
export interface FloorStage {
  readonly event: FloorEvent;
  readonly anchor: TimedPosition;
  readonly now: FloorNow;
}

interface Node {
  readonly now: FloorNow;
  readonly before: Node | null;
  /** Position when the re-timing was made, seconds. */
  readonly since: number;
  /** Classes one re-timing further on, so that the same events lead to the same object. */
  readonly after: Map<string, Node>;
}
/** An event in force, the state after it, and the event in force before it. */
interface Standing {
  readonly stage: FloorStage;
  readonly node: Node;
  readonly below: Standing | null;
}
interface Told {
  readonly stages: readonly FloorStage[];
  readonly top: Standing | null;
  readonly undone: readonly UndoneTouch[];
}
export interface UndoneTouch {
  readonly touch: FloorEvent;
  /** When it was undone, ms. */
  readonly undoneAt: number;
}
interface Kept {
  readonly root: Node;
  readonly logs: WeakMap<FloorLog, Told>;
}

/** Keeps what was worked out from a card for as long as the card itself is in memory. */
const byCard = new WeakMap<Card, Kept>();

function keptOf(card: Card): Kept {
  const known = byCard.get(card);
  if (known) return known;
  const { plan, clock, cues } = card;
  const cls = floorClass(card);
  const now = { plan, clock, cues, steps: cls.steps, cls, retimings: [] };
  const made = { root: { now, before: null, since: 0, after: new Map() }, logs: new WeakMap() };
  byCard.set(card, made);
  return made;
}

/** One stage per event, in order of time. Worked out once per log, so it may be called many times a second. */
export const floorStages = (card: Card, log: FloorLog): readonly FloorStage[] => told(card, log).stages;

function told(card: Card, log: FloorLog): Told {
  const { root, logs } = keptOf(card);
  const known = logs.get(log);
  if (known) return known;
  let top: Standing | null = null;
  const stages: FloorStage[] = [];
  const undone: UndoneTouch[] = [];
  for (const event of log) {
    if (event.type === "undo") {
      if (top && mayTakeBack(top, event.at)) {
        undone.push({ touch: top.stage.event, undoneAt: event.at });
        top = top.below;
      }
      // As before the undone touch: the older anchor holds, and time has run on from there.
      stages.push({ event, anchor: top?.stage.anchor ?? NOT_BEGUN, now: (top?.node ?? root).now });
    } else {
      const node: Node = top?.node ?? root;
      const anchor = afterEvent(top?.stage.anchor ?? NOT_BEGUN, event, node.now.steps);
      const goesOn = anchor.startedAt !== null && !anchor.ended;
      const led = goesOn ? followed(node, event, anchor.position) : node;
      const stage = { event, anchor, now: led.now };
      top = { stage, node: led, below: top };
      stages.push(stage);
    }
  }
  const made = { stages, top, undone };
  logs.set(log, made);
  return made;
}

/** True for a touch; for a re-timing only while undoing it does not change the past. */
function mayTakeBack({ stage, node, below }: Standing, at: number): boolean {
  if (!below || !isTouch(stage.event)) return false;
  if (node === below.node) return true;
  return mayUndo(node, advanced(stage.anchor, at, node.now.clock.total).position);
}

/** The events in force, without undos and what they undid: the same class as if the mistakes had not happened. */
export function standingLog(card: Card, log: FloorLog): FloorLog {
  const stands: FloorEvent[] = [];
  for (let one = told(card, log).top; one; one = one.below) stands.push(one.stage.event);
  return stands.reverse();
}

/** The undone touches, in the order of the undos. */
export const undoneTouches = (card: Card, log: FloorLog): readonly UndoneTouch[] => told(card, log).undone;

/** The touch that an undo at `at` would undo, or null. */
export function lastTouch(card: Card, log: FloorLog, at: number): FloorEvent | null {
  const { top } = told(card, log);
  return top && mayTakeBack(top, at) ? top.stage.event : null;
}

function followed(node: Node, event: FloorEvent, position: number): Node {
  if (event.type === "undo-retime") return node.before && mayUndo(node, position) ? node.before : node;
  if (event.type !== "retime") return node;
  const retiming = ofWhatIsToCome(node.now, event, position);
  // Rounded to the millisecond: the same moment on a clock with another zero differs in its last bits.
  const key = JSON.stringify([Math.round(position * 1000), retiming]);
  const known = node.after.get(key);
  if (known) return known;
  const made = { now: retimed(node.now, retiming, position), before: node, since: position, after: new Map() };
  node.after.set(key, made);
  return made;
}

/** A re-timing without its changes to the past. The current move gets no less than it has already had. */
function ofWhatIsToCome({ plan, clock }: FloorNow, retiming: Retiming, position: number): Retiming {
  const rows = new Map(clock.rows.map((row) => [row.item, row]));
  const lastEnd = Math.max(0, ...clock.rows.map((row) => row.end));
  return {
    changed: retiming.changed.flatMap(({ item, to }) => {
      const row = rows.get(item);
      // The clock is in tenths: rounded down, the move would already be over.
      const had = row ? Math.ceil(Math.max(0, position - row.start) * 10 - 1e-6) / 10 : 0;
      return row && row.end > position ? [{ item, to: Math.max(to, had) }] : [];
    }),
    dropped: retiming.dropped.filter(
      (id) => (rows.get(id)?.transitionFrom ?? 0) > position && plan.items.some((item) => item.id === id),
    ),
    closingSeconds: Math.max(retiming.closingSeconds, position - lastEnd, 0),
    ...longerToCome(retiming, { plan, clock }, position),
  };
}

/** The opening and changes that are not over yet, with no less than they have already had. */
function longerToCome(
  { openingSeconds, changes }: Retiming,
  { plan, clock }: Pick<FloorNow, "plan" | "clock">,
  position: number,
): Pick<Retiming, "openingSeconds" | "changes"> {
  const had = (from: number) => Math.ceil(Math.max(0, position - from) * 10 - 1e-6) / 10;
  const rows = new Map(clock.rows.map((row) => [row.item, row]));
  const toCome = changes?.flatMap(({ item, to }) => {
    const row = rows.get(item);
    return row && row.start > position ? [{ item, to: Math.max(to, had(row.transitionFrom)) }] : [];
  });
  return {
    ...(openingSeconds !== undefined && position < headSeconds(plan, "openingSeconds")
      ? { openingSeconds: Math.max(openingSeconds, had(0)) }
      : {}),
    ...(toCome?.length ? { changes: toCome } : {}),
  };
}

function retimed(was: FloorNow, retiming: Retiming, position: number): FloorNow {
  const plan = retimedPlan(was.plan, retiming);
  const clock = classClock(plan);
  const cues = saidAndToCome(was.cues, cueTrack(plan).cues, position);
  const steps = floorSteps({ plan, clock });
  const cls = floorClass({ plan, clock, cues });
  return { plan, clock, cues, steps, cls, retimings: [...was.retimings, retiming] };
}

/** True where both classes have the same steps so far and are still in the same step. */
function mayUndo({ now, before }: Node, position: number): boolean {
  const behind = ({ steps }: FloorNow) => steps.filter((step) => step.from < position || step.from === 0);
  const begun = (step: FloorStep) => `${step.phase} ${step.item} ${step.from}`;
  const [is, was] = [behind(now), before ? behind(before.now) : []];
  const goesOn = (steps: readonly FloorStep[]) => (steps.at(-1)?.to ?? 0) > position;
  if (is.length !== was.length || goesOn(is) !== goesOn(was)) return false;
  return is.every((step, n) => begun(step) === begun(was[n] ?? step));
}

/** The class in force after the whole log. */
export const floorNow = (card: Card, log: FloorLog): FloorNow =>
  floorStages(card, log).at(-1)?.now ?? keptOf(card).root.now;

/** The stage in force at a moment on the log's clock; later events are ignored. */
const stageAt = (card: Card, log: FloorLog, at: number): FloorStage | undefined =>
  floorStages(card, log).findLast(({ event }) => event.at <= at);

/** Where the class is at `at`, ms on the log's clock. */
export function positionAt(card: Card, log: FloorLog, at: number): FloorPosition {
  const stage = stageAt(card, log, at);
  return stage ? advanced(stage.anchor, at, stage.now.clock.total) : NOT_BEGUN;
}

/** Seconds by which the class will end late if it runs on from `at` without a hold; negative when early. */
export function latenessAt(card: Card, log: FloorLog, at: number): number {
  const { startedAt, position } = positionAt(card, log, at);
  if (startedAt === null) return 0;
  const { total } = (stageAt(card, log, at)?.now ?? keptOf(card).root.now).clock;
  return (at - startedAt) / 1000 + (total - position) - card.clock.total;
}

/** What the floor shows at `at`. */
export function floorView(card: Card, log: FloorLog, at: number): FloorView {
  const now = stageAt(card, log, at)?.now ?? keptOf(card).root.now;
  return viewOf(now.cls, positionAt(card, log, at), latenessAt(card, log, at));
}

/**
 * What happened on the floor, as a list of events, and how one event moves the class. Nothing is counted tick by tick: a
 * device that slept for a minute is right at once when it wakes. Where a log puts a class is asked of `now.ts`.
 */
import { SAME_MOMENT } from "#lib/numbers/round.ts";
import type { Retiming } from "./retimed-plan.ts";
import type { FloorStep } from "./steps.ts";

/** `at` in ms of a clock that only runs forward; `to` in seconds of the plan as it is at that moment. */
export type FloorEvent =
  | { readonly type: "start" | "end"; readonly at: number }
  /** `asleep`: written for the time a device slept, by nobody's touch. */
  | { readonly type: "hold" | "resume"; readonly at: number; readonly asleep?: true | undefined }
  /** `to`: where it went when it was made, so that no later re-timing changes history. Older logs leave it out. */
  | { readonly type: "next" | "back"; readonly at: number; readonly to?: number | undefined }
  | { readonly type: "seek"; readonly at: number; readonly to: number }
  /** The rest of the class gets other seconds: end on time, or one item longer by the coach's own touch. */
  | ({ readonly type: "retime"; readonly at: number } & Retiming)
  /**
   * Takes the last touch that stands back: from here the class is where it would be without it. A re-timing is taken back
   * only where that changes nothing behind us.
   */
  | { readonly type: "undo"; readonly at: number }
  /** The last re-timing alone taken back, as logs of an earlier program have it. */
  | { readonly type: "undo-retime"; readonly at: number };

/** Events in order of time. */
export type FloorLog = readonly FloorEvent[];

export interface FloorPosition {
  /** ms; null until the class has begun. */
  readonly startedAt: number | null;
  /** Seconds of the plan that are behind us. */
  readonly position: number;
  readonly held: boolean;
  readonly ended: boolean;
}
/** A position and the moment it was true. */
export interface TimedPosition extends FloorPosition {
  readonly at: number;
}

/** `back` within this many seconds of an item's start goes to the one before; later it begins the item again. */
const AGAIN_AFTER_SECONDS = 3;

export const NOT_BEGUN: TimedPosition = { startedAt: null, position: 0, held: false, ended: false, at: 0 };

/** The same class at a later moment, nothing having happened in between. */
export function advanced(anchor: TimedPosition, now: number, total: number): TimedPosition {
  if (anchor.startedAt === null || anchor.held || anchor.ended) return { ...anchor, at: now };
  const position = Math.min(total, anchor.position + Math.max(0, now - anchor.at) / 1000);
  return { ...anchor, position, at: now };
}

/** The class after an event, its steps being those in force then. An event that makes no sense changes nothing. */
export function afterEvent(before: TimedPosition, event: FloorEvent, steps: readonly FloorStep[]): TimedPosition {
  const total = totalOf(steps);
  if (event.type === "start") {
    return before.startedAt === null ? { ...NOT_BEGUN, startedAt: event.at, at: event.at } : before;
  }
  if (before.startedAt === null || before.ended) return before;
  const here = advanced(before, event.at, total);
  const at = (position: number) => ({ ...here, position: Math.max(0, Math.min(total, position)) });
  switch (event.type) {
    case "hold":
      return { ...here, held: true };
    case "resume":
      return { ...here, held: false };
    case "end":
      return { ...here, ended: true };
    case "next":
      return at(event.to ?? nextStart(steps, here.position));
    case "back":
      return at(event.to ?? earlierStart(steps, here.position));
    case "seek":
      return at(event.to);
    case "retime":
    case "undo":
    case "undo-retime":
      return here;
  }
}

const TOUCHES: ReadonlySet<FloorEvent["type"]> = new Set(["hold", "resume", "next", "back", "seek", "end", "retime"]);

/** Is it something that a person did by a touch, and may take back? What a sleeping device wrote is not. */
export const isTouch = (event: FloorEvent): boolean =>
  TOUCHES.has(event.type) && !("asleep" in event && event.asleep === true);

/**
 * The events that stand: without the undos and what they took back. Right for all but re-timings that could not be taken
 * back any more (`now.ts` knows), which neither hold a class nor end it.
 */
export function standingEvents(log: FloorLog): FloorEvent[] {
  const stands: FloorEvent[] = [];
  for (const event of log) {
    const last = stands.at(-1);
    if (event.type !== "undo") stands.push(event);
    else if (last && isTouch(last)) stands.pop();
  }
  return stands;
}

export const totalOf = (steps: readonly FloorStep[]): number => steps.at(-1)?.to ?? 0;

/** The beginning of the next step: out of a move into the change after it, out of a change into the move. */
export function nextStart(steps: readonly FloorStep[], position: number): number {
  return steps.find((step) => step.from > position + SAME_MOMENT)?.from ?? steps.at(-1)?.to ?? position;
}

/** The beginning of this step, or of the item before it when this step has only just begun. Changes are not gone back to. */
export function earlierStart(steps: readonly FloorStep[], position: number): number {
  const starts = steps.filter((step) => step.phase !== "change").map((step) => step.from);
  return starts.findLast((from) => from <= position - AGAIN_AFTER_SECONDS + SAME_MOMENT) ?? 0;
}

export interface ClockAnchor {
  /** ms of the forward-only clock and of the wall clock, read at the same moment. */
  readonly mono: number;
  readonly wall: number;
}

/**
 * The same log on another forward-only clock: a page that is opened again counts from its own beginning. Only the time
 * the page was away is taken from the wall clock.
 */
export function rebaseLog(log: FloorLog, was: ClockAnchor, is: ClockAnchor): FloorLog {
  const away = Math.max(0, is.wall - was.wall);
  return log.map((event) => ({ ...event, at: event.at - was.mono + is.mono - away }));
}

/**
 * The log after a device slept and its forward-only clock with it: the class is taken to have stood still, which makes it
 * late by `sleptMs`, so that a clock set right by somebody can never throw a class forward.
 */
export function sleptLog(log: FloorLog, now: number, sleptMs: number): FloorLog {
  // Begun, held and ended are the same whatever the steps of the class.
  const { startedAt, held, ended } = standingEvents(log.filter((event) => event.at <= now)).reduce(
    (anchor, event) => afterEvent(anchor, event, []),
    NOT_BEGUN,
  );
  const earlier = log.map((event) => ({ ...event, at: event.at - sleptMs }));
  if (startedAt === null || held || ended) return earlier;
  return [...earlier, { type: "hold", at: now - sleptMs, asleep: true }, { type: "resume", at: now, asleep: true }];
}

/** The wall clock this far ahead of the forward-only one between two looks: the device slept. ms. */
const SLEPT_MS = 1500;

/** For how long the device slept between two looks at both clocks, ms; 0 when it did not. */
export function sleptBetween(was: ClockAnchor, is: ClockAnchor): number {
  const slept = is.wall - was.wall - (is.mono - was.mono);
  return slept > SLEPT_MS ? slept : 0;
}

/**
 * What happened on the floor, as a list of events, and how each event moves the class. Nothing counts ticks, so a device
 * that slept for a minute is right as soon as it wakes. `now.ts` works out where a log puts the class.
 */
import { SAME_MOMENT } from "#lib/numbers/round.ts";
import type { Retiming } from "./retimed-plan.ts";
import type { FloorStep } from "./steps.ts";

/** `at`: ms on a monotonic clock. `to`: seconds of the plan as it is at that moment. */
export type FloorEvent =
  | { readonly type: "start" | "end"; readonly at: number }
  /** `asleep`: written for the time that the device slept; nobody touched anything. */
  | { readonly type: "hold" | "resume"; readonly at: number; readonly asleep?: true | undefined }
  /** `to`: where it led at the time, so that later re-timings cannot change history. Older logs leave it out. */
  | { readonly type: "next" | "back"; readonly at: number; readonly to?: number | undefined }
  | { readonly type: "seek"; readonly at: number; readonly to: number }
  /** New seconds for the rest of the class: end on time, or one step made longer by the coach. */
  | ({ readonly type: "retime"; readonly at: number } & Retiming)
  /**
   * Undoes the last touch in force: from here the class is where it would be without that touch. A re-timing is undone
   * only where that does not change the past.
   */
  | { readonly type: "undo"; readonly at: number }
  /** Undoes only the last re-timing; found in logs of an earlier version. */
  | { readonly type: "undo-retime"; readonly at: number };

/** Events in order of time. */
export type FloorLog = readonly FloorEvent[];

export interface FloorPosition {
  /** ms; null until the class has begun. */
  readonly startedAt: number | null;
  /** Seconds of the plan already done. */
  readonly position: number;
  readonly held: boolean;
  readonly ended: boolean;
}
/** A position and when it was true. */
export interface TimedPosition extends FloorPosition {
  readonly at: number;
}

/** `back` within this many seconds of an item's start goes to the item before; later it restarts the item. */
const AGAIN_AFTER_SECONDS = 3;

export const NOT_BEGUN: TimedPosition = { startedAt: null, position: 0, held: false, ended: false, at: 0 };

/** The same class at a later moment, with no event in between. */
export function advanced(anchor: TimedPosition, now: number, total: number): TimedPosition {
  if (anchor.startedAt === null || anchor.held || anchor.ended) return { ...anchor, at: now };
  const position = Math.min(total, anchor.position + Math.max(0, now - anchor.at) / 1000);
  return { ...anchor, position, at: now };
}

/** The class after an event. `steps`: those in force at the time. An event that makes no sense is ignored. */
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

/** True for what a person did and may undo, false for what a sleeping device wrote. */
export const isTouch = (event: FloorEvent): boolean =>
  TOUCHES.has(event.type) && !("asleep" in event && event.asleep === true);

/**
 * The events in force, without undos and what they undid. It does not know which re-timings could no longer be undone
 * (`now.ts` does); those neither hold nor end a class.
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

/** The start of the next step: from a move to the change after it, from a change to its move. */
export function nextStart(steps: readonly FloorStep[], position: number): number {
  return steps.find((step) => step.from > position + SAME_MOMENT)?.from ?? steps.at(-1)?.to ?? position;
}

/** The start of this step, or of the item before when this step has only just begun. Going back skips changes. */
export function earlierStart(steps: readonly FloorStep[], position: number): number {
  const starts = steps.filter((step) => step.phase !== "change").map((step) => step.from);
  return starts.findLast((from) => from <= position - AGAIN_AFTER_SECONDS + SAME_MOMENT) ?? 0;
}

export interface ClockAnchor {
  /** ms on the monotonic clock and on the wall clock, read at the same moment. */
  readonly mono: number;
  readonly wall: number;
}

/**
 * The same log on another monotonic clock, since a reloaded page counts from its own start. Only the time while the page
 * was closed comes from the wall clock.
 */
export function rebaseLog(log: FloorLog, was: ClockAnchor, is: ClockAnchor): FloorLog {
  const away = Math.max(0, is.wall - was.wall);
  return log.map((event) => ({ ...event, at: event.at - was.mono + is.mono - away }));
}

/**
 * The log after a device slept and its monotonic clock stopped. The class counts as held meanwhile, so it is late by
 * `sleptMs`: a wall clock that somebody corrects can never throw a class forward.
 */
export function sleptLog(log: FloorLog, now: number, sleptMs: number): FloorLog {
  // Whether it has begun, is held or has ended does not depend on the steps.
  const { startedAt, held, ended } = standingEvents(log.filter((event) => event.at <= now)).reduce(
    (anchor, event) => afterEvent(anchor, event, []),
    NOT_BEGUN,
  );
  const earlier = log.map((event) => ({ ...event, at: event.at - sleptMs }));
  if (startedAt === null || held || ended) return earlier;
  return [...earlier, { type: "hold", at: now - sleptMs, asleep: true }, { type: "resume", at: now, asleep: true }];
}

/** If the wall clock gains this much on the monotonic one between two readings, the device slept. ms. */
const SLEPT_MS = 1500;

/** How long the device slept between two readings of both clocks, ms; 0 when it did not. */
export function sleptBetween(was: ClockAnchor, is: ClockAnchor): number {
  const slept = is.wall - was.wall - (is.mono - was.mono);
  return slept > SLEPT_MS ? slept : 0;
}

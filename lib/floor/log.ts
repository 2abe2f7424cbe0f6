/**
 * What happened on the floor, as a list of events, and where in the class that puts us at any moment. Nothing is counted
 * tick by tick: a device that slept for a minute is right at once when it wakes.
 */
import type { FloorStep } from "./steps.ts";

export type FloorEvent =
  | { readonly type: "start" | "hold" | "resume" | "next" | "back" | "end"; readonly at: number }
  /** `to`: seconds from the start of the class. */
  | { readonly type: "seek"; readonly at: number; readonly to: number };

/** Events in order of time; `at` in ms of a clock that only runs forward. */
export type FloorLog = readonly FloorEvent[];

export interface FloorPosition {
  /** ms; null until the class has begun. */
  readonly startedAt: number | null;
  /** Seconds of the plan that are behind us. */
  readonly position: number;
  readonly held: boolean;
  readonly ended: boolean;
}

interface Anchor extends FloorPosition {
  readonly at: number;
}

/** `back` within this many seconds of an item's start goes to the one before; later it begins the item again. */
const AGAIN_AFTER_SECONDS = 3;
const ALMOST = 1e-6;

const NOT_BEGUN: Anchor = { startedAt: null, position: 0, held: false, ended: false, at: 0 };

/** Where the class is at `now`. Events later than `now` are not looked at; ones that make no sense change nothing. */
export function positionAt(log: FloorLog, now: number, steps: readonly FloorStep[]): FloorPosition {
  const total = steps.at(-1)?.to ?? 0;
  const anchor = log.filter((event) => event.at <= now).reduce((a, event) => apply(a, event, steps, total), NOT_BEGUN);
  return moved(anchor, now, total);
}

function moved(anchor: Anchor, now: number, total: number): Anchor {
  if (anchor.startedAt === null || anchor.held || anchor.ended) return { ...anchor, at: now };
  const position = Math.min(total, anchor.position + Math.max(0, now - anchor.at) / 1000);
  return { ...anchor, position, at: now };
}

function apply(before: Anchor, event: FloorEvent, steps: readonly FloorStep[], total: number): Anchor {
  if (event.type === "start") {
    return before.startedAt === null ? { ...NOT_BEGUN, startedAt: event.at, at: event.at } : before;
  }
  if (before.startedAt === null || before.ended) return before;
  const here = moved(before, event.at, total);
  switch (event.type) {
    case "hold":
      return { ...here, held: true };
    case "resume":
      return { ...here, held: false };
    case "end":
      return { ...here, ended: true };
    case "next":
      return { ...here, position: nextStart(steps, here.position) };
    case "back":
      return { ...here, position: earlierStart(steps, here.position) };
    case "seek":
      return { ...here, position: Math.max(0, Math.min(total, event.to)) };
  }
}

/** The beginning of the next step: out of a move into the change after it, out of a change into the move. */
function nextStart(steps: readonly FloorStep[], position: number): number {
  return steps.find((step) => step.from > position + ALMOST)?.from ?? steps.at(-1)?.to ?? position;
}

/** The beginning of this step, or of the item before it when this step has only just begun. Changes are not gone back to. */
function earlierStart(steps: readonly FloorStep[], position: number): number {
  const starts = steps.filter((step) => step.phase !== "change").map((step) => step.from);
  return starts.findLast((from) => from <= position - AGAIN_AFTER_SECONDS + ALMOST) ?? 0;
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
export function sleptLog(log: FloorLog, now: number, sleptMs: number, steps: readonly FloorStep[]): FloorLog {
  const { startedAt, held, ended } = positionAt(log, now, steps);
  const earlier = log.map((event) => ({ ...event, at: event.at - sleptMs }));
  if (startedAt === null || held || ended) return earlier;
  return [...earlier, { type: "hold", at: now - sleptMs }, { type: "resume", at: now }];
}

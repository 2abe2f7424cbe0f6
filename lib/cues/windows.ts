/**
 * When in a class each kind of line may be said (common practice, no source): set-up and safety before the start, breath in
 * the first repetitions, the easier way early, the heads-up ahead of the change, the count-in last.
 *
 * A span runs from the start of one move to the start of the next and contains whole windows only: what is said during the
 * first move's work, and the set-up of the second. So spans never overlap, and each can be solved by itself.
 */

import type { z } from "zod/mini";
import { type ClockRow, cycleSeconds } from "#lib/clock/clock.ts";
import { tenth } from "#lib/numbers/round.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import type { lineAtSchema, MoveItem, Plan } from "#lib/plan/schema.ts";
import type { SpokenKind } from "./types.ts";

/** Seconds from the start of the class. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

export interface PlacedWork {
  readonly item: MoveItem;
  readonly row: ClockRow;
}

/** Seconds within which the start line must be said. */
const START_WITHIN = 12;
/** A breath line belongs to the first repetitions, or to the first seconds of a hold. */
const BREATH_REPS = 3;
const BREATH_WITHIN = 20;
/** People who need the easier way need it before half of the move is over. */
const EASIER_WITHIN = 30;
/** The harder way is for people who have already found the movement. */
const HARDER_AFTER = 10;

/** The window of a line of the work itself. */
export function workWindow(plan: Plan, { item, row }: PlacedWork, kind: SpokenKind): Window {
  const { start, end } = row;
  const half = (end - start) / 2;
  const by = (seconds: number): Window => ({ from: start, to: Math.min(end, start + seconds) });
  switch (kind) {
    case "start":
      return by(START_WITHIN);
    case "breath":
      return by(Math.max(BREATH_WITHIN, BREATH_REPS * repSeconds(plan, item)));
    case "easier":
      return by(Math.max(EASIER_WITHIN, half));
    case "harder":
      return { from: start + Math.min(HARDER_AFTER, half / 2), to: end };
    case "heads-up":
      return { from: Math.max(start, end - headSeconds(plan, "headsUpSeconds")), to: end - countInSeconds(plan, row) };
    case "count-in":
      return { from: end - countInSeconds(plan, row), to: end };
    default:
      return { from: start, to: end };
  }
}

/** When in its item a line is to begin. */
export type LineMoment = z.infer<typeof lineAtSchema>;

/**
 * The window of a line with a moment of its own: it begins then or not at all. A moment outside the work, or so late that
 * the line would run into the count-in, is moved to the nearest one at which it can be said. `seconds`: its length.
 */
export function momentWindow(plan: Plan, { row }: PlacedWork, moment: LineMoment, seconds: number): Window {
  const { start, end } = row;
  const length = Math.ceil(seconds * 10 - 1e-6) / 10;
  const wanted = "afterSeconds" in moment ? start + moment.afterSeconds : end - moment.leftSeconds;
  const from = tenth(Math.max(start, Math.min(wanted, end - countInSeconds(plan, row) - length)));
  return { from, to: Math.min(end, tenth(from + length)) };
}

/**
 * The window of a move's set-up and safety lines, which end before it starts. They belong in the change; if that is too
 * short they may begin as soon as the heads-up during the move before has been called.
 */
export function setupWindow(plan: Plan, before: PlacedWork | undefined, { row }: PlacedWork): Window {
  if (!before) return { from: 0, to: row.start };
  const lead = before.row.end - headSeconds(plan, "headsUpSeconds");
  return { from: Math.max(before.row.start, Math.min(lead, row.transitionFrom)), to: row.start };
}

/** Whole seconds counted aloud at the end of a move; 0 when the plan has no count-in or the move is too short. */
export function countInSeconds(plan: Plan, row: ClockRow): number {
  return Math.max(0, Math.floor(Math.min(headSeconds(plan, "countInSeconds"), row.end - row.start)));
}

function repSeconds(plan: Plan, item: MoveItem): number {
  const move = moveOf(plan, item);
  return (move && cycleSeconds(move)) ?? 0;
}

/**
 * The class on the clock: when every item begins and ends, and when the class does.
 *   start[i] = opening + sum over j < i of (transition[j] + work[j]) + transition[i];  total = last end + closing.
 */
import { tenth } from "#lib/numbers/round.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import type { Action, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { type Change, changesInto, NO_CHANGE } from "#lib/transitions/transitions.ts";

/** One item on the clock. Seconds from the start of the class; a heading takes no time. */
export interface ClockRow {
  readonly item: string;
  /** When the change into this item begins. */
  readonly transitionFrom: number;
  readonly start: number;
  readonly end: number;
  readonly transition: {
    /** The planned seconds, or null. */
    readonly planned: number | null;
    readonly estimate: number;
    readonly actions: Readonly<Partial<Record<Action, number>>>;
  };
  /** Work divided by one tempo cycle; null for holds, pauses and headings. */
  readonly reps: number | null;
}

export interface ClassClock {
  /** One row for each item in plan order, headings and pauses included. */
  readonly rows: readonly ClockRow[];
  /** Seconds from the first word of the opening to the end of the closing. */
  readonly total: number;
}

/**
 * The clock of a plan. A planned transition, 0 included, replaces the estimate, for the first move too. A pause takes
 * its seconds and has no transition; a heading is at the moment when the item before it ends. Times have at most one
 * decimal and are rounded only in the result. Never throws. `changes` are the plan's own, where already worked out.
 */
export function classClock(plan: Plan, changes: ReadonlyMap<string, Change> = changesInto(plan)): ClassClock {
  let now = headSeconds(plan, "openingSeconds");
  const rows = plan.items.map((item) => {
    const change = changes.get(item.id) ?? NO_CHANGE;
    const planned = item.kind === "move" ? (item.transitionSeconds ?? null) : null;
    const from = now;
    const start = from + (planned ?? change.estimate);
    now = start + (item.kind === "heading" ? 0 : item.seconds);
    const reps = item.kind === "move" ? repsOf(plan, item) : null;
    return clockRow({ item: item.id, from, start, end: now, planned, change, reps });
  });
  return { rows, total: tenth(now + headSeconds(plan, "closingSeconds")) };
}

interface Times {
  item: string;
  from: number;
  start: number;
  end: number;
  planned: number | null;
  change: Change;
  reps: number | null;
}

function clockRow(t: Times): ClockRow {
  return {
    item: t.item,
    transitionFrom: tenth(t.from),
    start: tenth(t.start),
    end: tenth(t.end),
    transition: { planned: t.planned, estimate: t.change.estimate, actions: t.change.actions },
    reps: t.reps,
  };
}

/** Seconds of one repetition, including holds at its ends; null for a held move. */
export function cycleSeconds(move: Pick<Move, "tempo">): number | null {
  const t = move.tempo;
  if ("holdSeconds" in t) return null;
  return t.outSeconds + (t.outHoldSeconds ?? 0) + t.backSeconds + (t.backHoldSeconds ?? 0);
}

function repsOf(plan: Plan, item: MoveItem): number | null {
  const move = moveOf(plan, item);
  const cycle = move ? cycleSeconds(move) : null;
  return cycle ? item.seconds / cycle : null;
}

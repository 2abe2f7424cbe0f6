/**
 * The class on the clock: when every item begins and ends, and when the class does.
 *   start[i] = opening + sum over j < i of (transition[j] + work[j]) + transition[i];  total = last end + closing.
 */
import { tenth } from "#lib/numbers/round.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import type { Action, Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { type Tellings, tellingsOf } from "#lib/talk/telling.ts";
import { type Change, changesInto, NO_CHANGE, transitionSeconds } from "#lib/transitions/transitions.ts";

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
    /** Whole seconds that people need for it, and that telling it takes. */
    readonly estimate: number;
    readonly telling: number;
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
 * The clock of a plan. A transition lasts as planned, 0 included, else until it is told and done; the first move has none
 * unless one is planned. A pause takes its seconds and has no transition; a heading is at the moment when the item before
 * it ends. Times have at most one decimal and are rounded only in the result. Never throws. `changes` and `tellings` are
 * the plan's own, where already worked out.
 */
export function classClock(
  plan: Plan,
  changes: ReadonlyMap<string, Change> = changesInto(plan),
  tellings: Tellings = tellingsOf(plan),
): ClassClock {
  let now = headSeconds(plan, "openingSeconds");
  const rows = plan.items.map((item) => {
    const change = changes.get(item.id) ?? NO_CHANGE;
    const planned = item.kind === "move" ? (item.transitionSeconds ?? null) : null;
    const from = now;
    const telling = tellings.get(item.id) ?? 0;
    const start = from + (item.kind === "move" ? transitionSeconds(item, change.estimate, telling) : 0);
    now = start + (item.kind === "heading" ? 0 : item.seconds);
    const reps = item.kind === "move" ? repsOf(plan, item) : null;
    return clockRow({ item: item.id, from, start, end: now, planned, change, telling, reps });
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
  telling: number;
  reps: number | null;
}

function clockRow(t: Times): ClockRow {
  return {
    item: t.item,
    transitionFrom: tenth(t.from),
    start: tenth(t.start),
    end: tenth(t.end),
    transition: { planned: t.planned, estimate: t.change.estimate, telling: t.telling, actions: t.change.actions },
    reps: t.reps,
  };
}

/** The tellings that a clock was made with. */
export const tellingsOn = (rows: readonly ClockRow[]): Tellings =>
  new Map(rows.map(({ item, transition }) => [item, transition.telling]));

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

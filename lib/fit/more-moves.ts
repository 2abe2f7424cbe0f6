/** How many moves a class still lacks where not even the longest times of those that it has would fill it. */
import type { ClassClock } from "#lib/clock/clock.ts";
import { headSeconds, isMoveItem } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { numberWords } from "#lib/talk/number-words.ts";
import { endsOf } from "./lattice.ts";
import { openItems } from "./problem.ts";

/**
 * About how many more moves of this plan's usual length, each with its usual change before it, fill the class. 0 where the
 * times of its own moves can fill it, where less than half a move is missing, or where there is no move to go by. `clock` is
 * the plan's own. Never throws.
 */
export function moreMoves(plan: Plan, { rows, total }: ClassClock): number {
  const moves = plan.items.flatMap((item, place) => (isMoveItem(item) ? [{ item, row: rows[place] }] : []));
  const missing = plan.lengthSeconds - total;
  // The closing takes up what is less than a grid step.
  const stretch = longerBy(plan) + headSeconds(plan, "gridSeconds") - 1;
  if (moves.length === 0 || missing <= Math.max(0, stretch)) return 0;
  const each =
    usual(moves.map(({ item }) => item.seconds)) +
    usual(moves.slice(1).map(({ row }) => (row ? row.start - row.transitionFrom : 0)));
  return each > 0 ? Math.round(missing / each) : 0;
}

/** "about eleven more moves"; above twenty in figures. */
export function moreMovesWords(count: number): string {
  if (count === 1) return "about one more move";
  return `about ${count <= 20 ? numberWords(count) : count} more moves`;
}

/** Seconds by which the moves that may change can be longer than they are. */
function longerBy(plan: Plan): number {
  const { variables, followers } = openItems(plan);
  const more = variables.map((v) => {
    const longest = endsOf(v)?.[1] ?? v.high;
    return v.spots.reduce((sum, { wish }) => sum + longest - wish, 0);
  });
  const followed = followers.map(({ seconds, wish }) => seconds - wish);
  return [...more, ...followed].reduce((sum, seconds) => sum + seconds, 0);
}

/** The middle of the values, 0 of none: one long hold does not make all moves long. */
function usual(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? 0)) / 2;
}

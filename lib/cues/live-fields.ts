/**
 * Fills the live fields of a line with what is true at the moment it is said: the seconds of this item's work that are
 * still to come, the minutes of the class, the side, the springs, the move, the one after.
 */
import type { ClockRow } from "#lib/clock/clock.ts";
import { moveItems } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { spokenText } from "#lib/talk/live-words.ts";

export interface LiveMoment {
  readonly plan: Plan;
  readonly item: MoveItem;
  /** The move after it, where whoever asks knows it already; undefined: looked up. */
  readonly next?: MoveItem | undefined;
  /** When its work begins and ends. */
  readonly row: Pick<ClockRow, "start" | "end">;
  /** Length of the whole class, closing included. */
  readonly total: number;
  /** Seconds from the start of the class. */
  readonly at: number;
}

/** The text as it is said at `moment.at`. Before the work begins, all of the work is still to come. */
export function fillLiveFields(text: string, { plan, item, next, row, total, at }: LiveMoment): string {
  if (!text.includes("{")) return text;
  const said = spokenText(plan, text, {
    item,
    next: next ?? moveAfter(plan, item),
    secondsLeft: Math.max(0, Math.min(row.end - at, row.end - row.start)),
    classSecondsLeft: total - at,
  });
  return said === text ? text : sentences(said);
}

function moveAfter(plan: Plan, item: MoveItem): MoveItem | undefined {
  const moves = moveItems(plan);
  return moves[moves.findIndex((move) => move.id === item.id) + 1];
}

/** A field that begins a sentence begins it with a capital: "{side} side. {side} foot up" is read off a screen too. */
const sentences = (text: string): string =>
  text.replace(/(^|[.!?]\s+)(\p{Ll})/gu, (_, before: string, letter: string) => before + letter.toUpperCase());

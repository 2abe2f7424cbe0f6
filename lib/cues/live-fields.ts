/**
 * Fills in a line's live fields with what is true when it is said: seconds left of the item's work, minutes left of the
 * class, side, springs, move and next move.
 */
import type { ClockRow } from "#lib/clock/clock.ts";
import { moveItems } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { spokenText } from "#lib/talk/live-words.ts";

export interface LiveMoment {
  readonly plan: Plan;
  readonly item: MoveItem;
  /** The next move, if the caller knows it; looked up when undefined. */
  readonly next?: MoveItem | undefined;
  /** When its work begins and ends. */
  readonly row: Pick<ClockRow, "start" | "end">;
  /** Length of the whole class, closing included. */
  readonly total: number;
  /** Seconds from the start of the class. */
  readonly at: number;
}

/** The text as said at `moment.at`. Before the work begins, all of its seconds are left. */
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

/** Capitalises a field at the start of a sentence, as in "{side} side. {side} foot up", since lines are also read. */
const sentences = (text: string): string =>
  text.replace(/(^|[.!?]\s+)(\p{Ll})/gu, (_, before: string, letter: string) => before + letter.toUpperCase());

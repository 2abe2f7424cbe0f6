/** What the first draft says of itself. Pure. */
import { agree, plural } from "#lib/plan/format.ts";

export const DRAFT_NOTE = "Nothing proposed is in the plan until you take it. Put it into your own words.";
export const PROPOSED = "Proposed";
export const proposedWords = (lines: number, moves: number): string =>
  `${plural(lines, "line")} ${agree(lines, "is", "are")} proposed for ${plural(moves, "move")}.`;
export const takeThese = (lines: number): string => agree(lines, "Take this line", `Take these ${lines} lines`);
export const TAKE_ALL = "Take the whole draft";
export const LEAVE_ALL = "Leave it";
export const LEFT_SAID = "Left. It is not proposed again on this device.";
export const twiceWords = (lines: number): string =>
  `${plural(lines, "line")} ${agree(lines, "stands", "stand")} twice.`;
export const NOTHING_PROPOSED = "Nothing is proposed here.";
export const takeBlock = (lines: number): string =>
  agree(lines, "Take the line proposed for this block", `Take the ${lines} lines proposed for this block`);

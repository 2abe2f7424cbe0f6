/** The words that live fields stand for, at one moment of one item. */
import { moveName, sideWords, spokenSprings } from "#lib/plan/format.ts";
import type { LiveField, MoveItem, Plan } from "#lib/plan/schema.ts";
import { parseScriptText } from "#lib/plan/script-text.ts";
import { amountWords, roundMinutes, roundSeconds } from "./round-times.ts";

export interface SpokenMoment {
  readonly item: MoveItem;
  /** The move that follows, if any. */
  readonly next: MoveItem | undefined;
  /** Seconds of the item's work still to go. */
  readonly secondsLeft: number;
  /** Seconds of the class still to go, closing included. */
  readonly classSecondsLeft: number;
}

/**
 * A line as it is read or said. A line with an unknown field stays as written: the parser of plan files refuses it, and a
 * screen shows it rather than hide it.
 */
export function spokenText(plan: Plan, text: string, moment: SpokenMoment): string {
  const parsed = parseScriptText(text);
  if (!parsed.ok) return text;
  let said = "";
  for (const piece of parsed.pieces)
    said +=
      "text" in piece ? forOne(said, piece.text) : fieldWords(plan, piece.field, moment, said.slice(-LONGEST_WORD));
  return said;
}

/** "One second" and "half a minute", where the line has "{seconds-left} seconds". */
const forOne = (before: string, text: string): string =>
  ONE.test(before) ? text.replace(/^ (second|minute)s\b/, " $1") : text;
const ONE = /(?:^|\s)(?:one|half a)$/i;

/** More than the longest word that `amountWords` looks for. */
const LONGEST_WORD = 20;

/** A field's words as said: "about forty five" for seconds and minutes, "two light" for springs. `before`: the words before it. */
function fieldWords(plan: Plan, field: LiveField, moment: SpokenMoment, before: string): string {
  switch (field) {
    case "move":
      return moveName(plan, moment.item);
    case "next-move":
      return moment.next ? moveName(plan, moment.next) : "the close";
    case "side":
      return sideWords(moment.item.side);
    case "springs":
      return spokenSprings(plan.equipment, moment.item.springs);
    case "seconds-left":
      return amountWords(roundSeconds(moment.secondsLeft), before);
    case "minutes-left":
      return amountWords(roundMinutes(moment.classSecondsLeft), before);
  }
}

/** The words that live fields stand for, at one moment of one item. */
import { moveName, sideWords, springWords } from "#lib/plan/format.ts";
import type { LiveField, MoveItem, Plan } from "#lib/plan/schema.ts";
import { parseScriptText } from "#lib/plan/script-text.ts";
import { numberWords } from "./number-words.ts";

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
  return parsed.pieces.map((piece) => ("text" in piece ? piece.text : fieldWords(plan, piece.field, moment))).join("");
}

/** A field's words as said: "forty five" for seconds, the nearest whole minute, "two light" for springs. */
function fieldWords(plan: Plan, field: LiveField, moment: SpokenMoment): string {
  switch (field) {
    case "move":
      return moveName(plan, moment.item);
    case "next-move":
      return moment.next ? moveName(plan, moment.next) : "the close";
    case "side":
      return sideWords(moment.item.side);
    case "springs":
      return springWords(plan.equipment, moment.item.springs);
    case "seconds-left":
      return numberWords(Math.max(0, Math.round(moment.secondsLeft)));
    case "minutes-left":
      return numberWords(Math.max(0, Math.round(moment.classSecondsLeft / 60)));
  }
}

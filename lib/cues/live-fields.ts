/**
 * Fills the live fields of a line with what is true at the moment it is said. `{{` is a brace. A field nobody knows stays
 * as it is written: the parser of plan files refuses it, and a screen shows it rather than hide it.
 */
import type { ClockRow } from "#lib/clock/clock.ts";
import { moveName, sideWords, springWords } from "#lib/plan/format.ts";
import { LIVE_FIELDS, type LiveField, type MoveItem, type Plan } from "#lib/plan/schema.ts";

export interface LiveMoment {
  readonly plan: Plan;
  readonly item: MoveItem;
  readonly row: ClockRow;
  /** Length of the whole class, closing included. */
  readonly total: number;
  /** Seconds from the start of the class. */
  readonly at: number;
}

const isLiveField = (word: string): word is LiveField => LIVE_FIELDS.some((field) => field === word);

/** The text as it is said at `moment.at`. */
export const fillLiveFields = (text: string, moment: LiveMoment): string =>
  text.replace(/\{\{|\{([a-z-]+)\}/g, (whole, word: string | undefined) => {
    if (word === undefined) return "{";
    return isLiveField(word) ? liveValue(word, moment) : whole;
  });

/** One field's words. Seconds are whole and of this item's work; minutes are of the class, to the nearest whole one. */
export function liveValue(field: LiveField, { plan, item, row, total, at }: LiveMoment): string {
  switch (field) {
    case "move":
      return moveName(plan, item);
    case "next-move":
      return nextMoveName(plan, item.id) ?? "the close";
    case "seconds-left":
      return String(Math.round(Math.max(0, Math.min(row.end - at, row.end - row.start))));
    case "minutes-left":
      return String(Math.round(Math.max(0, total - at) / 60));
    case "side":
      return sideWords(item.side);
    case "springs":
      return springWords(plan.equipment, item.springs);
  }
}

/** Name of the first move after an item; undefined when none follows. */
export function nextMoveName(plan: Plan, itemId: string): string | undefined {
  const index = plan.items.findIndex((item) => item.id === itemId);
  const next = plan.items.slice(index + 1).find((item) => item.kind === "move");
  return next?.kind === "move" ? moveName(plan, next) : undefined;
}

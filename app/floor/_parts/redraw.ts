/** When a screen of the floor has to be drawn again; screens that lead and screens that follow check equally often. */
import type { Card } from "#lib/card/schema.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { floorView } from "#lib/floor/now.ts";
import { latenessWords } from "#lib/floor/time-words.ts";

/** A second is shown at most this late: several screens have to change together, and people see a difference of 100 ms. */
export const REDRAW_CHECK_MS = 20;

/** All that a screen shows of a moment. It is drawn again only when this changes, about twice a second. */
export function shownAt(card: Card, log: FloorLog, now: number): string {
  const { phase, item, secondsLeft, openAct, line, held, progress, left, lateBy } = floorView(card, log, now);
  const rail = Math.round(progress * 2000);
  return JSON.stringify([
    phase,
    item?.id,
    secondsLeft,
    openAct,
    line,
    held,
    rail,
    Math.ceil(left - 1e-6),
    latenessWords(lateBy),
  ]);
}

/** When a screen of the floor has to be drawn again: one that leads and one that follows look equally often. */
import type { Card } from "#lib/card/schema.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { floorView } from "#lib/floor/now.ts";
import { latenessWords } from "#lib/floor/time-words.ts";

/** A second is shown at most this late: several screens are to change together, and 100 ms are seen. */
export const LOOK_MS = 20;

/** All that a screen shows of a moment: the page is drawn again only when this changes, some twice a second. */
export function shownAt(card: Card, log: FloorLog, now: number): string {
  const { phase, item, secondsLeft, line, held, progress, left, lateBy } = floorView(card, log, now);
  const rail = Math.round(progress * 2000);
  return JSON.stringify([
    phase,
    item?.id,
    secondsLeft,
    line,
    held,
    rail,
    Math.ceil(left - 1e-6),
    latenessWords(lateBy),
  ]);
}

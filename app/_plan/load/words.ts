/** What the load part says: newtons, centimetres from the anchor, how a person takes the place. */
import type { KeptSprings } from "#lib/load/keep-springs.ts";
import { offsetWords, placeVerb } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";

/** Said wherever a load is shown. */
export const LOAD_NOTE =
  "Worked out from this room's springs as the studio measured them: a model, not a reading. The machine maker's manual wins.";

/** Whole newtons: a spring measured with a luggage scale knows no more. */
export const newtonWords = (newtons: number): string => `${Math.round(newtons)} N`;

/** "8 cm further from the anchor"; "at its usual place" for none. */
export const placeWords = (mm: number): string => (mm === 0 ? "at its usual place" : offsetWords(mm));

/** "No spring change needed: sit 8 cm further from the anchor." */
export function keptSentence(move: Move, kept: KeptSprings): string {
  const how = kept.byMm === 0 ? "stay where you are" : `${placeVerb(move)} ${offsetWords(kept.byMm)}`;
  return `No spring change needed: ${how}.`;
}

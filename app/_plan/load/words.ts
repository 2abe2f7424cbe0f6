/** What the load part says: newtons, centimetres from the anchor, how a person takes the place. */
import type { KeptSprings } from "#lib/load/keep-springs.ts";
import { plainNumber } from "#lib/plan/format.ts";
import type { Move } from "#lib/plan/schema.ts";

/** Said wherever a load is shown. */
export const LOAD_NOTE =
  "Worked out from this room's springs as the studio measured them: a model, not a reading. The machine maker's manual wins.";

/** Whole newtons: a spring measured with a luggage scale knows no more. */
export const newtonWords = (newtons: number): string => `${Math.round(newtons)} N`;

/** "8 cm further from the anchor"; "at its usual place" for none. */
export function offsetWords(mm: number): string {
  return mm === 0 ? "at its usual place" : distanceWords(mm);
}

export function distanceWords(mm: number): string {
  return `${plainNumber(Math.abs(mm) / 10)} cm ${mm > 0 ? "further from" : "nearer to"} the anchor`;
}

/** "No spring change needed: sit 8 cm further from the anchor." */
export function keptSentence(move: Move, kept: KeptSprings): string {
  const how = kept.byMm === 0 ? "stay where you are" : `${placeVerb(move)} ${distanceWords(kept.byMm)}`;
  return `No spring change needed: ${how}.`;
}

export function placeVerb({ position }: Move): string {
  switch (position) {
    case "seated":
      return "sit";
    case "kneeling":
    case "quadruped":
      return "kneel";
    case "standing":
      return "stand";
    case "supine":
    case "prone":
    case "side-lying":
      return "lie";
    default:
      return "start";
  }
}

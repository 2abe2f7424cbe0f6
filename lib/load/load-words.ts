/** Puts loads into words: newtons, centimetres from the anchor, and whether the springs from before could stay on. */
import { countWord, listWords, offsetWords, placeVerb, plainNumber, spokenSprings } from "#lib/plan/format.ts";
import type { Move, Plan } from "#lib/plan/schema.ts";
import type { AgainstKeeping, KeptSprings } from "./keep-springs.ts";

/** Whole newtons, since springs measured with a luggage scale are no more exact. */
export const newtonWords = (newtons: number): string => `${Math.round(newtons)} N`;

/** "8 cm further from the anchor"; "at its usual place" for none. */
export const usualPlaceWords = (mm: number): string => (mm === 0 ? "at its usual place" : offsetWords(mm));

/** Whether the springs can stay on. */
export const canStay = (kept: KeptSprings): boolean => kept.against.length === 0;

/** "No spring change needed: sit 8 cm further from the anchor.", or why one is needed. */
export function keptSentence(move: Move, kept: KeptSprings): string {
  if (!canStay(kept)) return `The springs have to change: ${listWords(kept.against.map(againstWords))}.`;
  const how = kept.byMm === 0 ? "stay where you are" : `${placeVerb(move)} ${offsetWords(kept.byMm)}`;
  return [`No spring change needed: ${how}.`, slackWords(kept.slackMm)].filter(Boolean).join(" ");
}

/** What keeping them would do to the loads, with `name` for the item before; empty where they cannot stay. */
export function keptDetail({ equipment }: Plan, kept: KeptSprings, name: string): string {
  if (!canStay(kept)) return "";
  const { atStart, atMid, atEnd } = kept.newtons;
  const loads = `${newtonWords(atMid)} in the middle (now ${newtonWords(kept.wantedN)}), ${newtonWords(atStart)} at the start, ${newtonWords(atEnd)} at the end.`;
  return [
    `With ${spokenSprings(equipment, kept.before.springs)} still on from “${name}”, started ${usualPlaceWords(kept.offsetMm)}: ${loads}`,
    kept.savedSeconds > 0 && `It saves ${plainNumber(kept.savedSeconds)} s of changes.`,
  ]
    .filter(Boolean)
    .join(" ");
}

/** How far the springs hang slack at the start of the travel, whole centimetres and at least 1; empty where they do not. */
export function slackWords(mm: number): string {
  if (mm <= 0) return "";
  return `The springs hang slack for the first ${Math.max(1, Math.round(mm / 10))} cm and do not hold the carriage there.`;
}

function againstWords({ spring, by, limit }: AgainstKeeping): string {
  if (by === "library-least") return `this move takes at least ${countWord(limit)} ${spring}`;
  if (by === "room") return `the room has ${limit === 0 ? "no" : `only ${countWord(limit)}`} ${spring}`;
  return limit === 0 ? `this move takes no ${spring}` : `this move takes at most ${countWord(limit)} ${spring}`;
}

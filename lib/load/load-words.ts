/** Puts loads into words: forces, how far from the anchor, and whether the springs from before could stay on. */
import type { Formats } from "#lib/formats/formats.ts";
import { distanceWords, forceWords, offsetWords } from "#lib/formats/units.ts";
import { countWord, listWords, placeVerb, plainNumber, spokenSprings } from "#lib/plan/format.ts";
import type { Move, Plan } from "#lib/plan/schema.ts";
import type { AgainstKeeping, KeptSprings } from "./keep-springs.ts";

/** "8 cm further from the anchor"; "at its usual place" for none. */
export const usualPlaceWords = (mm: number, f: Formats): string =>
  mm === 0 ? "at its usual place" : offsetWords(mm, f);

/** Whether the springs can stay on. */
export const canStay = (kept: KeptSprings): boolean => kept.against.length === 0;

/** "No spring change needed: sit 8 cm further from the anchor.", or why one is needed. */
export function keptSentence(move: Move, kept: KeptSprings, f: Formats): string {
  if (!canStay(kept)) return `The springs have to change: ${listWords(kept.against.map(againstWords))}.`;
  const how = kept.byMm === 0 ? "stay where you are" : `${placeVerb(move)} ${offsetWords(kept.byMm, f)}`;
  return [`No spring change needed: ${how}.`, slackWords(kept.slackMm, f)].filter(Boolean).join(" ");
}

/** What keeping them would do to the loads, with `name` for the item before; empty where they cannot stay. */
export function keptDetail({ equipment }: Plan, kept: KeptSprings, name: string, f: Formats): string {
  if (!canStay(kept)) return "";
  const { atStart, atMid, atEnd } = kept.newtons;
  const [mid, now, start, end] = [atMid, kept.wantedN, atStart, atEnd].map((n) => forceWords(n, f));
  const loads = `${mid} in the middle (now ${now}), ${start} at the start, ${end} at the end.`;
  return [
    `With ${spokenSprings(equipment, kept.before.springs)} still on from “${name}”, started ${usualPlaceWords(kept.offsetMm, f)}: ${loads}`,
    kept.savedSeconds > 0 && `It saves ${plainNumber(kept.savedSeconds)} s of changes.`,
  ]
    .filter(Boolean)
    .join(" ");
}

/** How far the springs hang slack at the start of the travel, to the centimetre and at least 1; empty where they do not. */
export function slackWords(mm: number, f: Formats): string {
  if (mm <= 0) return "";
  return `The springs hang slack for the first ${distanceWords(Math.max(10, Math.round(mm / 10) * 10), f)} and do not hold the carriage there.`;
}

function againstWords({ spring, by, limit }: AgainstKeeping): string {
  if (by === "library-least") return `this move takes at least ${countWord(limit)} ${spring}`;
  if (by === "room") return `the room has ${limit === 0 ? "no" : `only ${countWord(limit)}`} ${spring}`;
  return limit === 0 ? `this move takes no ${spring}` : `this move takes at most ${countWord(limit)} ${spring}`;
}

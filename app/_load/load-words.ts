/** What the load of an item and the intensity of a class say. */

import type { Formats } from "#lib/formats/formats.ts";
import { percent, percentRange } from "#lib/formats/percent.ts";
import { distanceWords, forceNumber, forceWords, perMassWords } from "#lib/formats/units.ts";
import type { ClassIntensity, IntensityLevel, IntensityPart } from "#lib/intensity/intensity.ts";
import { handsNPerKg } from "#lib/load/load.ts";
import { plainNumber, plural } from "#lib/plan/format.ts";
import { handsShare, type Pose } from "#lib/statics/hands.ts";
import type { LineKind } from "./load-lines.ts";

/** The note that stands wherever a load is shown. */
export const LOAD_NOTE =
  "Calculated from this room’s springs as the studio measured them. Where the machine maker’s manual says otherwise, follow the manual.";

export const inTheMiddle = (newtons: number, f: Formats): string => `${forceWords(newtons, f)} in the middle`;

/** A line of the curve. `helps`: the springs help instead of resisting. */
export function lineWords(kind: LineKind, helps: boolean): string {
  switch (kind) {
    case "own":
      return "as it is";
    case "lighter":
      return helps ? "one step less help" : "one step lighter";
    case "heavier":
      return helps ? "one step more help" : "one step heavier";
    case "before":
      return "the spring item before";
  }
}

export const askedWords = ([low, high]: readonly [number, number], f: Formats): string =>
  `The library asks for ${forceNumber(low, f)} to ${forceWords(high, f)} in the middle.`;

/** Common practice, no source: how high the hands or feet are in the poses that say so. */
const RAISED_MM = 300;
const poseWords = (pose: Pose, f: Formats): string => POSE_WORDS[pose].replace("{raised}", distanceWords(RAISED_MM, f));

const POSE_WORDS: Readonly<Record<Pose, string>> = {
  "high-plank": "in a plank on straight arms",
  "forearm-plank": "in a plank on the forearms",
  knees: "on the knees, feet off the ground or down",
  "hands-raised": "in a plank with the hands {raised} up",
  "feet-raised": "in a plank with the feet {raised} up",
  "push-up-low": "at the bottom of a push-up",
};

/** The wrist load of a pose: "The hands carry about ", "38%", " of the body's weight …", and what that holds for. */
export function wristLoadWords(pose: Pose, f: Formats) {
  const { share, low, high } = handsShare(pose);
  const perKg = handsNPerKg(pose).newtons;
  return {
    before: `The ${pose === "forearm-plank" ? "forearms" : "hands"} carry about `,
    share: percent(share),
    after: ` of the body's weight (${percentRange(low, high)}): ${perMassWords(perKg, f)} of the person.`,
    holdsFor: ` For holding still ${poseWords(pose, f)} on firm ground. Calculated, not measured.`,
  };
}

export const METS_NOTE =
  "METs are averages of groups, not measurements of one person. None is published for a sliding carriage with springs, so the studio judged which one fits each move. Rest counts as 1 MET. Strength work feels harder than its MET suggests. Energy: MET × 3.5 × kg ÷ 200 kcal a minute.";

export const INTENSITY_WORDS: Readonly<Record<IntensityLevel, string>> = {
  vigorous: "vigorous, from 6 MET",
  moderate: "moderate, 3 to 6 MET",
  light: "light, 2 to 3 MET",
  "very-light": "very light, under 2 MET",
  rest: "opening, changes, pauses, closing",
};

export const withoutMet = (items: number): string => `${plural(items, "item")} without a MET, not counted`;

/** The picture of METs in a sentence. */
export function arcWords({ arc }: ClassIntensity): string {
  const work = arc.filter((part) => part.work && part.met !== null);
  const harder = (a: IntensityPart, b: IntensityPart) => ((a.met ?? 0) >= (b.met ?? 0) ? a : b);
  const hardest = work.length === 0 ? undefined : work.reduce(harder);
  if (!hardest || hardest.met === null) return "METs over the class: no move has one.";
  const minute = Math.floor(hardest.from / 60) + 1;
  return `METs over the class, highest ${plainNumber(hardest.met)} from minute ${minute}.`;
}

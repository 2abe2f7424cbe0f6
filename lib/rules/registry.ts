/** Every rule, by id. An explicit list: a bundler sees it, and so does a reviewer. */
import { cautionWithoutEasier } from "./rules/caution-without-easier.ts";
import { cautionWithoutSafetyLine } from "./rules/caution-without-safety-line.ts";
import { expectedCautionUnanswered } from "./rules/expected-caution-unanswered.ts";
import { missingCue } from "./rules/missing-cue.ts";
import { missingSide } from "./rules/missing-side.ts";
import { noRoomForHeadsUp } from "./rules/no-room-for-heads-up.ts";
import { openingOrClosingMissing } from "./rules/opening-or-closing-missing.ts";
import { partialRep } from "./rules/partial-rep.ts";
import { springsNotThere } from "./rules/springs-not-there.ts";
import { springsOutOfRange } from "./rules/springs-out-of-range.ts";
import { themeMissed } from "./rules/theme-missed.ts";
import { tooShortOrLong } from "./rules/too-short-or-long.ts";
import { totalLength } from "./rules/total-length.ts";
import { transitionTooShort } from "./rules/transition-too-short.ts";
import { unevenSides } from "./rules/uneven-sides.ts";
import { unevenSpringsBetweenSides } from "./rules/uneven-springs-between-sides.ts";
import { unknownMoveData } from "./rules/unknown-move-data.ts";
import type { AnyRule } from "./types.ts";

export const RULES: readonly AnyRule[] = [
  cautionWithoutEasier,
  cautionWithoutSafetyLine,
  expectedCautionUnanswered,
  missingCue,
  missingSide,
  noRoomForHeadsUp,
  openingOrClosingMissing,
  partialRep,
  springsNotThere,
  springsOutOfRange,
  themeMissed,
  tooShortOrLong,
  totalLength,
  transitionTooShort,
  unevenSides,
  unevenSpringsBetweenSides,
  unknownMoveData,
];

export const ruleById = (id: string): AnyRule | undefined => RULES.find((rule) => rule.id === id);

/** The rules that a page starts with, sorted by id: all that need not know what the words claim. The list is explicit, so that the bundler and reviewers see it. */

import type { AnyRule } from "./define/types.ts";
import { beyondTheCarriage } from "./rules/beyond-the-carriage.ts";
import { cautionWithoutEasier } from "./rules/caution-without-easier.ts";
import { cautionWithoutSafetyLine } from "./rules/caution-without-safety-line.ts";
import { changeCouldBeAvoided } from "./rules/change-could-be-avoided.ts";
import { changeNotTold } from "./rules/change-not-told.ts";
import { expectedCautionUnanswered } from "./rules/expected-caution-unanswered.ts";
import { groupWithoutRest } from "./rules/group-without-rest.ts";
import { handOrFootNotFree } from "./rules/hand-or-foot-not-free.ts";
import { letGoBeforeCarriageHome } from "./rules/let-go-before-carriage-home.ts";
import { loadForBody } from "./rules/load-for-body.ts";
import { longHoldWithoutBreath } from "./rules/long-hold-without-breath.ts";
import { missingCue } from "./rules/missing-cue.ts";
import { missingSide } from "./rules/missing-side.ts";
import { noRoomForHeadsUp } from "./rules/no-room-for-heads-up.ts";
import { oneWaySpine } from "./rules/one-way-spine.ts";
import { openingOrClosingMissing } from "./rules/opening-or-closing-missing.ts";
import { partialRep } from "./rules/partial-rep.ts";
import { pushPullApart } from "./rules/push-pull-apart.ts";
import { setupLineTwice } from "./rules/setup-line-twice.ts";
import { setupTalkTooLong } from "./rules/setup-talk-too-long.ts";
import { silentStretch } from "./rules/silent-stretch.ts";
import { springsChangedCarriageOut } from "./rules/springs-changed-carriage-out.ts";
import { springsNotThere } from "./rules/springs-not-there.ts";
import { springsOutOfRange } from "./rules/springs-out-of-range.ts";
import { startPlaceNotTold } from "./rules/start-place-not-told.ts";
import { talkTooLong } from "./rules/talk-too-long.ts";
import { themeMissed } from "./rules/theme-missed.ts";
import { tooLightToBeSteady } from "./rules/too-light-to-be-steady.ts";
import { tooManySetups } from "./rules/too-many-setups.ts";
import { tooShortOrLong } from "./rules/too-short-or-long.ts";
import { totalLength } from "./rules/total-length.ts";
import { transitionTooShort } from "./rules/transition-too-short.ts";
import { unevenSides } from "./rules/uneven-sides.ts";
import { unevenSpringsBetweenSides } from "./rules/uneven-springs-between-sides.ts";
import { unknownMoveData } from "./rules/unknown-move-data.ts";
import { warmUpTooSteep } from "./rules/warm-up-too-steep.ts";
import { wristsWithoutRest } from "./rules/wrists-without-rest.ts";

export const STARTING_RULES: readonly AnyRule[] = [
  beyondTheCarriage,
  cautionWithoutEasier,
  cautionWithoutSafetyLine,
  changeCouldBeAvoided,
  changeNotTold,
  expectedCautionUnanswered,
  groupWithoutRest,
  handOrFootNotFree,
  letGoBeforeCarriageHome,
  loadForBody,
  longHoldWithoutBreath,
  missingCue,
  missingSide,
  noRoomForHeadsUp,
  oneWaySpine,
  openingOrClosingMissing,
  partialRep,
  pushPullApart,
  setupLineTwice,
  setupTalkTooLong,
  silentStretch,
  springsChangedCarriageOut,
  springsNotThere,
  springsOutOfRange,
  startPlaceNotTold,
  talkTooLong,
  themeMissed,
  tooLightToBeSteady,
  tooManySetups,
  tooShortOrLong,
  totalLength,
  transitionTooShort,
  unevenSides,
  unevenSpringsBetweenSides,
  unknownMoveData,
  warmUpTooSteep,
  wristsWithoutRest,
];

/**
 * Every rule's examples, by the rule's id, for its page and its tests. Kept apart from the rules so that pages that only
 * check do not load them.
 */

import type { AnyRule, RuleExamples } from "./define/types.ts";
import { beyondTheCarriageExamples } from "./rules/beyond-the-carriage.ts";
import { cautionWithoutEasierExamples } from "./rules/caution-without-easier.ts";
import { cautionWithoutSafetyLineExamples } from "./rules/caution-without-safety-line.ts";
import { changeCouldBeAvoidedExamples } from "./rules/change-could-be-avoided.ts";
import { changeNotToldExamples } from "./rules/change-not-told.ts";
import { expectedCautionUnansweredExamples } from "./rules/expected-caution-unanswered.ts";
import { groupWithoutRestExamples } from "./rules/group-without-rest.ts";
import { handOrFootNotFreeExamples } from "./rules/hand-or-foot-not-free.ts";
import { letGoBeforeCarriageHomeExamples } from "./rules/let-go-before-carriage-home.ts";
import { loadForBodyExamples } from "./rules/load-for-body.ts";
import { longHoldWithoutBreathExamples } from "./rules/long-hold-without-breath.ts";
import { missingCueExamples } from "./rules/missing-cue.ts";
import { missingSideExamples } from "./rules/missing-side.ts";
import { noRoomForHeadsUpExamples } from "./rules/no-room-for-heads-up.ts";
import { oneWaySpineExamples } from "./rules/one-way-spine.ts";
import { openingOrClosingMissingExamples } from "./rules/opening-or-closing-missing.ts";
import { partialRepExamples } from "./rules/partial-rep.ts";
import { pushPullApartExamples } from "./rules/push-pull-apart.ts";
import { saysOtherwiseExamples } from "./rules/says-otherwise.ts";
import { setupLineTwiceExamples } from "./rules/setup-line-twice.ts";
import { setupTalkTooLongExamples } from "./rules/setup-talk-too-long.ts";
import { silentStretchExamples } from "./rules/silent-stretch.ts";
import { springsChangedCarriageOutExamples } from "./rules/springs-changed-carriage-out.ts";
import { springsNotThereExamples } from "./rules/springs-not-there.ts";
import { springsOutOfRangeExamples } from "./rules/springs-out-of-range.ts";
import { startPlaceNotToldExamples } from "./rules/start-place-not-told.ts";
import { talkTooLongExamples } from "./rules/talk-too-long.ts";
import { themeMissedExamples } from "./rules/theme-missed.ts";
import { tooLightToBeSteadyExamples } from "./rules/too-light-to-be-steady.ts";
import { tooManySetupsExamples } from "./rules/too-many-setups.ts";
import { tooShortOrLongExamples } from "./rules/too-short-or-long.ts";
import { totalLengthExamples } from "./rules/total-length.ts";
import { transitionTooShortExamples } from "./rules/transition-too-short.ts";
import { typedNumberThatCouldBeLiveExamples } from "./rules/typed-number-that-could-be-live.ts";
import { unevenSidesExamples } from "./rules/uneven-sides.ts";
import { unevenSpringsBetweenSidesExamples } from "./rules/uneven-springs-between-sides.ts";
import { unknownMoveDataExamples } from "./rules/unknown-move-data.ts";
import { warmUpTooSteepExamples } from "./rules/warm-up-too-steep.ts";
import { wristsWithoutRestExamples } from "./rules/wrists-without-rest.ts";

const EXAMPLES: Readonly<Record<string, () => RuleExamples>> = {
  "beyond-the-carriage": beyondTheCarriageExamples,
  "caution-without-easier": cautionWithoutEasierExamples,
  "caution-without-safety-line": cautionWithoutSafetyLineExamples,
  "change-could-be-avoided": changeCouldBeAvoidedExamples,
  "change-not-told": changeNotToldExamples,
  "expected-caution-unanswered": expectedCautionUnansweredExamples,
  "group-without-rest": groupWithoutRestExamples,
  "hand-or-foot-not-free": handOrFootNotFreeExamples,
  "let-go-before-carriage-home": letGoBeforeCarriageHomeExamples,
  "load-for-body": loadForBodyExamples,
  "long-hold-without-breath": longHoldWithoutBreathExamples,
  "missing-cue": missingCueExamples,
  "missing-side": missingSideExamples,
  "no-room-for-heads-up": noRoomForHeadsUpExamples,
  "one-way-spine": oneWaySpineExamples,
  "opening-or-closing-missing": openingOrClosingMissingExamples,
  "partial-rep": partialRepExamples,
  "push-pull-apart": pushPullApartExamples,
  "says-otherwise": saysOtherwiseExamples,
  "setup-line-twice": setupLineTwiceExamples,
  "setup-talk-too-long": setupTalkTooLongExamples,
  "silent-stretch": silentStretchExamples,
  "springs-changed-carriage-out": springsChangedCarriageOutExamples,
  "springs-not-there": springsNotThereExamples,
  "springs-out-of-range": springsOutOfRangeExamples,
  "start-place-not-told": startPlaceNotToldExamples,
  "talk-too-long": talkTooLongExamples,
  "theme-missed": themeMissedExamples,
  "too-light-to-be-steady": tooLightToBeSteadyExamples,
  "too-many-setups": tooManySetupsExamples,
  "too-short-or-long": tooShortOrLongExamples,
  "total-length": totalLengthExamples,
  "transition-too-short": transitionTooShortExamples,
  "typed-number-that-could-be-live": typedNumberThatCouldBeLiveExamples,
  "uneven-sides": unevenSidesExamples,
  "uneven-springs-between-sides": unevenSpringsBetweenSidesExamples,
  "unknown-move-data": unknownMoveDataExamples,
  "warm-up-too-steep": warmUpTooSteepExamples,
  "wrists-without-rest": wristsWithoutRestExamples,
};

/** Throws for a rule without examples; the tests of the rules then fail. */
export function examplesOf(rule: Pick<AnyRule, "id">): RuleExamples {
  const make = Object.hasOwn(EXAMPLES, rule.id) ? EXAMPLES[rule.id] : undefined;
  if (!make) throw new Error(`rule ${rule.id} has no examples`);
  return make();
}

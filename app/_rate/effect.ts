/** What another speaking rate would change in a plan, before it is taken. Pure. */

import { checkPlan } from "#lib/analysis/check-plan.ts";
import { classClock } from "#lib/clock/clock.ts";
import { type ClassTalk, classTalk } from "#lib/cues/class-talk.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import type { Plan } from "#lib/plan/schema.ts";

export interface TalkSums {
  readonly talk: ClassTalk;
  readonly findings: number;
}

export const talkSums = (plan: Plan): TalkSums => ({
  talk: classTalk(cueTrack(plan), classClock(plan).total),
  findings: checkPlan(plan).findings.length,
});

export const atRate = (plan: Plan, syllablesPerSecond: number): Plan => ({
  ...plan,
  speech: { ...plan.speech, syllablesPerSecond },
});

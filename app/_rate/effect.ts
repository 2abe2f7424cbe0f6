/** What another speaking rate would change in a plan, before it is taken. Pure. */
import { cueTrack } from "#lib/cues/cue-track.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { checkPlan } from "#lib/rules/run.ts";
import { classTalk } from "#lib/talk/talk.ts";

export interface TalkSums {
  /** Seconds of the script's own lines. */
  readonly talkSeconds: number;
  /** Part of the class between opening and closing. */
  readonly share: number;
  /** Lines set aside for want of time. */
  readonly aside: number;
  readonly findings: number;
}

export function talkSums(plan: Plan): TalkSums {
  const { seconds, share } = classTalk(plan);
  return {
    talkSeconds: seconds,
    share,
    aside: cueTrack(plan).dropped.length,
    findings: checkPlan(plan).findings.length,
  };
}

export const atRate = (plan: Plan, syllablesPerSecond: number): Plan => ({
  ...plan,
  speech: { ...plan.speech, syllablesPerSecond },
});

/** The whole class of a plan, as on its page. */

import { checkPlan } from "#lib/analysis/check-plan.ts";
import { balance } from "#lib/balance/balance.ts";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { classLanes } from "#lib/lanes/class-lanes.ts";
import type { Lane, LaneKind } from "#lib/lanes/types.ts";
import { itemName } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { ThreadView } from "#lib/protocol/messages.ts";
import { talkByItem } from "#lib/talk/talk.ts";

export function lanesOf(plan: Plan, threads: readonly ThreadView[] = []) {
  const clock = classClock(plan);
  const { rows, total } = clock;
  const talkShares: Record<string, number> = {};
  for (const [id, { seconds, roomSeconds }] of talkByItem(plan, clock)) {
    if (seconds > 0) talkShares[id] = roomSeconds > 0 ? seconds / roomSeconds : Number.POSITIVE_INFINITY;
  }
  return classLanes({
    plan,
    rows,
    total,
    nameOf: (item) => itemName(plan, item),
    balance: balance(plan),
    talkShares,
    track: cueTrack(plan),
    findings: checkPlan(plan).findings,
    threads,
    present: [],
  });
}

/** The one lane of that kind. */
export function laneOf<K extends LaneKind>(lanes: readonly Lane[], kind: K): Extract<Lane, { kind: K }> {
  const lane = lanes.find((l): l is Extract<Lane, { kind: K }> => l.kind === kind);
  if (!lane) throw new Error(`no lane ${kind}`);
  return lane;
}

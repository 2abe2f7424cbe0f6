/** What was rehearsed: the seconds of each set-up and each line, planned and as the coach did them. */

import type { Card } from "#lib/card/schema.ts";
import { tenth } from "#lib/numbers/round.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { changesInto } from "#lib/transitions/transitions.ts";
import { floorStages } from "./now.ts";
import { beatsOf, type Rehearsing, reachedAt, spokenBetween } from "./rehearsal.ts";
import type { Rehearsed } from "./rehearsed-schema.ts";

/** In the order of the class. What was done twice counts as done last; what was skipped is left out. */
export function rehearsedTimes(card: Card, { log, taps }: Rehearsing): Rehearsed {
  const last = new Map(taps.flatMap(({ beat, seconds }) => (seconds === null ? [] : [[beat, seconds] as const])));
  const lines = beatsOf(card).flatMap((beat, n) => {
    const took = last.get(n);
    const { item, kind, text, from, to } = beat;
    return took === undefined ? [] : [{ item, kind, text, planned: tenth(to - from), took: tenth(took) }];
  });
  return { changes: changesOf(card, log), lines };
}

function changesOf(card: Card, log: Rehearsing["log"]): Rehearsed["changes"] {
  const stages = floorStages(card, log);
  const took = new Map<string, number>();
  for (const [n, { event }] of stages.entries()) {
    const before = stages[n - 1];
    if (event.type !== "next" || !before || event.to === undefined) continue;
    const step = before.now.steps.find((s) => s.phase === "change" && s.to === event.to);
    const until = log.slice(0, n);
    const from = step && reachedAt(card, until, step.from, event.at);
    if (step?.item && typeof from === "number")
      took.set(step.item, spokenBetween(card, log.slice(0, n + 1), from, event.at));
  }
  const moves = card.plan.items.filter(isMoveItem);
  const alone = changesInto({ ...card.plan, people: 1 });
  return card.clock.rows.flatMap((row) => {
    const done = took.get(row.item);
    if (done === undefined) return [];
    const after = moves[moves.findIndex(({ id }) => id === row.item) - 1]?.id ?? null;
    const estimate = alone.get(row.item)?.estimate ?? 0;
    return [{ item: row.item, after, planned: tenth(row.start - row.transitionFrom), estimate, took: tenth(done) }];
  });
}

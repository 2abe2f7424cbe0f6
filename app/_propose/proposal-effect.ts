"use client";
/** What a proposal does to the class, worked out in the page as one looks or edits. */
import { useDeferredValue, useMemo, useRef } from "react";
import { rulesHere } from "#app/_session/late-rules.ts";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { type Effect, effectOf } from "#lib/proposal/effect.ts";

/** Null while nothing differs. A moment behind while somebody types, so that typing never waits. */
export function useProposalEffect(before: Plan, after: Plan, itemId: string | null): Effect | null {
  const rules = rulesHere();
  const analysts = useRef<{ readonly of: typeof rules; readonly pair: readonly [PlanAnalyst, PlanAnalyst] } | null>(
    null,
  );
  const pair = useMemo(() => ({ before, after }), [before, after]);
  const shown = useDeferredValue(pair);
  return useMemo(() => {
    if (shown.before === shown.after) return null;
    if (analysts.current?.of !== rules) {
      analysts.current = { of: rules, pair: [new PlanAnalyst(rules), new PlanAnalyst(rules)] };
    }
    const [one, other] = analysts.current.pair;
    return effectOf(one.of(shown.before), other.of(shown.after), itemId);
  }, [shown, itemId, rules]);
}

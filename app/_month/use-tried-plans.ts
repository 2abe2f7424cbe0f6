"use client";
/** Each plan that a class can be given, tried in the month: a few at a time, so that nobody's typing waits for it. */
import { useEffect, useState } from "react";
import { MonthAnalyst } from "#lib/month/check/analyst.ts";
import type { MonthSlot } from "#lib/month/types.ts";
import { own } from "#lib/plan/lookup.ts";
import { planTitle } from "#lib/plan/plan-title.ts";
import { byCost, plansFor, type TriedPlan, tryPlan } from "#lib/tide/try-plans.ts";
import type { MonthDesk } from "./month-desk.ts";

export interface NamedTry extends TriedPlan {
  readonly title: string;
}

/** Ms of work before the page may breathe. */
const SLICE_MS = 8;
const NONE: readonly NamedTry[] = [];

/** The best first; empty until all have been tried. */
export function useTriedPlans({ month: { file, look } }: MonthDesk, slot: MonthSlot | undefined): readonly NamedTry[] {
  const [found, setFound] = useState<{ readonly of: unknown; readonly tries: readonly NamedTry[] }>({
    of: null,
    tries: NONE,
  });
  useEffect(() => {
    if (!slot) return;
    const analyst = new MonthAnalyst();
    const waiting = plansFor(file, slot);
    const tries: NamedTry[] = [];
    let timer = 0;
    const work = () => {
      const until = performance.now() + SLICE_MS;
      while (waiting.length > 0 && performance.now() < until) {
        const plan = waiting.shift() ?? "";
        const tried = tryPlan(file, slot, plan, { look: (of) => analyst.look(of), before: look.findings });
        tries.push({ ...tried, title: planTitle(own(file.plans, plan)?.title ?? "") });
      }
      if (waiting.length > 0) timer = window.setTimeout(work);
      else setFound({ of: look, tries: tries.sort(byCost) });
    };
    timer = window.setTimeout(work, 30);
    return () => clearTimeout(timer);
  }, [file, look, slot]);
  return slot && found.of === look ? found.tries : NONE;
}

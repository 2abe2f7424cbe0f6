"use client";
/** Rounds of a plan and texts of their points, asked for again when a step was taken. */
import { useEffect, useState } from "react";
import type { PlanSession } from "#app/_session/session.ts";
import type { StateNews } from "#lib/protocol/messages.ts";
import type { RoundsView } from "#lib/rounds/rounds.ts";
import { fetchPoint, fetchRounds, type ThenOrProblem } from "./fetch-rounds.ts";

/** Changes with every step of the plan and with who reads it. */
const stepOf = ({ state, moment, edition, round }: StateNews): string =>
  JSON.stringify([state, moment, edition, round?.number, round?.reader?.id, round?.since]);

interface Asked {
  readonly rounds: RoundsView | null;
  readonly problem: string | null;
}

/** The rounds that were there before stay until the new ones have come. */
export function useRounds({ planId }: PlanSession, state: StateNews): Asked {
  const step = stepOf(state);
  const [asked, setAsked] = useState<Asked>({ rounds: null, problem: null });
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked again after each step
  useEffect(() => {
    let left = false;
    void fetchRounds(planId).then((sent) => {
      if (left) return;
      if (sent.ok) setAsked({ rounds: sent.value, problem: null });
      else setAsked((before) => ({ ...before, problem: sent.message }));
    });
    return () => {
      left = true;
    };
  }, [planId, step]);
  return asked;
}

/** Null until it has come, and for no point. `as`: asked for again when this changes. */
export function usePoint({ planId }: PlanSession, point: string | null, as = ""): ThenOrProblem | null {
  const [found, setFound] = useState<{ readonly key: string; readonly then: ThenOrProblem } | null>(null);
  const key = `${planId}/${point}/${as}`;
  useEffect(() => {
    let left = false;
    if (point === null) return;
    void fetchPoint(planId, point).then((then) => {
      if (!left) setFound({ key, then });
    });
    return () => {
      left = true;
    };
  }, [planId, point, key]);
  return point !== null && found?.key === key ? found.then : null;
}

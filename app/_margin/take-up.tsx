"use client";
/** A lead takes the reading of a plan up, lets it go, or takes it over from another lead. */
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { TAKE_UP } from "./hand-words.ts";
import { useTakeUp } from "./use-take-up.ts";

export function TakeUp({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const { planId, me } = session;
  const taking = useTakeUp({ planId, me: me.id, reader: state.round?.reader ?? null });
  const go = async () => {
    if (await taking.turn()) session.say(taking.mine ? TAKE_UP.letGoDone : TAKE_UP.done);
  };
  return (
    <>
      <button type="button" className="act" onClick={go} aria-disabled={taking.busy}>
        {taking.words}
      </button>
      <ProblemLine say={taking.problem} />
    </>
  );
}

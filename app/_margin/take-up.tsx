"use client";
/** A lead takes the reading of a plan up, lets it go, or takes it over from another lead. */
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useSend } from "../_parts/use-send.ts";
import { TAKE_UP, takeOverWords } from "./hand-words.ts";

export function TakeUp({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const sending = useSend();
  const reader = state.round?.reader ?? null;
  const mine = reader?.id === session.me.id;
  const go = async () => {
    const from = reader && !mine ? { from: reader.id } : {};
    const done = await sending.run("POST", `/api/plans/${session.planId}/take-up`, { on: !mine, ...from });
    if (done !== undefined) session.say(mine ? TAKE_UP.letGoDone : TAKE_UP.done);
  };
  const words = mine ? TAKE_UP.letGo : reader ? takeOverWords(reader.name) : TAKE_UP.act;
  return (
    <>
      <button type="button" className="act" onClick={go} aria-disabled={sending.busy}>
        {words}
      </button>
      <ProblemLine say={sending.problem} />
    </>
  );
}

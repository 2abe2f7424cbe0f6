"use client";
/** Ends an acceptance, so that the finding stands again. For leads. */
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import type { AcceptanceView } from "#lib/protocol/messages.ts";
import { ACCEPT } from "./accept-words.ts";

export function EndAcceptance({
  session,
  accepted,
}: {
  readonly session: PlanSession;
  readonly accepted: AcceptanceView;
}) {
  const sending = useSend();
  if (!session.me.roles.includes("lead")) return null;
  const end = async () => {
    const done = await sending.run("POST", `/api/acceptances/${accepted.id}/end`, {});
    if (done !== undefined) session.say(ACCEPT.ended);
  };
  return (
    <>
      <button
        type="button"
        className="text-button text-button-low small"
        aria-disabled={sending.busy}
        onClick={() => void end()}
      >
        {ACCEPT.end}
      </button>
      <ProblemLine say={sending.problem} />
    </>
  );
}

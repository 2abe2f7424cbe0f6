"use client";
/** What can be done with the plan as a whole, by its state and by who is asking. */
import { useState } from "react";
import { LatePart } from "#app/_parts/late-part.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import type { Me } from "#app/_session/session-types.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import type { PlanState } from "#lib/protocol/messages.ts";
import { ProblemLine } from "../_parts/problem-line.tsx";
import { useAskedFor } from "../_parts/use-asked-for.ts";
import { useSend } from "../_parts/use-send.ts";
import { lateOffer, lateReturn, lateReview, lateTakeBack } from "./late-review.ts";
import { HANDING_IN_TAKEN_BACK } from "./margin-words.ts";
import { readersNow } from "./readers-now.ts";

type Open = "hand-in" | "hand-back" | "review";

export function StateActs({ session, me }: { readonly session: PlanSession; readonly me: Me }) {
  const { state, rights } = useSnapshot(session);
  const [open, setOpen] = useState<Open | null>(null);
  const closed = () => setOpen(null);
  const acts = actsFor(state.state, { lead: me.roles.includes("lead"), writes: rights.writes });
  useAskedFor("offer", () => setOpen("hand-in"), acts.includes("hand-in"));
  useAskedFor("review", () => setOpen("review"), acts.includes("review"));
  const mine = state.handedInById === me.id;
  return (
    <div className="acts">
      {acts.includes("hand-in") && (
        <button type="button" className="button button-strong" onClick={() => setOpen("hand-in")}>
          Offer for reading
        </button>
      )}
      {state.state === "handed-in" && mine && <TakeBack session={session} />}
      {acts.includes("hand-back") && (
        <button type="button" className="button" onClick={() => setOpen("hand-back")}>
          Return with notes
        </button>
      )}
      {acts.includes("review") && (
        <button type="button" className="button button-strong" onClick={() => setOpen("review")}>
          Review and sign
        </button>
      )}
      {open === "hand-in" && <LatePart part={lateOffer} props={{ session, onClosed: closed }} />}
      {open === "hand-back" && <LatePart part={lateReturn} props={{ session, onClosed: closed }} />}
      {open === "review" && <LatePart part={lateReview} props={{ session, onClosed: closed }} />}
    </div>
  );
}

/** The server decides; this only hides buttons whose act it would refuse. */
function actsFor(state: PlanState, who: { readonly lead: boolean; readonly writes: boolean }): Open[] {
  if (state === "handed-in") return who.lead ? ["hand-back", "review"] : [];
  return (state === "in-writing" || state === "handed-back") && who.writes ? ["hand-in"] : [];
}

/** Asks first where somebody is reading it. */
function TakeBack({ session }: { readonly session: PlanSession }) {
  const snap = useSnapshot(session);
  const sending = useSend();
  const [asks, setAsks] = useState(false);
  async function takeBack() {
    const done = await sending.run("POST", `/api/plans/${session.planId}/take-back`, {});
    if (done !== undefined) session.say(HANDING_IN_TAKEN_BACK);
  }
  const isRead = readersNow(snap, session.me.id).length > 0;
  return (
    <>
      <button
        type="button"
        className="button"
        onClick={() => (isRead ? setAsks(true) : void takeBack())}
        aria-disabled={sending.busy}
      >
        Take back
      </button>
      <ProblemLine say={sending.problem} />
      {asks && <LatePart part={lateTakeBack} props={{ session, takeBack, onClosed: () => setAsks(false) }} />}
    </>
  );
}

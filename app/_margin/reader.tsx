"use client";
/** Who reads a plan that is offered, and since when. */
import { LocalTime } from "#app/_parts/local-time.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { TAKE_UP } from "./hand-words.ts";
import { TakeUp } from "./take-up.tsx";

/** Leads share what is offered: who reads it is said to all, and a lead takes it up here. */
export function Reader({ session }: { readonly session: PlanSession }) {
  const { state } = useSnapshot(session);
  const { reader, since } = state.round ?? {};
  const who = reader?.id === session.me.id ? "You are" : `${reader?.name} is`;
  return (
    <>
      <p role="status">
        {reader && since != null ? (
          <>
            {who} reading it, since <LocalTime at={since} />.
          </>
        ) : (
          TAKE_UP.nobody
        )}
      </p>
      {session.me.roles.includes("lead") && <TakeUp session={session} />}
    </>
  );
}

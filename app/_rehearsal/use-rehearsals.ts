/** All rehearsals of a plan: one's own in this browser, and those that the rooms' devices sent to the studio. */
import { useEffect, useState } from "react";
import * as z from "zod/mini";
import { send } from "#app/_parts/send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { type Rehearsed, rehearsedSchema } from "#lib/floor/rehearsed-schema.ts";
import { ownRehearsals } from "./kept-rehearsals.ts";
import { OF_DRAFT, ofEditionWords } from "./rehearsals-words.ts";

interface Rehearsal {
  readonly id: string;
  /** ms since the epoch. */
  readonly at: number;
  /** "of edition 2, Loft". */
  readonly of: string;
  readonly rehearsed: Rehearsed;
}
export interface Rehearsals {
  /** The latest first. */
  readonly all: readonly Rehearsal[];
  /** Whether the studio has been asked. */
  readonly studio: "asking" | "answered" | "no-answer";
}

const toldSchema = z.array(
  z.object({ id: z.string(), at: z.number(), edition: z.number(), roomName: z.string(), rehearsed: rehearsedSchema }),
);

export function useRehearsals(session: PlanSession): Rehearsals {
  const [own] = useState(() => ownRehearsals(session.me.id, session.planId));
  const [told, setTold] = useState<readonly Rehearsal[]>([]);
  const [studio, setStudio] = useState<Rehearsals["studio"]>("asking");
  useEffect(() => {
    let here = true;
    askStudio(session.planId)
      .then((answer) => {
        if (!here) return;
        setTold(answer);
        setStudio("answered");
      })
      .catch(() => here && setStudio("no-answer"));
    return () => {
      here = false;
    };
  }, [session.planId]);
  const mine = own.map((one): Rehearsal => ({ ...one, of: OF_DRAFT }));
  return { all: [...mine, ...told].sort((a, b) => b.at - a.at), studio };
}

async function askStudio(planId: string): Promise<readonly Rehearsal[]> {
  const told = await send("GET", `/api/plans/${encodeURIComponent(planId)}/rehearsals`, undefined, {
    reads: toldSchema,
  });
  if (!told.ok) throw new Error("the server refused the list of rehearsals");
  return told.value.map(({ id, at, edition, roomName, rehearsed }) => ({
    id,
    at,
    rehearsed,
    of: ofEditionWords(edition, roomName),
  }));
}

"use client";
/** Which parts of a copy still fit the plan, what they do to it, and sending those that fit. */
import { useMemo } from "react";
import { useSend } from "#app/_parts/use-send.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { lineIdsOf } from "#lib/doc/take-proposal.ts";
import type { Effect } from "#lib/proposal/effect.ts";
import { applied, fits, type JudgedPart } from "#lib/proposal/fits.ts";
import type { ProposalPart } from "#lib/proposal/parts.ts";
import { useProposalEffect } from "./proposal-effect.ts";
import { PROPOSE } from "./propose-words.ts";

export interface Writing {
  readonly fitting: readonly ProposalPart[];
  /** The others, with why. */
  readonly unfit: readonly JudgedPart[];
  readonly effect: Effect | null;
  readonly busy: boolean;
  readonly problem: string | null;
  /** True once the server has it. */
  send(note: string): Promise<boolean>;
}

export function useWriting(session: PlanSession, itemId: string | null, parts: readonly ProposalPart[]): Writing {
  const { plan } = useSnapshot(session);
  const sending = useSend();
  const judged = useMemo(() => fits(plan, parts, lineIdsOf(session.doc, parts)), [session, plan, parts]);
  const fitting = judged.flatMap(({ part, state }) => (state === "fits" ? [part] : []));
  const after = useMemo(() => applied(plan, parts, lineIdsOf(session.doc, parts)), [session, plan, parts]);
  const effect = useProposalEffect(plan, after, itemId);
  const send = async (note: string) => {
    const body = { itemId, note: note.trim() || null, parts: fitting };
    const done = await sending.run("POST", `/api/plans/${session.planId}/proposals`, body);
    if (done !== undefined) session.say(PROPOSE.sent);
    return done !== undefined;
  };
  const { busy, problem } = sending;
  return { fitting, unfit: judged.filter(({ state }) => state !== "fits"), effect, busy, problem, send };
}

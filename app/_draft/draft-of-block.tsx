"use client";
/** In the plate of a heading: takes what is proposed for the moves of its block. */
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { blockDraft } from "./draft-acts.ts";
import { takeBlock } from "./draft-words.ts";
import { useFirstDraft } from "./use-first-draft.ts";

interface DraftOfBlockProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly headingId: string;
}

export function DraftOfBlock({ session, snap, headingId }: DraftOfBlockProps) {
  const draft = useFirstDraft(session, snap);
  const taken = blockDraft(snap.plan, draft, headingId);
  if (taken.changes.length === 0) return null;
  return (
    <button type="button" className="button" onClick={() => takeFix(session, taken)}>
      {takeBlock(taken.changes.length)}
    </button>
  );
}

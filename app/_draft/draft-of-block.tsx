"use client";
/** In the plate of a heading: takes what is proposed for the moves of its block. */
import type { PlanSession } from "#app/_session/session.ts";
import type { SessionSnapshot } from "#app/_session/session-types.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { takeDraft } from "#lib/draft/first-draft.ts";
import { blockNumbers } from "#lib/plan/blocks.ts";
import { takeBlock } from "./draft-words.ts";
import { useFirstDraft } from "./use-first-draft.ts";

interface DraftOfBlockProps {
  readonly session: PlanSession;
  readonly snap: SessionSnapshot;
  readonly headingId: string;
}

export function DraftOfBlock({ session, snap, headingId }: DraftOfBlockProps) {
  const draft = useFirstDraft(session, snap);
  const { items } = snap.plan;
  const blocks = blockNumbers(items);
  const block = blocks[items.findIndex(({ id }) => id === headingId)];
  const taken = takeDraft(
    draft,
    items.filter((_, i) => blocks[i] === block).map(({ id }) => id),
  );
  if (taken.changes.length === 0) return null;
  return (
    <button type="button" className="button" onClick={() => takeFix(session, taken)}>
      {takeBlock(taken.changes.length)}
    </button>
  );
}

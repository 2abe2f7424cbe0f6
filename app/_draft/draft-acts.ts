/** Taking what is proposed for an item, or for the block of a heading. */
import type { PlanSession } from "#app/_session/session.ts";
import { takeFix } from "#app/_session/take-fix.ts";
import { type FirstDraft, takeDraft } from "#lib/draft/first-draft.ts";
import { blockNumbers } from "#lib/plan/blocks.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { Remedy } from "#lib/remedies/remedy.ts";
import { NOTHING_PROPOSED } from "./draft-words.ts";
import { draftNow } from "./use-first-draft.ts";

/** What is proposed for the moves of a heading's block, as one step. */
export function blockDraft(plan: Plan, draft: FirstDraft, headingId: string): Remedy {
  const blocks = blockNumbers(plan.items);
  const block = blocks[plan.items.findIndex(({ id }) => id === headingId)];
  return takeDraft(
    draft,
    plan.items.filter((_, i) => blocks[i] === block).map(({ id }) => id),
  );
}

export function takeProposed(session: PlanSession, itemId: string): void {
  const { plan } = session.getSnapshot();
  const draft = draftNow(session);
  const isHeading = itemById(plan, itemId)?.kind === "heading";
  const taken = isHeading ? blockDraft(plan, draft, itemId) : takeDraft(draft, [itemId]);
  if (taken.changes.length > 0) takeFix(session, taken);
  else session.say(NOTHING_PROPOSED);
}

/** Proposals as a page knows them: which still stand, and what was taken. What they change is in `app/_propose`. */
import type { PlanItem } from "#lib/plan/schema.ts";
import type { ProposalView } from "#lib/protocol/messages.ts";
import type { SessionSnapshot } from "./session-types.ts";

type Known = Pick<SessionSnapshot, "proposals" | "taken">;

/**
 * Those that wait for an answer. One that somebody was given to write stands until the document has its mark, and again
 * once that was undone.
 */
export const standingProposals = ({ proposals, taken }: Known): readonly ProposalView[] =>
  proposals.filter(({ id, state }) => state === "open" || (state === "taken" && !taken.has(id)));

/** Of one item; null for the items before the first heading. */
export const standingFor = (snap: Known, itemId: string | null): readonly ProposalView[] =>
  standingProposals(snap).filter((proposal) => proposal.itemId === itemId);

/** The proposal that was taken last for an item and that its mark still names. */
export const takenLast = ({ proposals, taken }: Known, itemId: string | null): ProposalView | undefined =>
  proposals
    .filter(({ id, itemId: of, state }) => of === itemId && state === "taken" && taken.has(id))
    .reduce<ProposalView | undefined>(
      (last, one) => ((one.endedAt ?? 0) >= (last?.endedAt ?? 0) ? one : last),
      undefined,
    );

/** Whether there is anything to show on an item's open plate. */
export const hasProposals = (snap: Known, itemId: string): boolean =>
  standingFor(snap, itemId).length > 0 || takenLast(snap, itemId) !== undefined;

/** Whether a block begins with it: a heading, or an item before the first heading. */
export const beginsBlock = (items: readonly PlanItem[], item: PlanItem): boolean =>
  item.kind === "heading" || headingAbove(items, item.id) === null;

/** The heading of the block that an item is in; null before the first one. A heading's is its own. */
export function headingAbove(items: readonly PlanItem[], itemId: string): string | null {
  const at = items.findIndex(({ id }) => id === itemId);
  return items.slice(0, at + 1).findLast(({ kind }) => kind === "heading")?.id ?? null;
}

/** Where this browser keeps proposals that are being written, and how they are cleared. Apart, since every page can sign out. */

const PREFIX = "springline/proposal/";

/** `itemId`: the plate, or the heading of the block; null for the items before the first heading. */
export const proposalCopyKey = (of: { userId: string; planId: string; itemId: string | null }): string =>
  `${PREFIX}${of.userId}/${of.planId}/${of.itemId ?? ""}`;

/** On signing out. */
export function dropAllProposalCopies(): void {
  try {
    for (const key of Object.keys(localStorage)) if (key.startsWith(PREFIX)) localStorage.removeItem(key);
  } catch {
    // nothing was kept
  }
}

/** The sentences of the page of remarks. Pure. */
export const REMARKS = {
  title: "Remarks of the studio",
  about:
    "Sentences that you write again and again. In a comment, “/” or a word of one offers it; what belongs to the finding’s rule or to the plate’s move comes first. It can be changed before it is sent.",
  add: "Add a remark",
  words: "Words",
  belongs: "Belongs to",
  anywhere: "anywhere",
  none: "No remarks yet. Add the first one: a sentence that you would write to anybody.",
  inUse: "In use",
  outOfUse: "Out of use",
} as const;

export const WORDS_MAX = 600;

/** How a link to a rule or a move is chosen: "rule:total-length", "move:plank", or "" for anywhere. */
export function linkOf({ ruleId, moveId }: { readonly ruleId: string | null; readonly moveId: string | null }): string {
  if (ruleId !== null) return `rule:${ruleId}`;
  return moveId === null ? "" : `move:${moveId}`;
}

export function readLink(link: string): { readonly ruleId: string | null; readonly moveId: string | null } {
  const id = link.slice(link.indexOf(":") + 1);
  return { ruleId: link.startsWith("rule:") ? id : null, moveId: link.startsWith("move:") ? id : null };
}

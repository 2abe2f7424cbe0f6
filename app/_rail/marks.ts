/** What was found and said about each item, for its plate while it is closed: the worst in words, the rest as a number. */
import { isAboutMissingWords } from "#lib/draft/about-words.ts";
import type { FirstDraft } from "#lib/draft/first-draft.ts";
import { openThreadsByItem } from "#lib/margin/open-threads.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { ruleTitle } from "#lib/rules/rule-title.ts";
import { standingProposals } from "../_session/proposals.ts";
import type { SessionSnapshot } from "../_session/session-types.ts";

export interface ItemMarks {
  readonly must: number;
  readonly look: number;
  readonly threads: number;
  /** Proposals that wait for an answer. */
  readonly proposals: number;
  /** The title of the most serious finding. */
  readonly worst: string | null;
}

const NONE: ItemMarks = { must: 0, look: 0, threads: 0, proposals: 0, worst: null };

/**
 * `waiting`: findings that nobody has accepted. While lines are proposed for a move, what was found about its missing words is
 * not told on its plate.
 */
export function marksOf(
  snap: Pick<SessionSnapshot, "threads" | "openThreadsAtStart" | "proposals" | "taken">,
  waiting: readonly Finding[],
  draft: FirstDraft,
): ReadonlyMap<string, ItemMarks> {
  const marks = new Map<string, ItemMarks>();
  const add = (id: string, part: Partial<ItemMarks>) => marks.set(id, { ...(marks.get(id) ?? NONE), ...part });
  for (const finding of waiting) {
    const [id] = finding.items;
    if (id === undefined || finding.level === "info") continue;
    if (draft.has(id) && isAboutMissingWords(finding)) continue;
    const before = marks.get(id) ?? NONE;
    const isWorst = before.worst === null || (finding.level === "must" && before.must === 0);
    const worst = isWorst ? (ruleTitle(finding.rule) ?? finding.message) : before.worst;
    add(id, { [finding.level]: before[finding.level] + 1, worst });
  }
  const threads = snap.openThreadsAtStart ?? openThreadsByItem(snap.threads);
  for (const [id, count] of Object.entries(threads)) add(id, { threads: count });
  for (const { itemId } of standingProposals(snap))
    if (itemId !== null) add(itemId, { proposals: (marks.get(itemId) ?? NONE).proposals + 1 });
  return marks;
}

/** What pages are told about a plan's proposals. */
import type { Db } from "#db/connection.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { listStandingProposals, type ProposalRow } from "#db/repos/proposal-repo.ts";
import type { News, ProposalView } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";

/** The newest, sent to each page that joins; our own choice. */
const MOST_SENT = 200;

export function proposalViews(db: Db, rows: readonly ProposalRow[]): ProposalView[] {
  if (rows.length === 0) return [];
  const names = namesById(db);
  const nameOf = (id: string) => names.get(id) ?? FORMER_MEMBER;
  return rows.map(({ planId: _, endedBy, ...row }) => ({
    ...row,
    byName: nameOf(row.byId),
    endedByName: endedBy === null ? null : nameOf(endedBy),
  }));
}

/** Those that are open or were taken: which of these are done, the document says. */
export const proposalNews = (db: Db, planId: string): News => ({
  t: "proposals",
  proposals: proposalViews(db, listStandingProposals(db, planId, MOST_SENT)),
});

/** Tells the plan's pages. Call after the change is stored. */
export function announceProposals(app: Pick<Springline, "db" | "documents">, planId: string): void {
  app.documents.announce(planDoc(planId), proposalNews(app.db, planId));
}

/** What pages are told about a plan over their socket: its state, its threads, its findings, its studio data. */

import { listAcceptances } from "#db/repos/acceptance-repo.ts";
import type { KeptCheck } from "#db/repos/check-repo.ts";
import { newestEdition } from "#db/repos/edition-repo.ts";
import { newestMomentId } from "#db/repos/moment-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { type PlanRow, readPlanRow } from "#db/repos/plan-repo.ts";
import { listThreads, readThreadView } from "#db/repos/thread-repo.ts";
import { readWithdrawal } from "#db/repos/withdrawal-repo.ts";
import type { News, StateNews } from "#lib/protocol/messages.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { announcePlanToMonths } from "#server/news/month-news.ts";
import { planStudio } from "#server/studio-data/plan-studio.ts";
import { withdrawalView } from "./plan-summaries.ts";
import { proposalNews } from "./proposal-news.ts";
import { roundNews } from "./shown-round.ts";

type App = Pick<Springline, "db" | "documents" | "now">;

export function stateNews(app: Pick<Springline, "db">, row: PlanRow): StateNews {
  const edition = newestEdition(app.db, row.id);
  const out = edition && readWithdrawal(app.db, row.id, edition.number);
  const by = row.handedInBy;
  const round = roundNews(app, row);
  return {
    state: row.state,
    edition: edition?.number ?? 0,
    editionHash: edition?.hash ?? null,
    withdrawn: out ? withdrawalView(out, namesById(app.db)) : null,
    handedInBy: by === null ? null : (namesById(app.db).get(by) ?? null),
    handedInById: by,
    note: row.stateNote,
    moment: newestMomentId(app.db, row.id),
    ...(round ? { round } : {}),
  };
}

/** Tells the plan's pages its state, and the months that use it what has changed. Call after the change is stored. */
export function announceState(app: App, id: string): void {
  const row = readPlanRow(app.db, id);
  if (!row) return;
  app.documents.announce(planDoc(id), { t: "state", state: stateNews(app, row) });
  announcePlanToMonths(app, id);
}

const studioNews = (app: Pick<Springline, "db">, row: PlanRow): News => ({
  t: "studio",
  mark: planStudio(app.db, row.roomId).mark,
});

/** Tells the plan's pages the fingerprint of its studio data: pages with other data fetch them. */
export function announcePlanStudio(app: App, id: string): void {
  const row = readPlanRow(app.db, id);
  if (row) app.documents.announce(planDoc(id), studioNews(app, row));
}

/** The result of a check for open pages: fingerprints of the plan and the findings, to be compared with their own. */
export const checkedNews = ({ planMark, findingsMark }: Pick<KeptCheck, "planMark" | "findingsMark">): News[] =>
  planMark === null || findingsMark === null ? [] : [{ t: "checked", plan: planMark, findings: findingsMark }];

/** Tells the plan's pages one thread as it is now. Call after the change is stored. */
export function announceThread(app: App, planId: string, threadId: string): void {
  const thread = readThreadView(app.db, threadId);
  if (thread) app.documents.announce(planDoc(planId), { t: "thread", thread });
}

const acceptedNews = (app: Pick<Springline, "db">, id: string): News => ({
  t: "accepted",
  accepted: listAcceptances(app.db, id),
});

/** Tells the plan's pages which findings are accepted. Call after the change is stored. */
export function announceAccepted(app: App, id: string): void {
  app.documents.announce(planDoc(id), acceptedNews(app, id));
}

/**
 * What a page is told when it joins a plan. If there is no current check, one is requested. For a signed plan that also
 * finds out whether it was written on, should the server have stopped between an edit and its check.
 */
export function planWelcome(app: App & Pick<Springline, "checks">, id: string): News[] {
  const row = readPlanRow(app.db, id);
  if (!row) return [];
  const { mark } = planStudio(app.db, row.roomId);
  const kept = app.checks.kept(row, mark);
  if (!kept) app.checks.soon(id);
  return [
    { t: "state", state: stateNews(app, row) },
    { t: "threads", threads: listThreads(app.db, id) },
    acceptedNews(app, id),
    proposalNews(app.db, id),
    { t: "studio", mark },
    ...(kept ? checkedNews(kept) : []),
  ];
}

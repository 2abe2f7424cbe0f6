/** What pages hear about a plan over their socket: its state, its threads, its findings, its line in the month. */
import { newestEdition } from "#db/repos/edition-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { type PlanRow, readPlanRow } from "#db/repos/plan-repo.ts";
import { listThreads } from "#db/repos/thread-repo.ts";
import { readWithdrawal } from "#db/repos/withdrawal-repo.ts";
import { FINDING_LEVELS } from "#lib/plan/schema.ts";
import type { News, StateNews } from "#lib/protocol/messages.ts";
import { announcePlanToMonths } from "#server/programme/month-news.ts";
import { ok } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { type Assessment, tryAssess } from "./assess-plan.ts";
import { planDoc, withPlan } from "./plan-doc.ts";
import { planStudio } from "./plan-studio.ts";
import { withdrawalView } from "./plan-summaries.ts";

type App = Pick<Springline, "db" | "rooms" | "now">;

export function stateNews(app: Pick<Springline, "db">, row: PlanRow): StateNews {
  const edition = newestEdition(app.db, row.id);
  const out = edition && readWithdrawal(app.db, row.id, edition.number);
  const by = row.handedInBy;
  return {
    state: row.state,
    edition: edition?.number ?? 0,
    editionHash: edition?.hash ?? null,
    withdrawn: out ? withdrawalView(out, namesById(app.db)) : null,
    handedInBy: by === null ? null : (namesById(app.db).get(by) ?? null),
    handedInById: by,
    note: row.stateNote,
  };
}

/** As many as a page can make use of, the gravest first: a plan with more must still open. */
const MOST_FINDINGS = 1_000;

export function findingsNews({ hash, findings }: Assessment): News {
  if (findings.length <= MOST_FINDINGS) return { t: "findings", hash, findings };
  const gravest = findings.toSorted((a, b) => FINDING_LEVELS.indexOf(a.level) - FINDING_LEVELS.indexOf(b.level));
  return { t: "findings", hash, findings: gravest.slice(0, MOST_FINDINGS) };
}

/** Tells the plan's room its state, and the months that use it what changed. Call after the change is stored. */
export function announceState(app: App, id: string): void {
  const row = readPlanRow(app.db, id);
  if (!row) return;
  app.rooms.announce(planDoc(id), { t: "state", state: stateNews(app, row) });
  announcePlanToMonths(app, id);
}

const studioNews = (app: Pick<Springline, "db">, row: PlanRow): News => ({
  t: "studio",
  mark: planStudio(app.db, row.roomId).mark,
});

/** Tells the plan's room which studio the plan is read with now: its pages fetch it when they hold another. */
export function announcePlanStudio(app: App, id: string): void {
  const row = readPlanRow(app.db, id);
  if (row) app.rooms.announce(planDoc(id), studioNews(app, row));
}

/** Tells the plan's room what the rules find in it as it is stored. */
export function announceFindings(app: App, id: string): void {
  const row = readPlanRow(app.db, id);
  const assessed = row && withPlan(app, row, (reading) => ok(tryAssess(reading)));
  if (assessed?.ok && assessed.value) app.rooms.announce(planDoc(id), findingsNews(assessed.value));
}

export function announceThreads(app: App, id: string): void {
  app.rooms.announce(planDoc(id), { t: "threads", threads: listThreads(app.db, id) });
}

/** What a page hears on joining a plan. */
export function planWelcome(app: App, id: string): News[] {
  const row = readPlanRow(app.db, id);
  if (!row) return [];
  const news: News[] = [
    { t: "state", state: stateNews(app, row) },
    { t: "threads", threads: listThreads(app.db, id) },
    studioNews(app, row),
  ];
  const assessed = withPlan(app, row, (reading) => ok(tryAssess(reading)));
  return assessed.ok && assessed.value ? [...news, findingsNews(assessed.value)] : news;
}

/** What pages are told about a month: the plans that its slots use, to each reader what they may know of them. */

import type * as Y from "yjs";
import { newestEdition } from "#db/repos/edition-repo.ts";
import { listMonths } from "#db/repos/month-repo.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import { addMonths, dateOfDay, monthOf } from "#lib/calendar/days.ts";
import type { Actor } from "#lib/policy/can.ts";
import { monthClasses, readerOfMonth } from "#lib/programme/read.ts";
import type { DocName, News } from "#lib/protocol/messages.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { planFacts } from "#server/month-facts/plan-facts.ts";
import { planSummaries } from "#server/news/plan-summaries.ts";

type App = Pick<Springline, "db" | "documents" | "now">;

const DAY_MS = 86_400_000;

/** Ids of the plans that a month's slots use. */
export function plansOfMonth(doc: Y.Doc): string[] {
  const state = readerOfMonth(doc).read();
  const named = [...monthClasses(state), ...state.pattern].map(({ plan }) => plan);
  return [...new Set(named)].filter(
    (id) => typeof id === "string" && state.carried.plans[id] === undefined,
  ) as string[];
}

/** Somebody with the rights they have now; null for who has left. */
export function readActor({ db }: Pick<App, "db">, userId: string): Actor {
  const reader = readPerson(db, userId);
  return reader ? { kind: "person", id: reader.id, roles: reader.roles } : null;
}

/** For one reader; their rights are read each time. */
export function plansNews(app: App, ids: readonly string[], userId: string): News {
  const actor = readActor(app, userId);
  return { t: "plans", ...planSummaries(app, actor, ids), facts: planFacts(app, actor, ids) };
}

/** Tells everybody who has the month open. */
export function announcePlans(app: App, name: DocName, ids: readonly string[]): void {
  app.documents.announceEach(name, (userId) => plansNews(app, ids, userId));
}

/**
 * Tells the months that use this plan, from last month on, what it looks like now. Call after the change is stored. A month
 * whose document cannot be read at the moment is skipped: its pages are told when they next join.
 */
export function announcePlanToMonths(app: App, planId: string): void {
  const from = addMonths(monthOf(dateOfDay(Math.floor(app.now() / DAY_MS))), -1);
  // A signed plan can be put into classes, from now on or no longer.
  const offered = newestEdition(app.db, planId) ? openMonths(app) : [];
  announceTo(app, planId, listMonths(app.db, from), new Set(offered));
}

const openMonths = (app: App): string[] => app.documents.opened("month").map(({ key }) => key);

/** The same for months that somebody has open now: after each burst of edits, of which others hear when they join. */
export const announcePlanToOpenMonths = (app: App, planId: string): void => announceTo(app, planId, openMonths(app));

/** `offered`: months that are told though no class of theirs has the plan. */
function announceTo(
  app: App,
  planId: string,
  months: readonly string[],
  offered: ReadonlySet<string> = new Set(),
): void {
  for (const month of months) {
    const name = monthDoc(month);
    try {
      const ids = app.documents.withDoc(name, plansOfMonth);
      if (ids.includes(planId)) announcePlans(app, name, ids);
      else if (offered.has(month)) announcePlans(app, name, [...ids, planId]);
    } catch (error) {
      if (unavailableReason(error) === undefined) throw error;
    }
  }
}

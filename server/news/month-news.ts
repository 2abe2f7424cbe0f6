/** What pages are told about a month: the plans that its slots use, to each reader what they may know of them. */

import type * as Y from "yjs";
import { listMonths } from "#db/repos/month-repo.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import { addMonths, dateOfDay, monthOf } from "#lib/calendar/days.ts";
import { readMonth } from "#lib/programme/read.ts";
import type { DocName, News } from "#lib/protocol/messages.ts";
import { monthDoc, unavailableReason } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { planSummaries } from "#server/news/plan-summaries.ts";

type App = Pick<Springline, "db" | "documents" | "now">;

const DAY_MS = 86_400_000;

/** Ids of the plans that a month's slots use. */
export function plansOfMonth(doc: Y.Doc): string[] {
  return [...new Set(readMonth(doc).slots.flatMap((slot) => (slot.planId === null ? [] : [slot.planId])))];
}

/** For one reader; their rights are read each time. */
export function plansNews(app: Pick<Springline, "db">, ids: readonly string[], userId: string): News {
  const reader = readPerson(app.db, userId);
  const actor = reader ? ({ kind: "person", id: reader.id, roles: reader.roles } as const) : null;
  return { t: "plans", ...planSummaries(app, actor, ids) };
}

/** Tells everybody who has the month open. */
export function announcePlans(app: Pick<Springline, "db" | "documents">, name: DocName, ids: readonly string[]): void {
  app.documents.announceEach(name, (userId) => plansNews(app, ids, userId));
}

/**
 * Tells the months that use this plan, from last month on, what it looks like now. Call after the change is stored. A month
 * whose document cannot be read at the moment is skipped: its pages are told when they next join.
 */
export function announcePlanToMonths(app: App, planId: string): void {
  const from = addMonths(monthOf(dateOfDay(Math.floor(app.now() / DAY_MS))), -1);
  for (const month of listMonths(app.db, from)) {
    const name = monthDoc(month);
    try {
      const ids = app.documents.withDoc(name, plansOfMonth);
      if (ids.includes(planId)) announcePlans(app, name, ids);
    } catch (error) {
      if (unavailableReason(error) === undefined) throw error;
    }
  }
}

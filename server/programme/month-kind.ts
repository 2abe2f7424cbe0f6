/** What month documents mean to the sync server: one per month, created when it is first opened. */

import { MONTH_BOUNDS } from "#lib/doc/bounds.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { MONTH_DOC_VERSION } from "#lib/programme/layout.ts";
import { migrateMonth } from "#lib/programme/migrate.ts";
import { monthProtection } from "#lib/programme/protected-parts.ts";
import type { Springline } from "#server/context/springline.ts";
import { announcePlans, plansNews, plansOfMonth } from "#server/news/month-news.ts";
import type { DocKindHooks } from "#server/sync/host.ts";
import { monthIsNear } from "./month-range.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "log">;

/** `app.documents` may not exist yet when this is called: it is only used later. */
export function monthKind(app: App): DocKindHooks {
  return {
    currentVersion: MONTH_DOC_VERSION,
    migrate: (doc) => migrateMonth(doc),
    holds: monthProtection,
    bounds: MONTH_BOUNDS,
    create: (month) => (monthIsNear(month, app.now()) ? createMonthDoc(month) : null),
    afterChange: (name, doc) => announcePlans(app, name, plansOfMonth(doc)),
    welcome: (name, userId) => [plansNews(app, app.documents.withDoc(name, plansOfMonth), userId)],
  };
}

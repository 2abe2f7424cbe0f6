/** What month documents mean to the sync server: one a month, made when it is first opened. */
import { MONTH_BOUNDS } from "#lib/doc/bounds.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { MONTH_DOC_VERSION } from "#lib/programme/layout.ts";
import { migrateMonth } from "#lib/programme/migrate.ts";
import { monthProtection } from "#lib/programme/protected-parts.ts";
import type { DocKindHooks } from "#server/plans/plan-kind.ts";
import type { Springline } from "#server/springline.ts";
import { announcePlans, plansNews, plansOfMonth } from "./month-news.ts";
import { monthIsNear } from "./month-range.ts";

type App = Pick<Springline, "db" | "rooms" | "now" | "log">;

/** `app` may still be without its rooms when this is called: they are asked for when something happens. */
export function monthKind(app: App): DocKindHooks {
  return {
    currentVersion: MONTH_DOC_VERSION,
    migrate: (doc) => migrateMonth(doc),
    holds: monthProtection,
    bounds: MONTH_BOUNDS,
    create: (month) => (monthIsNear(month, app.now()) ? createMonthDoc(month) : null),
    afterChange: (name, doc) => announcePlans(app, name, plansOfMonth(doc)),
    welcome: (name, userId) => [plansNews(app, app.rooms.withDoc(name, plansOfMonth), userId)],
  };
}

/** What month documents mean to the sync server: one per month, created when it is first opened. */

import { listMonths } from "#db/repos/month-repo.ts";
import { MONTH_BOUNDS } from "#lib/doc/bounds.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { keepRevisions } from "#lib/programme/keep-revisions.ts";
import { MONTH_DOC_VERSION } from "#lib/programme/layout.ts";
import { migrateMonth } from "#lib/programme/migrate.ts";
import { carriedOver } from "#lib/programme/new-month.ts";
import { monthProtection } from "#lib/programme/protected-parts.ts";
import type { MonthContent } from "#lib/programme/write-content.ts";
import type { Springline } from "#server/context/springline.ts";
import { announcePlans, plansNews, plansOfMonth } from "#server/news/month-news.ts";
import { monthSignNews } from "#server/news/month-sign-news.ts";
import type { DocKindHooks } from "#server/sync/host.ts";
import { basisNews } from "./announce-to-months.ts";
import { tellChangedClasses } from "./class-changes.ts";
import { knownNow } from "./known-now.ts";
import { monthIsNear } from "./month-range.ts";
import { monthStateOf } from "./read-month-file.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "log" | "newId">;

/** `app.documents` may not exist yet when this is called: it is only used later. */
export function monthKind(app: App): DocKindHooks {
  const told = new Map<string, string>();
  return {
    currentVersion: MONTH_DOC_VERSION,
    migrate: (doc) => migrateMonth(doc),
    carryLate: (doc) => keepRevisions(doc, (month) => knownNow(app, month)),
    holds: monthProtection,
    bounds: MONTH_BOUNDS,
    create: (month) => (monthIsNear(month, app.now()) ? createMonthDoc(month, fromEarlier(app, month)) : null),
    afterChange: (name, doc) => {
      // Pages know the plans that were there: only another list is news, and a plan that changes is told by itself.
      const ids = plansOfMonth(doc);
      const list = ids.toSorted().join(" ");
      if (told.get(name.key) !== list) announcePlans(app, name, ids);
      told.set(name.key, list);
      tellChangedClasses(app, { month: name.key, doc });
    },
    welcome: (name, userId) => [
      plansNews(app, app.documents.withDoc(name, plansOfMonth), userId),
      ...basisNews(app, name.key, userId),
      ...monthSignNews(app, name.key),
    ],
  };
}

/** What the newest earlier month hands on; nothing where there is none or it cannot be read. */
function fromEarlier(app: App, month: string): MonthContent {
  const earlier = listMonths(app.db, "0000-00")
    .filter((other) => other < month)
    .at(-1);
  const state = earlier === undefined ? undefined : monthStateOf(app, earlier);
  return state?.ok ? carriedOver(state.value, month) : {};
}

/** What plan documents mean to the sync server: how they are migrated, and what follows a burst of edits. */
import type * as Y from "yjs";
import { noteAuthor, readPlanRow, refreshHead } from "#db/repos/plan-repo.ts";
import { appendTransaction } from "#db/transaction.ts";
import { PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { carryLateThemes } from "#lib/doc/late-theme.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { planProtection } from "#lib/doc/protected-parts.ts";
import { readListed } from "#lib/doc/read.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import type { Springline } from "#server/context/springline.ts";
import { announcePlanToMonths, announcePlanToOpenMonths } from "#server/news/month-news.ts";
import { planWelcome } from "#server/news/plan-news.ts";
import type { DocKindHooks } from "#server/sync/host.ts";

type App = Pick<Springline, "db" | "documents" | "now" | "checks">;

/** `app.documents` may not exist yet when this is called: it is only used later. */
export function planKind(app: App): DocKindHooks {
  return {
    currentVersion: PLAN_DOC_VERSION,
    editorVersion: EDITOR_VERSION,
    migrate: (doc) => migrate(doc),
    carryLate: carryLateThemes,
    holds: planProtection,
    bounds: PLAN_BOUNDS,
    wrote: (key, userId, at) => noteAuthor(app.db, key, userId, at),
    afterChange: (name, doc) => afterPlanChange(app, name, doc),
    welcome: (name) => planWelcome(app, name.key),
  };
}

/**
 * After a burst of edits, all of it on disk: refreshes the title and length for lists and requests a check. A signed plan is
 * checked at once, since that decides whether it was written on.
 */
function afterPlanChange(app: App, name: DocName, doc: Y.Doc): void {
  const row = readPlanRow(app.db, name.key);
  if (!row) return;
  const head = { ...readListed(doc), at: app.now() };
  // Does not wait for the disk: what a power cut loses of these copies is refreshed after the next burst.
  const headChanged = appendTransaction(app.db, () => refreshHead(app.db, row.id, head));
  if (row.state === "signed-off") app.checks.soon(row.id);
  else app.checks.written(row.id);
  if (headChanged) announcePlanToMonths(app, row.id);
  else announcePlanToOpenMonths(app, row.id);
}

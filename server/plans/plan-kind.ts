/** What plan documents mean to the sync server: how they are carried forward and what follows a burst of edits. */
import type * as Y from "yjs";
import { noteAuthor, readPlanRow, refreshHead } from "#db/repos/plan-repo.ts";
import { appendTransaction } from "#db/transaction.ts";
import { PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { carryLateThemes } from "#lib/doc/late-theme.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { planProtection } from "#lib/doc/protected-parts.ts";
import { readListed } from "#lib/doc/read.ts";
import type { DocName, News } from "#lib/protocol/messages.ts";
import { announcePlanToMonths } from "#server/programme/month-news.ts";
import type { Springline } from "#server/springline.ts";
import type { KindHooks } from "#server/sync/host.ts";
import { planWelcome } from "./plan-news.ts";

type App = Pick<Springline, "db" | "rooms" | "now" | "checks">;

/** The sync server's hooks for one kind, and what a page of that kind hears on joining. */
export interface DocKindHooks extends KindHooks {
  welcome(name: DocName, userId: string): News[];
}

/** `app` may still be without its rooms when this is called: they are asked for when something happens. */
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
 * After a burst of edits, all of it on disk: the list's copies are refreshed, and the plan is to be checked. Of a signed one
 * that is done at once: whether it was written on hangs on it.
 */
function afterPlanChange(app: App, name: DocName, doc: Y.Doc): void {
  const row = readPlanRow(app.db, name.key);
  if (!row) return;
  const head = { ...readListed(doc), at: app.now() };
  // Copies: what a power cut takes of them is refreshed after the next burst. Nobody's letters wait for the disk.
  const headChanged = appendTransaction(app.db, () => refreshHead(app.db, row.id, head));
  if (row.state === "signed-off") app.checks.soon(row.id);
  else app.checks.written(row.id);
  if (headChanged) announcePlanToMonths(app, row.id);
}

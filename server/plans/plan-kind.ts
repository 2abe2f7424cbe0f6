/** What plan documents mean to the sync server: how they are carried forward and what follows a burst of edits. */
import type * as Y from "yjs";
import { newestEditionPlan } from "#db/repos/edition-repo.ts";
import { type PlanRow, readLastWriter, readPlanRow, refreshHead } from "#db/repos/plan-repo.ts";
import { contentHash } from "#lib/canonical/canonical.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { readPlan } from "#lib/doc/read.ts";
import type { DocName, News } from "#lib/protocol/messages.ts";
import { announcePlanToMonths } from "#server/programme/month-news.ts";
import type { Springline } from "#server/springline.ts";
import type { KindHooks } from "#server/sync/host.ts";
import { tryAssess } from "./assess-plan.ts";
import { readingOf } from "./plan-doc.ts";
import { announceState, findingsNews, planWelcome } from "./plan-news.ts";
import { storeStep } from "./plan-states.ts";

type App = Pick<Springline, "db" | "rooms" | "now" | "log">;

/** The sync server's hooks for one kind, and what a page of that kind hears on joining. */
export interface DocKindHooks extends KindHooks {
  welcome(name: DocName): News[];
}

/** `app` may still be without its rooms when this is called: they are asked for when something happens. */
export function planKind(app: App): DocKindHooks {
  return {
    currentVersion: PLAN_DOC_VERSION,
    editorVersion: EDITOR_VERSION,
    migrate: (doc) => migrate(doc),
    afterChange: (name, doc) => afterPlanChange(app, name, doc),
    welcome: (name) => planWelcome(app, name.key),
  };
}

/**
 * After a burst of edits, all of it on disk: the list's copies are refreshed, a signed plan that was written on goes
 * back to writing, and every open page hears what the rules find now.
 */
function afterPlanChange(app: App, name: DocName, doc: Y.Doc): void {
  const row = readPlanRow(app.db, name.key);
  if (!row) return;
  const reading = readingOf(app, row, doc);
  const head = { title: reading.plan.title, lengthSeconds: reading.plan.lengthSeconds, at: app.now() };
  const writtenOn = row.state === "signed-off" && differsFromEdition(app, row, doc);
  const changed = app.db.raw
    .transaction(() => {
      if (writtenOn) {
        const actorId = readLastWriter(app.db, name.key) ?? row.ownerId;
        storeStep(app, row.id, { state: "in-writing", note: null, actorId, event: "written-on" });
      }
      return refreshHead(app.db, row.id, head);
    })
    .immediate();
  const assessed = tryAssess(reading);
  if (assessed) app.rooms.announce(name, findingsNews(assessed));
  else app.log.warn({ plan: row.id }, "the plan's document holds something that cannot be checked");
  if (writtenOn) announceState(app, row.id);
  else if (changed) announcePlanToMonths(app, row.id);
}

/**
 * Does the document say something else than the newest edition? Read with the moves, machines and standards that the
 * edition was signed with, so that a change of the library or the house alone never counts.
 */
function differsFromEdition(app: App, row: PlanRow, doc: Y.Doc): boolean {
  const signed = newestEditionPlan(app.db, row.id);
  if (!signed) return true;
  const { moves, equipment, standards } = signed.plan;
  const then = readPlan(doc, { moves, equipment, ...(standards === undefined ? {} : { standards }) });
  return contentHash(then) !== signed.hash;
}

/** What plan documents mean to the sync server: how they are carried forward and what follows a burst of edits. */
import type * as Y from "yjs";
import { readPlanRow, refreshHead } from "#db/repos/plan-repo.ts";
import { PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { planHolds } from "#lib/doc/held.ts";
import { carryLateThemes } from "#lib/doc/late-theme.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { type DocName, formatDocName, type News } from "#lib/protocol/messages.ts";
import { announcePlanToMonths } from "#server/programme/month-news.ts";
import { ok } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import type { KindHooks } from "#server/sync/host.ts";
import { tryAssess } from "./assess-plan.ts";
import { readingOf, withPlan } from "./plan-doc.ts";
import { announceState, findingsNews, planWelcome } from "./plan-news.ts";
import { noteWrittenOn } from "./written-on.ts";

type App = Pick<Springline, "db" | "rooms" | "now" | "log">;

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
    holds: planHolds,
    bounds: PLAN_BOUNDS,
    afterChange: (name, doc) => afterPlanChange(app, name, doc),
    welcome(name) {
      const row = readPlanRow(app.db, name.key);
      const turned = row && withPlan(app, row, (_, doc) => ok(noteWrittenOn(app, row, doc)));
      if (turned?.ok && turned.value) announceState(app, name.key);
      return planWelcome(app, name.key);
    },
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
  const { title, lengthSeconds } = reading.plan;
  const headChanged = refreshHead(app.db, row.id, { title, lengthSeconds, at: app.now() });
  const turned = noteWrittenOn(app, row, doc);
  const assessed = tryAssess(reading);
  if (assessed) app.rooms.announce(name, findingsNews(assessed));
  else app.log.warn({ document: formatDocName(name) }, "the plan holds something that cannot be checked");
  if (turned) announceState(app, row.id);
  else if (headChanged) announcePlanToMonths(app, row.id);
}

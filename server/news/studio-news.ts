/** Tells open plan pages that their studio data have changed. */

import type { Springline } from "#server/context/springline.ts";
import { announcePlanStudio } from "#server/news/plan-news.ts";

/**
 * Call after a change of the library, of a room's machines or of the studio standards is stored: every open plan page
 * fetches its studio data again, and the server checks the plans again.
 */
export function announceStudio(app: Pick<Springline, "db" | "documents" | "now" | "checks">): void {
  for (const { key } of app.documents.opened("plan")) {
    announcePlanStudio(app, key);
    app.checks.soon(key);
  }
}

/** Tells open plan pages that what their plans take from the studio has changed. */

import type { Springline } from "#server/context/springline.ts";
import { announcePlanStudio } from "#server/news/plan-news.ts";

/**
 * Call after a change of the library, of a room's machines or of the house standards is stored: every open plan page
 * fetches its studio again, and the server runs the rules on its own copies afresh. What cannot be read just now is
 * passed over: its page hears of it when it next joins.
 */
export function announceStudio(app: Pick<Springline, "db" | "rooms" | "now" | "checks">): void {
  for (const { key } of app.rooms.opened("plan")) {
    announcePlanStudio(app, key);
    app.checks.soon(key);
  }
}

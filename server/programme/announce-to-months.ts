/** What a month takes from its studio, told to pages: when they join, and at once when it changes. */
import type { MonthState } from "#lib/programme/month-reader.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { Springline } from "#server/context/springline.ts";
import { readActor } from "#server/news/month-news.ts";
import { monthStateOf, monthStudioOf } from "./read-month-file.ts";

type App = Pick<Springline, "db" | "documents" | "now">;

/** For a page that joins. Nothing of a month that cannot be read just now. */
export function basisNews(app: App, month: string, userId: string): News[] {
  const state = monthStateOf(app, month);
  return state.ok ? [basisOf(app, month, userId, state.value)] : [];
}

/**
 * Call after a change of the months' settings, of a room or of who is in the studio is stored: whoever has a month open is told its
 * studio anew.
 */
export function announceToMonths(app: App): void {
  for (const name of app.documents.opened("month")) {
    const state = monthStateOf(app, name.key);
    if (state.ok) app.documents.announceEach(name, (userId) => basisOf(app, name.key, userId, state.value));
  }
}

/** For one reader, whose rights are read each time. */
function basisOf(app: App, month: string, userId: string, state: MonthState): News {
  const { uid: _, asOf: _a, ...basis } = monthStudioOf(app, readActor(app, userId), month, state);
  return { t: "month-basis", basis };
}

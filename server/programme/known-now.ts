/** What the server knows of a month when a change arrives. */
import { monthSignedAt } from "#db/repos/month-repo.ts";
import { lastNearDay } from "#lib/month/ics/promised.ts";
import type { NowNear } from "#lib/programme/keep-revisions.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioDay } from "#server/month-facts/month-settings.ts";

export const knownNow = (app: Pick<Springline, "db" | "now">, month: string): NowNear => ({
  at: app.now(),
  signedAt: monthSignedAt(app.db, month),
  nearUntil: lastNearDay(studioDay(app)),
});

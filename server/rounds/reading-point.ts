/** What a lead read last: the point from which a review tells them what has changed. */
import { listReadings, type ReadingHead } from "#db/repos/reading-repo.ts";
import type { Springline } from "#server/context/springline.ts";

/**
 * The newest reading from before the present round was offered; where there is none, the first of this round. Opening a
 * review again within a round therefore never shows less. `offeredAt`: null while no round is open.
 */
export function readingPoint(
  app: Pick<Springline, "db">,
  planId: string,
  userId: string,
  offeredAt: number | null,
): ReadingHead | undefined {
  const readings = listReadings(app.db, planId, userId);
  return readings.findLast(({ at }) => at < (offeredAt ?? Number.POSITIVE_INFINITY)) ?? readings[0];
}

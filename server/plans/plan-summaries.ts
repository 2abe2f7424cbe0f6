/** Plans as lists show them: one line each. */
import { newestEditionNumbers } from "#db/repos/edition-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { type PlanRow, readPlanRows } from "#db/repos/plan-repo.ts";
import type { PlanSummary } from "#lib/protocol/messages.ts";
import type { Springline } from "#server/springline.ts";

/** What a name is shown as when its person's row is gone. */
export const SOMEBODY = "Somebody who left";

/** The plans with these ids; deleted and unknown ones are left out. */
export function planSummaries(app: Pick<Springline, "db">, ids: readonly string[]): PlanSummary[] {
  const names = namesById(app.db);
  const editions = newestEditionNumbers(app.db);
  return readPlanRows(app.db, ids).map((row) => summaryOf(row, editions.get(row.id) ?? 0, names));
}

/** `edition` is the newest one's number, 0 for none. */
export function summaryOf(row: PlanRow, edition: number, names: ReadonlyMap<string, string>): PlanSummary {
  const { id, title, state, lengthSeconds } = row;
  return { id, title, state, edition, lengthSeconds, ownerName: names.get(row.ownerId) ?? SOMEBODY };
}

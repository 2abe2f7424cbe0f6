/** Plans as lists show them: one line each, for one reader. */
import { newestEdition, newestEditionNumbers } from "#db/repos/edition-repo.ts";
import { namesById } from "#db/repos/people-repo.ts";
import { type PlanRow, readPlanRows } from "#db/repos/plan-repo.ts";
import { type Actor, canPlan, canReadEditions } from "#lib/policy/can.ts";
import type { PlanSummary, PlansKnown } from "#lib/protocol/messages.ts";
import type { Springline } from "#server/springline.ts";

type App = Pick<Springline, "db">;

/** What a name is shown as when its person's row is gone. */
export const SOMEBODY = "Somebody who left";

/**
 * The plans with these ids as `actor` may know them. Who may read a plan's editions but not what is in writing sees it as
 * it was signed last. Deleted and unknown ones are left out.
 */
export function planSummaries(app: App, actor: Actor, ids: readonly string[]): PlansKnown {
  const names = namesById(app.db);
  const editions = newestEditionNumbers(app.db);
  const known = readPlanRows(app.db, ids).map((row) => {
    if (canPlan(actor, "plan.read", row)) return summaryOf(row, editions.get(row.id) ?? 0, names);
    return canReadEditions(actor, row) ? signedSummary(app, row, names) : row.id;
  });
  return {
    plans: known.filter((one) => typeof one !== "string"),
    hidden: known.filter((one) => typeof one === "string"),
  };
}

/** `edition` is the newest one's number, 0 for none. */
export function summaryOf(row: PlanRow, edition: number, names: ReadonlyMap<string, string>): PlanSummary {
  const { id, title, state, lengthSeconds } = row;
  return { id, title, state, edition, lengthSeconds, ownerName: names.get(row.ownerId) ?? SOMEBODY };
}

/** The plan's id when it was never signed. */
function signedSummary(app: App, row: PlanRow, names: ReadonlyMap<string, string>): PlanSummary | string {
  const signed = newestEdition(app.db, row.id);
  if (!signed) return row.id;
  const { title, lengthSeconds, number } = signed;
  return { ...summaryOf(row, number, names), title, lengthSeconds, state: "signed-off" };
}

/** Plans as lists show them, one line each, for one reader. */
import { newestEdition, newestEditionNumbers } from "#db/repos/edition-repo.ts";
import { FORMER_MEMBER, namesById } from "#db/repos/people-repo.ts";
import { type PlanRow, readPlanRows } from "#db/repos/plan-repo.ts";
import { newestWithdrawals, type WithdrawalRow } from "#db/repos/withdrawal-repo.ts";
import { type Actor, canPlan, canReadEditions } from "#lib/policy/can.ts";
import type { PlanSummary, PlansKnown, Withdrawal } from "#lib/protocol/messages.ts";
import type { Springline } from "#server/context/springline.ts";

type App = Pick<Springline, "db">;

/**
 * The plans with these ids, as far as `actor` may know them. Somebody who may read a plan's editions but not the plan itself
 * sees it as it was last signed. Deleted and unknown plans are left out.
 */
export function planSummaries(app: App, actor: Actor, ids: readonly string[]): PlansKnown {
  const summary = summariesOf(app);
  const known = readPlanRows(app.db, ids).map((row) => {
    if (canPlan(actor, "plan.read", row)) return summary(row);
    return canReadEditions(actor, row) ? signedSummary(app, row, summary(row)) : row.id;
  });
  return {
    plans: known.filter((one) => typeof one !== "string"),
    hidden: known.filter((one) => typeof one === "string"),
  };
}

/** Reads what all lines have in common once, then makes the line of each plan. */
export function summariesOf(app: App): (row: PlanRow) => PlanSummary {
  const names = namesById(app.db);
  const editions = newestEditionNumbers(app.db);
  const withdrawn = newestWithdrawals(app.db);
  return (row) => {
    const { id, title, state, lengthSeconds } = row;
    const ownerName = names.get(row.ownerId) ?? FORMER_MEMBER;
    const out = withdrawn.get(id);
    const line = { id, title, state, edition: editions.get(id) ?? 0, lengthSeconds, ownerName };
    return out ? { ...line, withdrawn: withdrawalView(out, names) } : line;
  };
}

/** A withdrawal as pages show it. */
export const withdrawalView = (row: WithdrawalRow, names: ReadonlyMap<string, string>): Withdrawal => ({
  byName: names.get(row.withdrawnBy) ?? FORMER_MEMBER,
  at: row.withdrawnAt,
  reason: row.reason,
});

/** Only the plan's id when it was never signed. */
function signedSummary(app: App, row: PlanRow, summary: PlanSummary): PlanSummary | string {
  const signed = newestEdition(app.db, row.id);
  if (!signed) return row.id;
  const { title, lengthSeconds } = signed;
  return { ...summary, title, lengthSeconds, state: "signed-off" };
}

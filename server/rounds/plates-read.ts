/** What a lead has read, plate by plate. */
import * as z from "zod";
import { putPlatesRead, readPlatesRead, removePlatesRead } from "#db/repos/plate-read-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { orderedIds } from "#lib/doc/read.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { withPlan } from "#server/plans/plan-doc.ts";

/** More than any plan has items. */
const MOST_PLATES = 1000;
export const platesReadSchema = z.strictObject({
  on: z.boolean(),
  plates: z
    .array(
      z.strictObject({
        itemId: z.string().min(1).max(64),
        hash: z.string().regex(/^[0-9a-f]{64}$/, "Send the hash of the item that was read."),
      }),
    )
    .min(1)
    .max(MOST_PLATES),
});
export type PlatesRead = z.infer<typeof platesReadSchema>;

/**
 * Answers all that the person has read of the plan. Plates that the plan does not have are left out: somebody took them out
 * meanwhile. Errors: 401, 403, 404, and those of `withPlan`.
 */
export function markPlatesRead(
  app: Springline,
  actor: Actor,
  id: string,
  { on, plates }: PlatesRead,
): Result<{ platesRead: Record<string, string> }> {
  const opened = openPlan(app, actor, id, "plan.sign");
  if (!opened.ok) return opened;
  const by = { planId: id, userId: opened.value.person.id, at: app.now() };
  if (!on) inTransaction(app.db, () => removePlatesRead(app.db, by, plates));
  else {
    const known = withPlan(app, opened.value.row, (_, doc) => ok(new Set(orderedIds(doc))));
    if (!known.ok) return known;
    inTransaction(app.db, () =>
      putPlatesRead(
        app.db,
        by,
        plates.filter(({ itemId }) => known.value.has(itemId)),
      ),
    );
  }
  return ok({ platesRead: readPlatesRead(app.db, id, by.userId) });
}

/** What a lead has read, plate by plate. */
import * as z from "zod";
import { putPlatesRead, readPlatesRead, removePlatesRead } from "#db/repos/plate-read-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Actor } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "#server/plans/open-plan.ts";

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

/** Answers all that the person has read of the plan. Errors: 401, 403, 404. */
export function markPlatesRead(
  app: Springline,
  actor: Actor,
  id: string,
  { on, plates }: PlatesRead,
): Result<{ platesRead: Record<string, string> }> {
  const opened = openPlan(app, actor, id, "plan.sign");
  if (!opened.ok) return opened;
  const by = { planId: id, userId: opened.value.person.id, at: app.now() };
  inTransaction(app.db, () => (on ? putPlatesRead : removePlatesRead)(app.db, by, plates));
  return ok({ platesRead: readPlatesRead(app.db, id, by.userId) });
}

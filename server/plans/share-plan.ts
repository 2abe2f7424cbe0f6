/** Shares a plan with one person, who may then read and write it, or ends that. */

import * as z from "zod";
import { addPlanEvent } from "#db/repos/event-repo.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import { sharePlanRow, unsharePlanRow } from "#db/repos/plan-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { announcePlanToMonths } from "#server/news/month-news.ts";
import { openPlan } from "./open-plan.ts";
import { cannotWrite, NO_SUCH_PERSON } from "./refusals.ts";

export const shareSchema = z.strictObject({ userId: z.string().min(1).max(200), on: z.boolean() });
export type ShareBody = z.infer<typeof shareSchema>;

/** The rights of open pages change at once. Errors: 401, 403, 404, 422 no-such-person, 422 cannot-write. */
export function sharePlan(app: Springline, actor: Actor, id: string, body: ShareBody): Result<{ shared: boolean }> {
  const opened = openPlan(app, actor, id, "plan.share");
  if (!opened.ok) return opened;
  const { row, person } = opened.value;
  if (body.on) {
    const other = readPerson(app.db, body.userId);
    if (!other) return NO_SUCH_PERSON;
    if (!can({ kind: "person", id: other.id, roles: other.roles }, "plan.create")) {
      return cannotWrite(other.name);
    }
  }
  if (row.sharedWith.includes(body.userId) !== body.on) {
    const kind = body.on ? "shared" : "unshared";
    inTransaction(app.db, () => {
      (body.on ? sharePlanRow : unsharePlanRow)(app.db, id, body.userId);
      addPlanEvent(app.db, { planId: id, at: app.now(), actorId: person.id, kind, note: body.userId });
    });
    app.documents.refreshAccess();
    announcePlanToMonths(app, id);
  }
  return ok({ shared: body.on });
}

/** What people add to a class log: who led the class, that it does not count and why, that it counts again. Only added to. */
import * as z from "zod";
import { insertClassLogRemark, listClassLogRemarks } from "#db/repos/class-log-remark-repo.ts";
import { readLogOf } from "#db/repos/class-log-repo.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { type LogStanding, logStanding } from "#lib/look-back/remarks.ts";
import { type Actor, can, type Person } from "#lib/policy/can.ts";
import { acceptanceReasonSchema } from "#server/acceptances/accept.ts";
import { fail, NO_RIGHT, NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

export const remarkLogSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("coach"), coachId: z.string().min(1).max(64) }),
  z.strictObject({ kind: z.literal("struck"), reason: acceptanceReasonSchema }),
  z.strictObject({ kind: z.literal("counted") }),
]);
type RemarkLogBody = z.infer<typeof remarkLogSchema>;

const NAMED_ALREADY = fail(
  409,
  "named-already",
  "A lead or a manager has said who led this class. Ask them to change it.",
);
const NO_SUCH_PERSON = fail(422, "no-such-person", "Choose somebody of the studio who leads classes.");
const STRUCK_ALREADY = fail(409, "struck-already", "This log was struck already and does not count.");
const COUNTS_ALREADY = fail(409, "counts-already", "This log counts already.");

/**
 * Leads and managers say all of it; a coach says of a class that they led it themselves. Errors: 401, 403, 404; 409 named-already,
 * struck-already, counts-already; 422 no-such-person.
 */
export function remarkLog(app: Springline, actor: Actor, key: string, body: RemarkLogBody): Result<{ noted: true }> {
  if (actor === null) return NOT_SIGNED_IN;
  if (actor.kind !== "person" || !can(actor, "look-back.read")) return NO_RIGHT;
  if (readLogOf(app.db, key)?.kind !== "class") return NOT_FOUND;
  return inTransaction(app.db, () => {
    const remarks = listClassLogRemarks(app.db, key);
    const refused = refusal(app, actor, logStanding(remarks), body);
    if (refused) return refused;
    const coachId = body.kind === "coach" ? body.coachId : null;
    const reason = body.kind === "struck" ? body.reason : null;
    const remark = { sessionId: key, kind: body.kind, coachId, reason, actorId: actor.id, at: app.now() };
    insertClassLogRemark(app.db, remark);
    return ok({ noted: true });
  });
}

function refusal(
  app: Springline,
  actor: Person,
  { named, struck }: LogStanding,
  body: RemarkLogBody,
): Result<never> | null {
  const all = can(actor, "log.remark");
  if (body.kind !== "coach") {
    if (!all) return NO_RIGHT;
    if (body.kind === "struck") return struck ? STRUCK_ALREADY : null;
    return struck ? null : COUNTS_ALREADY;
  }
  if (!all && body.coachId !== actor.id) return NO_RIGHT;
  if (!all && named && named.actorId !== actor.id) return NAMED_ALREADY;
  const person = readPerson(app.db, body.coachId);
  return person?.roles.some((role) => LEAD_CLASSES.has(role)) ? null : NO_SUCH_PERSON;
}

const LEAD_CLASSES: ReadonlySet<string> = new Set(["trainee", "coach", "lead"]);

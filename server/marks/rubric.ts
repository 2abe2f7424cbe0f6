/** The studio's rubric: what a new studio begins with until a lead or a manager writes their own. */
import * as z from "zod";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readSetting, writeSetting } from "#db/repos/setting-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { type Actor, can } from "#lib/policy/can.ts";
import { type Rubric, rubricSchema, STARTER_RUBRIC } from "#lib/rubric/rubric.ts";
import { fail, NO_RIGHT, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

export const rubricChangeSchema = z.strictObject({
  rubric: rubricSchema,
  /** The rubric before the change, so that somebody else's change is not overwritten unseen. */
  seen: rubricSchema,
});

export const rubricNow = (app: Pick<Springline, "db">): Rubric =>
  (readSetting(app.db, "rubric")?.data as Rubric | undefined) ?? STARTER_RUBRIC; // written by changeRubric only

/** For everybody who is marked by it or marks. Errors: 401, 403 for devices. */
export function readRubric(app: Pick<Springline, "db">, actor: Actor): Result<Rubric> {
  if (actor === null) return NOT_SIGNED_IN;
  return can(actor, "remarks.read") || can(actor, "rubric.write") ? ok(rubricNow(app)) : NO_RIGHT;
}

/** Marks that were set before keep the rubric they were set by. Errors: 403 no-right, 409 changed-meanwhile. */
export function changeRubric(
  app: Pick<Springline, "db" | "now">,
  actor: Actor,
  { rubric, seen }: z.infer<typeof rubricChangeSchema>,
): Result<Rubric> {
  if (actor?.kind !== "person" || !can(actor, "rubric.write")) return NO_RIGHT;
  return inTransaction(app.db, () => {
    if (!sameData(rubricNow(app), seen)) {
      const words =
        "Somebody else has changed the rubric meanwhile. Copy what you wrote, reload the page and change it again.";
      return fail(409, "changed-meanwhile", words);
    }
    const at = app.now();
    writeSetting(app.db, "rubric", { data: rubric, updatedAt: at });
    addToRecord(app.db, { at, actorId: actor.id, subject: "studio", kind: "rubric", body: rubric });
    return ok(rubric);
  });
}

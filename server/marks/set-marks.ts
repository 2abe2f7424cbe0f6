/** A lead sets marks by the studio's rubric: on a round of reading, or on a class that was taught. */
import * as z from "zod";
import { readLogOf } from "#db/repos/class-log-repo.ts";
import { insertMarks, isNewestMarks, readOfferer } from "#db/repos/marks-repo.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { Actor, Person } from "#lib/policy/can.ts";
import { faultOfLevels } from "#lib/rubric/rubric.ts";
import { fail, NOT_FOUND, ok, type Result } from "#server/base/result.ts";
import { typedText } from "#server/base/typed-text.ts";
import type { Springline } from "#server/context/springline.ts";
import { onceOnly } from "#server/limits/same-again.ts";
import { tell } from "#server/notices/tell.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { rubricNow } from "./rubric.ts";

const SENTENCE_MAX = 600;

export const marksSchema = z.strictObject({
  about: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("round"), round: z.int().min(1) }),
    /** `userId`: who taught it, since a log names nobody. */
    z.strictObject({ kind: z.literal("class"), sessionId: z.string().max(200), userId: z.string().max(64) }),
  ]),
  levels: z.record(z.string().max(64), z.int()),
  sentence: typedText
    .min(1, "Add a sentence that says what to work on next.")
    .max(SENTENCE_MAX, `The sentence has at most ${SENTENCE_MAX} characters.`),
});
export type MarksBody = z.infer<typeof marksSchema>;

const NO_SUCH_TEACHER = fail(422, "no-such-person", "This person is not in the studio. Choose who taught the class.");
const YOUR_OWN = fail(409, "own-marks", "Marks are set by somebody else. Ask another lead to read this plan.");

/** Marks set again replace the earlier ones, which stay on record. Errors: 401, 403, 404, 409 own-marks, 422. */
export function setMarks(app: Springline, actor: Actor, planId: string, body: MarksBody): Result<{ id: string }> {
  const opened = openPlan(app, actor, planId, "plan.mark");
  if (!opened.ok) return opened;
  const { person } = opened.value;
  const stands = ({ id }: { readonly id: string }) => isNewestMarks(app.db, planId, id);
  const sending = { userId: person.id, to: `marks ${planId}`, sent: body, stands };
  return onceOnly(app, sending, () => storeMarks(app, person, planId, body));
}

function storeMarks(app: Springline, person: Person, planId: string, body: MarksBody): Result<{ id: string }> {
  const about = whomOf(app, planId, body.about);
  if (!about.ok) return about;
  if (about.value.userId === person.id) return YOUR_OWN;
  const rubric = rubricNow(app);
  const fault = faultOfLevels(rubric, body.levels);
  if (fault !== null) return fail(422, "bad-levels", fault);
  const { levels, sentence } = body;
  const marks = { ...about.value, id: app.newId(), planId, byId: person.id, at: app.now(), levels, sentence };
  inTransaction(app.db, () => {
    insertMarks(app.db, { ...marks, rubric });
    const data = { byId: person.id, ...(marks.round === null ? {} : { round: marks.round }) };
    tell(app, { kind: "marks", to: [marks.userId], planId, data });
  });
  return ok({ id: marks.id });
}

interface About {
  readonly userId: string;
  readonly round: number | null;
  readonly sessionId: string | null;
}

function whomOf(app: Springline, planId: string, about: MarksBody["about"]): Result<About> {
  if (about.kind === "round") {
    const userId = readOfferer(app.db, planId, about.round);
    return userId === undefined ? NOT_FOUND : ok({ userId, round: about.round, sessionId: null });
  }
  const log = readLogOf(app.db, about.sessionId);
  if (log?.planId !== planId || log.kind !== "class") return NOT_FOUND;
  if (!readPerson(app.db, about.userId)) return NO_SUCH_TEACHER;
  return ok({ userId: about.userId, round: null, sessionId: about.sessionId });
}

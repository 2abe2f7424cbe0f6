/** What a lead needs to mark a plan: its rounds, the classes taught from it, the rubric, and the marks that there are. */
import { listClassesOfPlan } from "#db/repos/class-log-repo.ts";
import { listMarksOn, listRoundBriefs, type RoundBrief } from "#db/repos/marks-repo.ts";
import { FORMER_MEMBER, listMembers, namesById } from "#db/repos/people-repo.ts";
import type { Actor } from "#lib/policy/can.ts";
import type { Rubric } from "#lib/rubric/rubric.ts";
import { ok, type Result } from "#server/base/result.ts";
import { LedClasses } from "#server/class-log/led-classes.ts";
import type { Springline } from "#server/context/springline.ts";
import { openPlan } from "#server/plans/open-plan.ts";
import { type MarksView, viewsOf } from "./marks-view.ts";
import { rubricNow } from "./rubric.ts";

interface ClassBrief {
  readonly sessionId: string;
  /** ms since the epoch. */
  readonly at: number;
  readonly edition: number;
  /** Who stood in the programme for it; null when nobody did. */
  readonly teacherId: string | null;
}

export interface PlanMarks {
  readonly planId: string;
  readonly title: string;
  readonly rubric: Rubric;
  readonly rounds: readonly (RoundBrief & { readonly offererName: string })[];
  /** The newest first. */
  readonly classes: readonly ClassBrief[];
  readonly people: readonly { readonly id: string; readonly name: string }[];
  /** The newest first. */
  readonly marks: readonly (MarksView & { readonly ofName: string })[];
}

/** Errors: 401, 403, 404. */
export function readPlanMarks(app: Springline, actor: Actor, planId: string): Result<PlanMarks> {
  const opened = openPlan(app, actor, planId, "plan.mark");
  if (!opened.ok) return opened;
  const names = namesById(app.db);
  const led = new LedClasses(app);
  const nameOf = (id: string) => names.get(id) ?? FORMER_MEMBER;
  return ok({
    planId,
    title: opened.value.row.title,
    rubric: rubricNow(app),
    rounds: listRoundBriefs(app.db, planId).map((round) => ({ ...round, offererName: nameOf(round.offeredBy) })),
    classes: listClassesOfPlan(app.db, planId).map(({ log, roomId }) => {
      const { sessionId, edition } = log;
      const startedAt = Date.parse(log.startedAt);
      const teacherId = led.of({ key: sessionId, planId, roomId, startedAt }).coachId;
      return { sessionId, at: startedAt, edition: edition.number, teacherId };
    }),
    people: listMembers(app.db).map(({ id, name }) => ({ id, name })),
    marks: viewsOf(app, listMarksOn(app.db, planId))
      .map((marks) => ({ ...marks, ofName: nameOf(marks.userId) }))
      .toReversed(),
  });
}

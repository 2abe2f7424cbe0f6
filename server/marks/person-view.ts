/** One person over time: marks, findings that return, what was fixed unasked, classes against their plans. */
import { listMarksOf } from "#db/repos/marks-repo.ts";
import { readPerson } from "#db/repos/people-repo.ts";
import { titlesById } from "#db/repos/progress-repo.ts";
import { type Actor, canReadMarks, type Role } from "#lib/policy/can.ts";
import { type FixedUnasked, fixedUnasked, type ReturningFinding, returningFindings } from "#lib/progress/findings.ts";
import { type MarkSeries, markSeries } from "#lib/progress/series.ts";
import type { TaughtAgainstPlan } from "#lib/progress/taught.ts";
import { NOT_FOUND, NOT_SIGNED_IN, ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { classesTaughtBy } from "./classes-taught.ts";
import { type MarksView, viewsOf } from "./marks-view.ts";
import { roundTexts } from "./round-texts.ts";

export interface PersonOverTime {
  readonly person: { readonly id: string; readonly name: string; readonly roles: readonly Role[] };
  /** `MARKS_SHOWN` of them at most, the newest first. */
  readonly marks: readonly MarksView[];
  /** How many there are in all, and how many of the newest are left out above. */
  readonly markCount: number;
  readonly from: number;
  readonly series: readonly MarkSeries[];
  readonly returning: readonly ReturningFinding[];
  readonly unasked: readonly FixedUnasked[];
  /** The newest first. */
  readonly classes: readonly TaughtAgainstPlan[];
  readonly titles: Readonly<Record<string, string>>;
}

/** On one page: each stands there with its whole rubric. Our own choice, as is the next. */
export const MARKS_SHOWN = 20;
/** The newest that are drawn over time. */
const MARKS_DRAWN = 100;

/**
 * Somebody else's page does not exist for those who may not read it. `from`: how many of the newest marks are left out.
 * Errors: 401, 404.
 */
export function readPersonOverTime(app: Springline, actor: Actor, userId: string, from = 0): Result<PersonOverTime> {
  if (actor === null) return NOT_SIGNED_IN;
  const person = readPerson(app.db, userId);
  if (!person || !canReadMarks(actor, userId)) return NOT_FOUND;
  const { id, name, roles } = person;
  const stored = listMarksOf(app.db, userId);
  const all = viewsOf(app, stored);
  const marks = all.toReversed().slice(from, from + MARKS_SHOWN);
  const texts = roundTexts(app, userId);
  const classes = classesTaughtBy(app, userId, stored);
  const titles = titlesById(app.db);
  const named = [...marks, ...texts, ...classes].map(({ planId }) => [planId, titles.get(planId) ?? ""] as const);
  return ok({
    person: { id, name, roles },
    marks,
    markCount: all.length,
    from,
    series: markSeries(all.filter(({ replaced }) => !replaced).slice(-MARKS_DRAWN)),
    returning: returningFindings(texts),
    unasked: fixedUnasked(texts),
    classes,
    titles: Object.fromEntries(named),
  });
}

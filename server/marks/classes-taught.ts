/**
 * Classes that somebody taught. A log names no person: who taught is who stood in the programme for that room, day and plan,
 * or whom a lead named when setting marks on it.
 */
import { readLogRow } from "#db/repos/class-log-repo.ts";
import { listMarksOf } from "#db/repos/marks-repo.ts";
import { type LoggedClass, listNewestClasses } from "#db/repos/progress-repo.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { Slot } from "#lib/programme/layout.ts";
import { type TaughtAgainstPlan, taughtAgainstPlan } from "#lib/progress/taught.ts";
import type { Springline } from "#server/context/springline.ts";
import { slotsOfMonth } from "#server/programme/month-slots.ts";

/** Our own choice: a year of a busy studio. */
const MOST_CLASSES = 1_000;

/** The newest first. */
export function classesTaughtBy(app: Springline, userId: string): TaughtAgainstPlan[] {
  const named = new Set(listMarksOf(app.db, userId).map(({ sessionId }) => sessionId));
  const slots = new Map<string, readonly Slot[]>();
  const stood = (logged: LoggedClass) => slotsFor(app, slots, logged).some(({ coachId }) => coachId === userId);
  return listNewestClasses(app.db, MOST_CLASSES)
    .filter((logged) => named.has(logged.key.split(".")[0] ?? "") || stood(logged))
    .flatMap(({ key }) => {
      const row = readLogRow(app.db, key);
      return row ? [taughtAgainstPlan(JSON.parse(row.logJson) as ClassLog)] : []; // checked when it was received
    })
    .sort((a, b) => b.at - a.at);
}

/** Who stood in the programme for that class; null when nobody did. */
export const teacherOf = (app: Springline, logged: WhereAndWhen): string | null =>
  slotsFor(app, new Map(), logged).find(({ coachId }) => coachId !== null)?.coachId ?? null;

type WhereAndWhen = Pick<LoggedClass, "planId" | "roomId" | "startedAt">;

/** Slots of that room, day and plan. */
function slotsFor(app: Springline, known: Map<string, readonly Slot[]>, logged: WhereAndWhen): Slot[] {
  const { planId, roomId, startedAt } = logged;
  // The device's day in UTC and the days beside it: a studio's own day may be either.
  const days = [-1, 0, 1].map((by) => new Date(startedAt + by * 86_400_000).toISOString().slice(0, 10));
  return days
    .flatMap((day) => slotsOf(app, known, day.slice(0, 7)).filter(({ date }) => date === day))
    .filter((slot) => slot.planId === planId && (slot.roomId ?? roomId) === roomId);
}

function slotsOf(app: Springline, known: Map<string, readonly Slot[]>, month: string): readonly Slot[] {
  const found = known.get(month) ?? slotsOfMonth(app, month);
  known.set(month, found);
  return found;
}

/** The classes of the programme from today on, the next one first. */
import { newestEdition } from "#db/repos/edition-repo.ts";
import { listMonths } from "#db/repos/month-repo.ts";
import { readWithdrawal } from "#db/repos/withdrawal-repo.ts";
import type { Springline } from "#server/context/springline.ts";
import { studioDay } from "#server/month-facts/month-settings.ts";
import { slotsOfMonth } from "#server/programme/month-slots.ts";

export interface ComingClass {
  /** "2026-12-01 07:00", the studio's own time. */
  readonly at: string;
  readonly coachId: string | null;
  readonly planId: string | null;
  readonly theme: string;
}

/** Months that are looked at: this one and two more. */
const MOST_MONTHS = 3;

/** In order, 'YYYY-MM'. */
export const comingMonths = (app: Springline): string[] =>
  listMonths(app.db, studioDay(app).slice(0, 7)).slice(0, MOST_MONTHS);

export function comingClasses(app: Springline): ComingClass[] {
  const today = studioDay(app);
  return comingMonths(app)
    .flatMap((month) => slotsOfMonth(app, month))
    .filter(({ date }) => date >= today)
    .map(({ date, time, coachId, planId, theme }) => ({ at: `${date} ${time}`, coachId, planId, theme }))
    .sort((a, b) => (a.at < b.at ? -1 : 1));
}

/** Whether the plan has an edition that stands. */
export function standsSigned(app: Pick<Springline, "db">, planId: string): boolean {
  const newest = newestEdition(app.db, planId);
  return newest !== undefined && readWithdrawal(app.db, planId, newest.number) === undefined;
}

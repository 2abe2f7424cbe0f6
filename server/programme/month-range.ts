/** Which months have a programme: enough to plan ahead and to look back. */
import { addMonths, dateOfDay, isMonth, monthOf } from "#lib/calendar/days.ts";

const REACH = { back: 24, ahead: 24 };
const DAY_MS = 86_400_000;

/** Two years either way from `now` (ms since the epoch). */
export function monthIsNear(month: string, now: number): boolean {
  const today = monthOf(dateOfDay(Math.floor(now / DAY_MS)));
  return isMonth(month) && month >= addMonths(today, -REACH.back) && month <= addMonths(today, REACH.ahead);
}

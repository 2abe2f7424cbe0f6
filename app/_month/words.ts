/** Days, times and states of a month in words. Pure; English, whatever the device speaks. */
import { isoWeekday } from "#lib/programme/calendar.ts";
import type { PlanSummary } from "#lib/protocol/messages.ts";
import { STATE_WORDS } from "../_parts/state-words.ts";

const MONTHS = "January February March April May June July August September October November December".split(" ");
const DAYS = "Monday Tuesday Wednesday Thursday Friday Saturday Sunday".split(" ");

/** "November 2026" */
export const monthTitle = (month: string): string => `${MONTHS[Number(month.slice(5)) - 1] ?? ""} ${month.slice(0, 4)}`;
export const dayName = (date: string): string => DAYS[isoWeekday(date) - 1] ?? "";
export const dayOfMonth = (date: string): number => Number(date.slice(8));
/** "Tuesday 3 November" */
export const dayWords = (date: string): string =>
  `${dayName(date)} ${dayOfMonth(date)} ${MONTHS[Number(date.slice(5, 7)) - 1] ?? ""}`;

/** A slot's plan in as few words as are true. */
export function planWords(plan: PlanSummary): string {
  if (plan.withdrawn) return `edition ${plan.edition} withdrawn`;
  if (plan.state === "signed-off") return `edition ${plan.edition}`;
  return plan.edition > 0 ? `edition ${plan.edition}, ${STATE_WORDS[plan.state]} again` : STATE_WORDS[plan.state];
}

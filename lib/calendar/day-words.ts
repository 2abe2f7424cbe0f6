/** Days and months in English words. */
import { isoWeekday } from "./days.ts";

const MONTHS = "January February March April May June July August September October November December".split(" ");
const DAYS = "Monday Tuesday Wednesday Thursday Friday Saturday Sunday".split(" ");

/** "November 2026", of 'YYYY-MM' */
export const monthTitle = (month: string): string => `${MONTHS[Number(month.slice(5)) - 1] ?? ""} ${month.slice(0, 4)}`;
export const dayName = (date: string): string => DAYS[isoWeekday(date) - 1] ?? "";
export const dayOfMonth = (date: string): number => Number(date.slice(8));
/** "Tuesday 3 November" */
export const dayWords = (date: string): string =>
  `${dayName(date)} ${dayOfMonth(date)} ${MONTHS[Number(date.slice(5, 7)) - 1] ?? ""}`;

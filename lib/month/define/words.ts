/** Names, days and lengths of time in the messages of the month. */
import { dayNumber } from "#lib/calendar/days.ts";
import { canonicalDay } from "#lib/formats/canonical-times.ts";
import { agree, plainNumber, sentenceCase, tagWords } from "#lib/plan/format.ts";
import type { Group } from "#lib/plan/schema.ts";
import type { MonthClass } from "../sums-types.ts";

/** "Wed 4 Mar". */
export const dateWords = (date: string): string => canonicalDay(date);

/** "Wed 4 Mar 19:00". */
export const startWords = ({ slot }: MonthClass): string => `${dateWords(slot.date)} ${slot.start}`;

/** When a class ends: "Wed 4 Mar 19:45". One that goes past midnight ends on the next day. */
export function tillWords({ slot, till }: MonthClass): string {
  const next = till < slot.start ? 1 : 0;
  return `${dateWords(next === 0 ? slot.date : dayAfter(slot.date))} ${till}`;
}

const dayAfter = (date: string): string => new Date((dayNumber(date) + 1) * 86_400_000).toISOString().slice(0, 10);

/** "45 min", "23 h", "36 h 15 min". */
export function hoursWords(minutes: number): string {
  const whole = Math.round(minutes);
  const [h, min] = [Math.floor(Math.abs(whole) / 60), Math.abs(whole) % 60];
  const parts = [h > 0 ? `${h} h` : "", min > 0 || h === 0 ? `${min} min` : ""].filter(Boolean);
  return `${whole < 0 ? "-" : ""}${parts.join(" ")}`;
}

/** "Upper back". */
export const groupName = (group: Group): string => sentenceCase(tagWords(group));

/** "1 class", "3 classes". */
export const classCount = (n: number): string => `${plainNumber(n)} ${agree(n, "class", "classes")}`;

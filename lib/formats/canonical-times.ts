/**
 * Sentences that are the same for everybody, read in one reader's days and times. Findings and changes of a month name them as
 * `lib/month/define/words.ts` writes them: "Wed 4 Mar", "Wed 4 Mar 18:00", "18:00".
 */
import { isoWeekday } from "#lib/calendar/days.ts";
import { timeWords, writtenDay } from "./dates.ts";
import type { Formats } from "./formats.ts";

const DAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** "Wed 4 Mar" */
export const canonicalDay = (date: string): string =>
  `${DAYS[isoWeekday(date) - 1]} ${Number(date.slice(8))} ${MONTHS[Number(date.slice(5, 7)) - 1]}`;

/** A day, or a time of day that is no length of time ("12:30 min", as it stands in sentences that were kept). */
const NAMED = new RegExp(
  `\\b(${DAYS.join("|")}) (\\d{1,2}) (${MONTHS.join("|")})\\b|\\b((?:[01]\\d|2[0-3]):[0-5]\\d)\\b(?! min|:\\d)`,
  "g",
);

/** Names that people typed stand in such sentences too: one that looks like a day or a time is written in the reader's way with them. */
export function timesIn(words: string, f: Formats): string {
  if (f.dates === "en-GB" && f.clock === "24") return words;
  return words.replace(NAMED, (_, day: string | undefined, date: string, month: string, time: string) =>
    day === undefined
      ? timeWords(time, f)
      : writtenDay({ weekday: DAYS.indexOf(day), day: Number(date), month: MONTHS.indexOf(month) }, f),
  );
}

/** What a new month takes from the one before: who comes, who can teach when, what it is about, and what repeats. Nothing else. */
import { daysOfMonth } from "#lib/calendar/days.ts";
import type { PatternLine } from "#lib/month/types.ts";
import type { MonthState } from "./month-reader.ts";
import type { CoachTimes } from "./read-lists.ts";
import type { MonthContent } from "./write-content.ts";

/** Themes keep their names, shares and promises; plans stay behind, as do holidays, single classes and changed ones. */
export function carriedOver(earlier: MonthState, month: string): MonthContent {
  const [first = "", last = ""] = [daysOfMonth(month)[0], daysOfMonth(month).at(-1)];
  return {
    regulars: earlier.regulars,
    themes: earlier.themes,
    pattern: earlier.pattern.filter((line) => runsOn(line, first)).map((line) => continued(line, earlier, last)),
    coachTimes: Object.fromEntries(
      Object.entries(earlier.coachTimes).map(([id, times]) => [id, notOver(times, first)]),
    ),
  };
}

const runsOn = ({ to }: PatternLine, first: string): boolean => to === undefined || to >= first;

/** A line that did not say since when it runs has run since the month it stood in: its weeks and its count go by that. */
function continued(line: PatternLine, earlier: MonthState, last: string): PatternLine {
  const { plan: _, except, ...rest } = line;
  const left = (except ?? []).filter((date) => date > earlier.dates.to && date <= last);
  return { ...rest, from: line.from ?? earlier.dates.from, ...(left.length > 0 ? { except: left } : {}) };
}

const notOver = ({ free, away }: CoachTimes, first: string): CoachTimes => ({
  ...(free ? { free } : {}),
  ...(away ? { away: away.filter(({ to }) => to >= first) } : {}),
});

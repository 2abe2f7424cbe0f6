/** The names and patterns of a language's dates, as `Intl` (CLDR) has them. */
import type { DateLanguage } from "./date-languages.ts";
import type { DatePattern, DateWords } from "./formats.ts";

type Parts = Intl.DateTimeFormatOptions;

const kept = new Map<DateLanguage, DateWords>();

/** Worked out once a language; there are few. */
export function wordsOfLanguage(language: DateLanguage): DateWords {
  const known = kept.get(language);
  if (known) return known;
  const made = makeWords(language);
  kept.set(language, made);
  return made;
}

const WEEKDAY_DATE: Parts = { weekday: "long", day: "numeric", month: "long" };
const WEEKDAY_DATE_SHORT: Parts = { weekday: "short", day: "numeric", month: "short" };
const DATE: Parts = { day: "numeric", month: "long" };
const MONTH_YEAR: Parts = { month: "long", year: "numeric" };
const HOURS_24: Parts = { hour: "2-digit", minute: "2-digit", hourCycle: "h23" };
const HOURS_12: Parts = { hour: "numeric", minute: "2-digit", hourCycle: "h12" };
const SECOND: Parts = { second: "2-digit" };

/** Options of each pattern, and what stands for weekday and month in it. */
const PATTERNS: Readonly<Record<DatePattern, readonly [Parts, weekday: string, month: string]>> = {
  weekdayDate: [WEEKDAY_DATE, "W", "M"],
  weekdayDateShort: [WEEKDAY_DATE_SHORT, "w", "m"],
  date: [DATE, "W", "M"],
  dateShort: [{ day: "numeric", month: "short" }, "w", "m"],
  dateYear: [{ ...DATE, year: "numeric" }, "W", "M"],
  monthYear: [MONTH_YEAR, "W", "A"],
  time24: [HOURS_24, "W", "M"],
  time12: [HOURS_12, "W", "M"],
  hour12: [{ hour: "numeric", hourCycle: "h12" }, "W", "M"],
  seconds24: [{ ...HOURS_24, ...SECOND }, "W", "M"],
  seconds12: [{ ...HOURS_12, ...SECOND }, "W", "M"],
};

/** A Tuesday evening with one-digit day and hour. */
const SAMPLE = Date.UTC(2026, 10, 3, 19, 5, 9);
const HOUR_MS = 3_600_000;

function makeWords(language: DateLanguage): DateWords {
  const part = (at: number, options: Parts, type: Intl.DateTimeFormatPartTypes): string =>
    partsOf(language, options, at).find((one) => one.type === type)?.value ?? "";
  const months = (options: Parts) => Array.from({ length: 12 }, (_, i) => part(Date.UTC(2026, i, 3), options, "month"));
  // 2 November 2026 is a Monday.
  const days = (options: Parts) =>
    Array.from({ length: 7 }, (_, i) => part(Date.UTC(2026, 10, 2 + i), options, "weekday"));
  return {
    months: months(DATE),
    monthsShort: months(WEEKDAY_DATE_SHORT),
    monthsAlone: months(MONTH_YEAR),
    days: days(WEEKDAY_DATE),
    daysShort: days(WEEKDAY_DATE_SHORT),
    halves: [part(SAMPLE - 12 * HOUR_MS, HOURS_12, "dayPeriod"), part(SAMPLE, HOURS_12, "dayPeriod")],
    patterns: {
      ...patternsOf(language, ["weekdayDate", "weekdayDateShort", "date", "dateShort", "dateYear", "monthYear"]),
      ...patternsOf(language, ["time24", "time12", "hour12", "seconds24", "seconds12"]),
    } as DateWords["patterns"], // every pattern is in one of the two lists
  };
}

const patternsOf = (language: DateLanguage, names: readonly DatePattern[]) =>
  Object.fromEntries(names.map((name) => [name, patternOf(language, name)]));

function patternOf(language: DateLanguage, name: DatePattern): string {
  const [options, weekday, month] = PATTERNS[name];
  const signs: Readonly<Record<string, string>> = {
    ...{ weekday, month, day: "d", year: "y", hour: "h", minute: "n", second: "s", dayPeriod: "p" },
  };
  return partsOf(language, options, SAMPLE)
    .map(({ type, value }) => (signs[type] ? `{${signs[type]}}` : value))
    .join("");
}

/** A time of day is never broken; releases of CLDR differ in which space they have in it. */
function partsOf(language: DateLanguage, options: Parts, at: number): Intl.DateTimeFormatPart[] {
  const format = new Intl.DateTimeFormat(language, {
    ...options,
    ...{ timeZone: "UTC", calendar: "gregory", numberingSystem: "latn" },
  });
  return format
    .formatToParts(at)
    .map((one) => ({ ...one, value: one.value.replace(options.hour ? /[ \u202f]/g : /\u202f/g, "\u00a0") }));
}

/** The language's own name, in itself: "Deutsch (Österreich)". */
export function languageName(language: DateLanguage): string {
  const name =
    new Intl.DisplayNames([language], { type: "language", languageDisplay: "standard" }).of(language) ?? language;
  return name.charAt(0).toLocaleUpperCase(language) + name.slice(1);
}

/** How days, times, weeks, forces and lengths are written for one reader. Plain data, so that it can be handed to a page. */
import type { DateLanguage } from "./date-languages.ts";

export const CLOCKS = ["24", "12"] as const;
/** Hours of a day: "19:05" or "7:05 pm". */
type Clock = (typeof CLOCKS)[number];

export const WEEK_STARTS = [1, 7] as const;
/** The first day of a week as it is shown: 1 Monday, 7 Sunday (ISO 8601 numbers). Computed weeks are ISO weeks whatever it is. */
export type WeekStart = (typeof WEEK_STARTS)[number];

export const FORCE_UNITS = ["N", "kgf", "lbf"] as const;
export type ForceUnit = (typeof FORCE_UNITS)[number];

export const LENGTH_UNITS = ["cm", "in"] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** What a studio decides, and a person may decide for themselves. */
export interface FormatChoices {
  /** BCP 47: the language of dates. Every other word of the program is English. */
  readonly dates: DateLanguage;
  readonly clock: Clock;
  readonly weekStart: WeekStart;
  readonly force: ForceUnit;
  readonly length: LengthUnit;
}

/** A person's: null is as the studio has it, and follows it. */
export type OwnFormats = { readonly [K in keyof FormatChoices]: FormatChoices[K] | null };

export const NOTHING_OWN: OwnFormats = { dates: null, clock: null, weekStart: null, force: null, length: null };

export interface Formats extends FormatChoices {
  /** IANA name: where moments are told. */
  readonly zone: string;
  readonly words: DateWords;
}

/**
 * The names and patterns of a language, worked out where `Intl` has every language and handed on: a browser may know fewer,
 * or other forms, than the server that rendered the page. In a pattern `{W}` is the weekday, `{w}` short; `{d}` the day; `{M}`
 * the month beside a day, `{m}` short, `{A}` alone; `{y}` the year; `{h}` hour, `{n}` minute, `{s}` second, `{p}` half of the day.
 */
export interface DateWords {
  /** January first. */
  readonly months: readonly string[];
  readonly monthsShort: readonly string[];
  readonly monthsAlone: readonly string[];
  /** Monday first. */
  readonly days: readonly string[];
  readonly daysShort: readonly string[];
  /** Before and after noon. */
  readonly halves: readonly [string, string];
  readonly patterns: Readonly<Record<DatePattern, string>>;
}

export type DatePattern =
  | ("weekdayDate" | "weekdayDateShort" | "date" | "dateShort" | "dateYear" | "monthYear")
  | ("time24" | "time12" | "hour12" | "seconds24" | "seconds12");

const split = (words: string): string[] => words.split(" ");

/**
 * British dates, 24 hours, weeks from Monday, newtons and centimetres in UTC: what a studio begins with, what canonical texts
 * are written in (findings, files, the command line), and what a page outside the workspace shows.
 */
export const STANDARD_FORMATS: Formats = {
  dates: "en-GB",
  clock: "24",
  weekStart: 1,
  force: "N",
  length: "cm",
  zone: "UTC",
  words: {
    months: split("January February March April May June July August September October November December"),
    monthsShort: split("Jan Feb Mar Apr May Jun Jul Aug Sept Oct Nov Dec"),
    monthsAlone: split("January February March April May June July August September October November December"),
    days: split("Monday Tuesday Wednesday Thursday Friday Saturday Sunday"),
    daysShort: split("Mon Tue Wed Thu Fri Sat Sun"),
    halves: ["am", "pm"],
    patterns: {
      weekdayDate: "{W} {d} {M}",
      weekdayDateShort: "{w} {d} {m}",
      date: "{d} {M}",
      dateShort: "{d} {m}",
      dateYear: "{d} {M} {y}",
      monthYear: "{A} {y}",
      time24: "{h}:{n}",
      time12: "{h}:{n}\u00a0{p}",
      hour12: "{h}\u00a0{p}",
      seconds24: "{h}:{n}:{s}",
      seconds12: "{h}:{n}:{s}\u00a0{p}",
    },
  },
};

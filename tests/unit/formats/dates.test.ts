/** Days and times against `Intl` (CLDR), whose own words they must be on every day; clock changes against IANA's tables. */
import { describe, expect, test } from "vitest";
import { dateOfDay, dayNumber } from "#lib/calendar/days.ts";
import { timesIn } from "#lib/formats/canonical-times.ts";
import { DATE_LANGUAGES, type DateLanguage } from "#lib/formats/date-languages.ts";
import { languageName, wordsOfLanguage } from "#lib/formats/date-words.ts";
import {
  dateText,
  dayAndTime,
  dayWords,
  hourWords,
  momentWords,
  monthTitle,
  relativeDay,
  shortDate,
  shortDayWords,
  timeOfMoment,
  timeWithSeconds,
  timeWords,
  weekBegins,
  weekdaysInOrder,
} from "#lib/formats/dates.ts";
import { languageOptions } from "#lib/formats/format-options.ts";
import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { formatsSchema } from "#lib/formats/formats-schema.ts";
import { startWords } from "#lib/month/define/words.ts";

/** Releases of CLDR differ in which space stands before "pm". */
const plain = (words: string) => words.replace(/[\u00a0\u202f]/g, " ");

const inLanguage = (dates: DateLanguage, more: Partial<Formats> = {}): Formats => ({
  ...{ ...STANDARD_FORMATS, dates, words: wordsOfLanguage(dates) },
  ...more,
});

describe("a language", () => {
  const DAYS = Array.from({ length: 366 }, (_, i) => dateOfDay(dayNumber("2028-01-01") + i));

  test.each(DATE_LANGUAGES)("%s is written as Intl writes it, on every day of a leap year", (language) => {
    const f = inLanguage(language);
    const intl = (options: Intl.DateTimeFormatOptions) => {
      const format = new Intl.DateTimeFormat(language, {
        ...options,
        timeZone: "UTC",
        calendar: "gregory",
        numberingSystem: "latn",
      });
      return (date: string, time = "00:00") => format.format(Date.parse(`${date}T${time}Z`));
    };
    const kinds = [
      [dayWords, intl({ weekday: "long", day: "numeric", month: "long" })],
      [shortDayWords, intl({ weekday: "short", day: "numeric", month: "short" })],
      [dateText, intl({ day: "numeric", month: "long" })],
      [shortDate, intl({ day: "numeric", month: "short" })],
      [(date: string) => dateText(date, f, true), intl({ day: "numeric", month: "long", year: "numeric" })],
      [(date: string) => monthTitle(date.slice(0, 7), f), intl({ month: "long", year: "numeric" })],
    ] as const;
    for (const [ours, theirs] of kinds)
      expect(DAYS.map((date) => plain(ours(date, f)))).toEqual(DAYS.map((date) => plain(theirs(date))));
    const clocks = {
      "24": intl({ hour: "2-digit", minute: "2-digit", hourCycle: "h23" }),
      "12": intl({ hour: "numeric", minute: "2-digit", hourCycle: "h12" }),
    };
    for (const clock of ["24", "12"] as const)
      for (const time of ["00:00", "00:30", "07:05", "11:59", "12:00", "12:01", "19:05", "23:59"])
        expect(plain(timeWords(time, { ...f, clock }))).toBe(plain(clocks[clock]("2026-11-03", time)));
  });

  test("reads as people there write it", () => {
    const of = (language: DateLanguage, clock: "12" | "24") =>
      dayAndTime("2026-11-03", "19:05", inLanguage(language, { clock })).replaceAll("\u00a0", " ");
    expect(of("en-GB", "24")).toBe("Tuesday 3 November, 19:05");
    expect(of("en-US", "12")).toBe("Tuesday, November 3, 7:05 PM");
    expect(of("de", "24")).toBe("Dienstag, 3. November, 19:05");
    expect(of("fr", "24")).toBe("mardi 3 novembre, 19:05");
    expect(of("pl", "24")).toBe("wtorek, 3 listopada, 19:05");
    expect(monthTitle("2026-11", inLanguage("pl"))).toBe("listopad 2026");
    expect(of("ja", "24")).toBe("11月3日火曜日, 19:05");
  });

  test("is offered in itself, with a day of its own, each once", () => {
    expect([languageName("de"), languageName("ja"), languageName("fr-CA")]).toEqual([
      "Deutsch",
      "日本語",
      "Français (Canada)",
    ]);
    const options = languageOptions();
    expect(new Set(options.map(({ label }) => label)).size).toBe(DATE_LANGUAGES.length);
    expect(options[0]?.label).toBe("English (United Kingdom): Tuesday 3 November");
  });

  test("the standard is the British one, and every one passes as what a device may be sent", () => {
    expect(STANDARD_FORMATS.words).toEqual(wordsOfLanguage("en-GB"));
    for (const language of DATE_LANGUAGES) expect(formatsSchema.safeParse(inLanguage(language)).success).toBe(true);
    expect(formatsSchema.safeParse({ ...STANDARD_FORMATS, zone: "Nowhere/Town" }).success).toBe(false);
  });
});

describe("a moment", () => {
  const lisbon: Formats = { ...STANDARD_FORMATS, zone: "Europe/Lisbon" };
  test("is told by the wall clock of the zone, also where the clock is put forward and back", () => {
    // tzdata: Portugal's summer time of 2026 begins on 29 March and ends on 25 October, at 01:00 UTC.
    const at = (iso: string) => timeOfMoment(Date.parse(iso), lisbon);
    expect([at("2026-03-29T00:59:00Z"), at("2026-03-29T01:00:00Z")]).toEqual(["00:59", "02:00"]);
    expect([at("2026-10-25T00:30:00Z"), at("2026-10-25T01:30:00Z")]).toEqual(["01:30", "01:30"]);
    expect(momentWords(Date.parse("2026-10-24T23:30:00Z"), lisbon)).toBe("25 October, 00:30");
    expect(timeWithSeconds(Date.parse("2026-10-24T23:30:09.9Z"), lisbon)).toBe("00:30:09");
  });

  test("at midnight and noon of a 12-hour clock says which, and short where there is little room", () => {
    const us = inLanguage("en-US", { clock: "12" });
    expect(["00:00", "12:00", "12:30", "00:05"].map((time) => plain(timeWords(time, us)))).toEqual([
      ...["12:00 AM", "12:00 PM", "12:30 PM", "12:05 AM"],
    ]);
    expect([plain(hourWords("00:00", us)), plain(hourWords("18:00", us)), plain(hourWords("18:30", us))]).toEqual([
      ...["12 AM", "6 PM", "6:30 PM"],
    ]);
    expect(timeWords("24 hours", us)).toBe("24 hours");
  });

  test("near today is said so", () => {
    const say = (date: string) => relativeDay(date, "2026-11-30", STANDARD_FORMATS);
    expect(["2026-11-30", "2026-12-01", "2026-12-02", "2026-12-06", "2026-12-07", "2026-11-29"].map(say)).toEqual([
      ...["today", "tomorrow", "Wednesday", "Sunday", "7 December", "29 November"],
    ]);
  });
});

test("a week begins where its reader's does", () => {
  // 1 November 2026 is a Sunday.
  expect(weekBegins("2026-11-01", { weekStart: 1 })).toBe("2026-10-26");
  expect(weekBegins("2026-11-01", { weekStart: 7 })).toBe("2026-11-01");
  expect(weekBegins("2026-11-07", { weekStart: 7 })).toBe("2026-11-01");
  expect(weekdaysInOrder({ weekStart: 7 })).toEqual([7, 1, 2, 3, 4, 5, 6]);
});

test("a sentence of a month is read in its reader's days and times; lengths of time stay", () => {
  const us = inLanguage("en-US", { clock: "12" });
  const slot = { slot: { date: "2026-11-03", start: "18:00" } } as Parameters<typeof startWords>[0];
  const sentence = `${startWords(slot)} is like Mon 2 Nov 07:30; the plan is 12:30 min long, 2:30 over.`;
  expect(timesIn(sentence, us).replaceAll("\u00a0", " ")).toBe(
    "Tue, Nov 3 6:00 PM is like Mon, Nov 2 7:30 AM; the plan is 12:30 min long, 2:30 over.",
  );
  expect(timesIn(sentence, STANDARD_FORMATS)).toBe(sentence);
});

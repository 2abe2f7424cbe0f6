/** Lengths of time as people write them. Seconds. */
import { describe, expect, test } from "vitest";
import { RowField } from "#lib/paste/field.ts";
import { readReps } from "#lib/paste/read-reps.ts";
import { type TimeOptions, takeTimesFrom } from "#lib/paste/read-time.ts";

const initials = new Set(["L", "M"]);
const times = (text: string, options: Partial<TimeOptions> = {}) =>
  takeTimesFrom(new RowField(text), { initials, ...options });

describe("a length of time", () => {
  test.each([
    ["60 s", 60],
    ["60s", 60],
    ["45 secs.", 45],
    ["90 seconds", 90],
    ['40"', 40],
    ["40″", 40],
    ["1:00", 60],
    ["0:45", 45],
    ["00:01:30", 90],
    ["1:30 min", 90],
    ["1 min", 60],
    ["1m", 60],
    ["1.5 min", 90],
    ["1,5 min", 90],
    ["½ min", 30],
    ["1½ minutes", 90],
    ["1 min 30 s", 90],
    ["1 min 30", 90],
    ["1m30s", 90],
    ["1 minute and 15 seconds", 75],
    ["2'", 120],
    ["1'30", 90],
    ["1'30\"", 90],
    ["sixty seconds", 60],
    ["forty-five seconds", 45],
    ["one minute", 60],
    ["a minute", 60],
    ["half a minute", 30],
    ["a minute and a half", 90],
    ["one and a half minutes", 90],
    ["two minutes", 120],
    ["60 S", 60],
  ])("%s", (text, seconds) => {
    expect(times(`Plank hold ${text}`).map((t) => t.seconds)).toEqual([seconds]);
  });

  test.each([
    ["a bare number", "Plank hold 60"],
    ["part of a word", "60sx 1minor"],
    ["a ratio", "1:1"],
    ["a small capital that is a spring", "1 M"],
    ["a date", "2026-11-25"],
    ["a percentage", "60 %"],
  ])("%s is none", (_say, text) => {
    expect(times(text)).toEqual([]);
  });

  test("a bare number counts only where the caller says what it means", () => {
    expect(times("90", { perNumber: 1 })).toMatchObject([{ seconds: 90, how: "bare" }]);
    expect(times("1.5", { perNumber: 60, bare: "said" })).toMatchObject([{ seconds: 90, how: "said" }]);
  });

  test.each([
    ["45-60 s", [45, 60]],
    ["45 s – 60 s", [45, 60]],
    ["60 to 45 seconds", [45, 60]],
    ["0:45-1:00", [45, 60]],
    ["1-2 min", [60, 120]],
    ["30 or 45 s", [30, 45]],
  ])("%s is a range", (text, range) => {
    expect(times(text)).toMatchObject([{ range }]);
  });

  test.each([
    ["2x45 s", 45, 2],
    ["2 x 0:45", 45, 2],
    ["3 × 30s", 30, 3],
    ["45 s x 2", 45, 2],
    ["30/30 s", 30, 2],
    ["30 s / 30 s", 30, 2],
  ])("%s is several", (text, seconds, n) => {
    expect(times(text)).toMatchObject([{ seconds, times: n }]);
  });

  test("reports the characters it was read from", () => {
    const field = new RowField("Plank hold 2x45 s now");
    takeTimesFrom(field, { initials });
    expect(field.taken.map(({ from, to }) => field.text.slice(from, to))).toEqual(["2x45 s"]);
  });
});

describe("repetitions", () => {
  test.each([
    ["10 reps", 10],
    ["12 repetitions", 12],
    ["x10", 10],
    ["10x", 10],
    ["3 x 10", 30],
    ["2 sets of 12", 24],
    ["8 times", 8],
  ])("%s", (text, reps) => {
    expect(readReps(new RowField(`Kneeling row ${text}`))).toBe(reps);
  });
  test("a time is not a repetition", () => {
    expect(readReps(new RowField("60 s 2 light"))).toBeUndefined();
  });
});

test.each([
  ["-30 s", true],
  ["Plank hold −30 s", true],
  ["Plank hold - 30 s", false],
  ["Plank-30 s", false],
  ["45-60 s", false],
])("a dash right before a length may have been a minus: %s", (text, dashed) => {
  const [time] = takeTimesFrom(new RowField(text), { initials: new Set() });
  expect(time?.dashed === true).toBe(dashed);
});

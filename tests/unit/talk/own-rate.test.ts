/** The rate is the format's own: talk timed with it takes the seconds that were measured. */
import { describe, expect, it } from "vitest";
import { examplePlan } from "#lib/rules/define/example-plan.ts";
import { differMuch, ownRate, PASSAGE_SYLLABLES, PASSAGE_WORDS, rateReading } from "#lib/talk/own-rate.ts";
import { PASSAGE } from "#lib/talk/passage.ts";
import { spokenSeconds } from "#lib/talk/talk.ts";

describe("the read-aloud check", () => {
  it("has a passage of 120 to 160 words in lines like those of a script", () => {
    expect(PASSAGE_WORDS).toBeGreaterThanOrEqual(120);
    expect(PASSAGE_WORDS).toBeLessThanOrEqual(160);
  });

  it("recovers any rate and pause from the seconds they take", () => {
    for (const [syllablesPerSecond, pauseSeconds] of [
      [4.5, 0.4],
      [3.3, 1],
      [5.9, 0],
    ] as const) {
      const plan = examplePlan([], { speech: { syllablesPerSecond, pauseSeconds } });
      const all = PASSAGE.reduce((sum, line) => sum + spokenSeconds(plan, line), 0);
      // The second tap comes before the last pause.
      expect(ownRate([{ seconds: all - pauseSeconds }], pauseSeconds)).toBeCloseTo(syllablesPerSecond, 2);
    }
  });

  it("combines readings by their seconds", () => {
    const readings = [{ seconds: PASSAGE_SYLLABLES / 4 }, { seconds: PASSAGE_SYLLABLES / 6 }];
    // 2 n syllables over n/4 + n/6 seconds: 4.8
    expect(ownRate(readings, 0)).toBe(4.8);
    expect(ownRate([], 0)).toBeNull();
  });

  it("refuses a double tap, pauses longer than the reading, an interruption and a missing number, each with a sentence", () => {
    for (const [seconds, pause, words] of [
      [0.3, 0.4, "too short"],
      [4, 0.4, "too short"],
      [-1, 0.4, "too short"],
      [Number.NaN, 0.4, "too short"],
      [600, 0.4, "too long"],
    ] as const) {
      const reading = rateReading(seconds, pause);
      expect(reading.ok).toBe(false);
      if (!reading.ok) expect(reading.why).toContain(words);
    }
    expect(rateReading(50, 0.4).ok).toBe(true);
  });

  it("asks for another reading when two disagree", () => {
    expect(differMuch([{ rate: 4 }, { rate: 4.5 }])).toBe(false);
    expect(differMuch([{ rate: 4 }, { rate: 4.7 }])).toBe(true);
    expect(differMuch([{ rate: 4 }])).toBe(false);
  });
});

/** The counter against the CMU Pronouncing Dictionary (source in the fixture), and talk time against plain division. */
import { describe, expect, it } from "vitest";
import { examplePlan, move } from "#lib/rules/examples/build.ts";
import { numberWords, sayNumbers } from "#lib/talk/number-words.ts";
import { syllablesOfText, syllablesOfWord } from "#lib/talk/syllables.ts";
import { classTalk, itemTalk, spokenSeconds, talkByItem } from "#lib/talk/talk.ts";
import dictionary from "#tests/fixtures/cmudict-syllables.json" with { type: "json" };

describe("syllables", () => {
  it("agree with the dictionary on its sample of the trade's words", () => {
    const counted = Object.fromEntries(Object.keys(dictionary.syllables).map((word) => [word, syllablesOfWord(word)]));
    expect(counted).toEqual(dictionary.syllables);
  });

  it("are counted for words the dictionary does not have", () => {
    expect(["glutes", "obliques"].map(syllablesOfWord)).toEqual([1, 2]);
  });

  it("are none without letters, at least one with any, accents or not", () => {
    expect(["", "—", "...", "hm", "élan"].map(syllablesOfWord)).toEqual([0, 0, 0, 1, 2]);
  });

  it("of numbers are those of their words", () => {
    expect([0, 7, 13, 45, 100, 131, 1500, 20_000].map(numberWords)).toEqual([
      "zero",
      "seven",
      "thirteen",
      "forty five",
      "one hundred",
      "one hundred thirty one",
      "one thousand five hundred",
      "twenty thousand",
    ]);
    expect(sayNumbers("2:30").trim()).toMatch(/^two\s+thirty$/);
    // three, two, one: 1 + 1 + 1
    expect(syllablesOfText("3, 2, 1")).toBe(3);
  });
});

describe("talk", () => {
  const line = "Hold the plank."; // 3 syllables
  it("takes syllables over the rate and a pause", () => {
    // the house rate: 3 / 4.5 + 0.4
    expect(spokenSeconds(examplePlan([]), line)).toBeCloseTo(3 / 4.5 + 0.4, 10);
    // the plan's own: 3 / 3 + 1 = 2
    expect(spokenSeconds(examplePlan([], { speech: { syllablesPerSecond: 3, pauseSeconds: 1 } }), line)).toBe(2);
    expect(spokenSeconds(examplePlan([]), " ... ")).toBe(0);
  });

  it("counts live fields with the words they say, and not what is for the crew", () => {
    const item = move("a", {
      seconds: 45,
      script: [
        { kind: "form", text: "{seconds-left} to go" }, // forty five to go: 2 + 1 + 1 + 1 = 5
        { kind: "setup", text: "{springs}" }, // one light: 2
        { kind: "crew", text: "camera to the left" },
      ],
    });
    const plan = examplePlan([item], { speech: { syllablesPerSecond: 1, pauseSeconds: 0 } });
    expect(itemTalk(plan, item)).toEqual({ seconds: 7, syllables: 7, roomSeconds: 45 });
    expect(talkByItem(plan).get("a")?.seconds).toBe(7);
    // 7 s of talk in 45 s between opening and closing
    expect(classTalk(plan)).toEqual({ seconds: 7, roomSeconds: 45, share: 7 / 45 });
  });
});

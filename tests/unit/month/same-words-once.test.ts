import { expect, test } from "vitest";
import { sameWordsOnce } from "#app/_month/same-words-once.ts";

const on = (date: string, words: string) => ({ date, line: { words, level: "look" as const } });

test("each sentence stands where it comes first, with its days", () => {
  const lines = [on("2026-12-01", "not signed"), on("2026-12-01", "no plan"), on("2026-12-04", "not signed")];
  expect(sameWordsOnce(lines)).toEqual([
    { words: "not signed", dates: ["2026-12-01", "2026-12-04"] },
    { words: "no plan", dates: ["2026-12-01"] },
  ]);
});

test("a day that has it twice is named once; nothing is nothing", () => {
  expect(sameWordsOnce([on("2026-12-08", "no plan"), on("2026-12-08", "no plan")])).toEqual([
    { words: "no plan", dates: ["2026-12-08"] },
  ]);
  expect(sameWordsOnce([])).toEqual([]);
});

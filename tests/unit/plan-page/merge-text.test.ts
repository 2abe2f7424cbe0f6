import { describe, expect, test } from "vitest";
import { mergeText, movedCaret } from "#app/_plan/fields/merge-text.ts";

describe("mergeText", () => {
  test.each([
    ["nobody else wrote", "Upper body", "Upper body and trunk", "Upper body", "Upper body and trunk"],
    ["they wrote before", "trunk", "trunk day", "The trunk", "The trunk day"],
    ["they wrote after", "trunk", "The trunk", "trunk day", "The trunk day"],
    ["both replaced the same word", "arm", "leg", "back", "backleg"],
    ["only they wrote", "trunk", "trunk", "trunk day", "trunk day"],
    ["I took away, they added elsewhere", "one two three", "one three", "one two three four", "one three four"],
  ])("%s", (_say, base, mine, theirs, merged) => {
    expect(mergeText(base, mine, theirs)).toBe(merged);
  });
});

describe("movedCaret", () => {
  test("a change before the caret carries it along, one after it does not", () => {
    expect(movedCaret("trunk", "The trunk", 5)).toBe(9);
    expect(movedCaret("trunk", "trunk day", 5)).toBe(5);
    expect(movedCaret("The trunk", "trunk", 2)).toBe(0);
  });
});

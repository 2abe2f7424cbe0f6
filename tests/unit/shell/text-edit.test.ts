import { describe, expect, test } from "vitest";
import { editBetween, endOf, firstLetters, movedPlace, survives } from "#lib/client/text-edit.ts";

describe("the edit that was made", () => {
  // What a browser shows after the act, with its caret; what was selected before it.
  test.each([
    ["a letter beside its like", "ll", "lll", 1, null, { at: 0, removed: 0, inserted: "l" }],
    ["a letter after its like", "ll", "lll", 2, null, { at: 1, removed: 0, inserted: "l" }],
    ["backspace among likes", "lll", "ll", 1, null, { at: 1, removed: 1, inserted: "" }],
    ["delete among likes", "lll", "ll", 2, null, { at: 2, removed: 1, inserted: "" }],
    ["a selection typed over", "one two", "one t", 5, { from: 4, to: 7 }, { at: 4, removed: 3, inserted: "t" }],
    ["a selection cut", "one two two", "one two", 4, { from: 4, to: 8 }, { at: 4, removed: 4, inserted: "" }],
    ["a word of the text dropped into it", "ab cd ", "ab ab cd ", 3, null, { at: 0, removed: 0, inserted: "ab " }],
    ["corrected behind the caret", "teh end", "the end", 7, null, { at: 1, removed: 2, inserted: "he" }],
    ["a caret that says nothing", "one two", "one", 0, null, { at: 3, removed: 4, inserted: "" }],
    ["one sign of two halves for another", "a😀b", "a😁b", 3, null, { at: 1, removed: 2, inserted: "😁" }],
  ])("%s", (_say, before, after, caret, selected, edit) => {
    expect(editBetween(before, after, caret, selected)).toEqual(edit);
  });

  test("is what turns the one text into the other, wherever the caret is said to be", () => {
    const texts = ["", "a", "aa", "aba", "abab", "😀😀", "😀a😁", "one two one"];
    for (const before of texts) {
      for (const after of texts) {
        for (let caret = 0; caret <= after.length; caret++) {
          const { at, removed, inserted } = editBetween(before, after, caret);
          expect(before.slice(0, at) + inserted + before.slice(at + removed)).toBe(after);
          expect(removed).toBeGreaterThanOrEqual(0);
        }
      }
    }
  });
});

describe("a place in a text that others change", () => {
  const change = [{ retain: 2 }, { insert: "xyz" }, { retain: 1 }, { delete: 2 }];
  test("keeps to its letter", () => {
    expect([0, 1, 2, 3, 4, 5, 6].map((place) => movedPlace(place, change, "left"))).toEqual([0, 1, 2, 6, 6, 6, 7]);
    expect(movedPlace(2, change, "right")).toBe(5);
  });
  test("its letter may be gone", () => {
    expect([1, 2, 3, 4, 5].map((place) => survives(place, change))).toEqual([true, true, false, false, true]);
  });
  test("the end of a change", () => {
    expect(endOf(change)).toBe(6);
    expect(endOf([{ retain: 4 }, { insert: "ab" }])).toBe(6);
  });
});

test("no half of a sign is left where a text is cut off", () => {
  expect([0, 1, 2, 3].map((most) => firstLetters("a😀b", most))).toEqual(["", "a", "a", "a😀"]);
});

/** What the page says after an undo: what changed, and what somebody else's later act kept as it is. */
import { describe, expect, test } from "vitest";
import type { ValueWords } from "#lib/client/doc-session/description.ts";
import { notUndoneWords, undoWords } from "#lib/client/doc-session/undo-words.ts";

const time: ValueWords = { name: "the time of Plank", says: "45 s" };
const out: ValueWords = {
  name: "Plank",
  says: "taken out",
  did: { past: "took Plank out", perfect: "taken it out" },
};

describe("an undo in words", () => {
  test("names the first value and counts the others", () => {
    expect(undoWords("Undone", [])).toBe("Undone.");
    expect(undoWords("Redone", [time])).toBe("Redone: the time of Plank is 45 s.");
    expect(undoWords("Undone", [time, time, time])).toBe("Undone: the time of Plank is 45 s, and 2 more values.");
  });

  test.each([
    ["changed", time, "Jonas", "Not undone: Jonas set the time of Plank to 45 s in the meantime."],
    [
      "changed",
      time,
      "You, in another window,",
      "Not undone: You, in another window, set the time of Plank to 45 s in the meantime.",
    ],
    ["gone", out, undefined, "Not undone: somebody took Plank out in the meantime."],
    ["already", time, "Jonas", "Nothing to undo: the time of Plank is already 45 s."],
    ["changed", undefined, "Jonas", "Not undone: it has been changed in the meantime."],
  ] as const)("that is stopped by a value that is %s", (why, words, who, sentence) => {
    expect(notUndoneWords("Undone", [{ why, words, who }])).toBe(sentence);
  });

  test("says both what was undone and what was not, rather what is gone than what was changed", () => {
    const stood = [
      { why: "changed", words: time, who: "Jonas" },
      { why: "gone", words: out, who: "Ines" },
    ] as const;
    expect(undoWords("Undone", [time], stood)).toBe(
      "Undone: the time of Plank is 45 s. Not undone: Ines took Plank out in the meantime. 1 more value was not undone either.",
    );
  });
});

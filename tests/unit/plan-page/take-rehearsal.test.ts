/** What a rehearsal would change in words, and when nothing of it may be taken. */
import { expect, test } from "vitest";
import { takenWords, whyNotTaken } from "#app/_rehearsal/rehearsals-words.ts";

test("only a plan that one may write and nobody is reading takes it", () => {
  expect(whyNotTaken("in-writing", true)).toBeNull();
  expect(whyNotTaken("handed-back", true)).toBeNull();
  expect(whyNotTaken("signed-off", true)).toBeNull();
  expect(whyNotTaken("handed-in", true)).toMatch(/offered for reading and being read/);
  for (const state of ["in-writing", "handed-in", "signed-off"] as const) {
    expect(whyNotTaken(state, false)).toMatch(/You cannot edit this plan/);
  }
});

test("what is taken, in words", () => {
  expect(takenWords(1, false)).toBe("1 change time");
  expect(takenWords(3, true)).toBe("3 change times and your speaking rate");
  expect(takenWords(0, true)).toBe("your speaking rate");
  expect(takenWords(0, false)).toBe("nothing");
});

/** Finding the move that a name means. */
import { describe, expect, test } from "vitest";
import { foldText } from "#lib/library/fold.ts";
import { nameIndexOf } from "#lib/library/name-index.ts";
import { editDistance } from "#lib/library/similar.ts";
import { cleanWords } from "#lib/paste/clean.ts";
import { matchMove } from "#lib/paste/match-move.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";

const library = nameIndexOf(STARTER_MOVES);
const found = (name: string) => {
  const { how, move } = matchMove(name, library);
  return [how, move];
};

describe("a name of the library", () => {
  test.each([
    ["Plank to pike", "same", "plank-pike"],
    ["PLANK TO PIKE", "same", "plank-pike"],
    ["plank-to-pike", "same", "plank-pike"],
    ["Kneeling lat pulldown", "same", "lat-pull-kneeling"],
    ["slow pushup", "same", "push-up-slow"],
    ["Slow Push Ups", "same", "push-up-slow"],
    ["Lunge back foot sliding", "same", "lunge-back-slide"],
    ["Row, kneeling", "order", "row-kneeling"],
    ["Kneeling rows", "same", "row-kneeling"],
    ["plank pike", "order", "plank-pike"],
    ["Side plank forearm", "order", "side-plank-forearm"],
    ["Kneling chest press", "spelling", "chest-press-kneeling"],
    ["Plank to pkie", "spelling", "plank-pike"],
    ["Calf press", "part", "calf-press-supine"],
    ["Single-leg press", "part", "leg-press-single"],
  ])("%s: %s", (name, how, move) => {
    expect(found(name)).toEqual([how, move]);
  });

  test("British and American spelling count as the same", () => {
    const moves = { a: { ...STARTER_MOVES["plank-hold"], name: "Centre stabiliser, travelling" } };
    const american = nameIndexOf(moves as typeof STARTER_MOVES);
    expect(matchMove("Center stabilizer, traveling", american)).toMatchObject({ how: "same", move: "a" });
  });
});

describe("a name that is not sure is offered, never taken", () => {
  test.each([
    ["Leg press", ["leg-press-supine", "leg-press-single", "leg-press-back"]],
    ["Biceps curl", ["curl-kneeling", "curl-seated"]],
    ["Plank hold with knee tuck", ["plank-knee-tuck", "plank-hold"]],
    ["Squat", ["split-squat", "squat-handles"]],
  ])("%s", (name, near) => {
    const match = matchMove(name, library);
    expect(match).toMatchObject({ how: "near" });
    expect(match.move).toBeUndefined();
    expect(match.near.map((n) => n.move)).toEqual(expect.arrayContaining(near));
    expect(match.near.map((n) => n.score)).toEqual(match.near.map((n) => n.score).sort((a, b) => b - a));
  });

  test.each(["Jumping jacks", "Water", "", "???", "🙂"])("%s: nothing is similar", (name) => {
    expect(matchMove(name, library).how).toBe("none");
  });

  test("two moves of one name are both offered", () => {
    const two = nameIndexOf({ a: STARTER_MOVES["plank-hold"], b: STARTER_MOVES["plank-hold"] } as typeof STARTER_MOVES);
    expect(matchMove("Plank hold", two)).toMatchObject({ how: "near", near: [{ move: "a" }, { move: "b" }] });
  });
});

describe("editDistance", () => {
  // Textbook pairs: kitten/sitting and saturday/sunday (Levenshtein distance, Wikipedia); CA/ABC is 3 for optimal string
  // alignment, where the unrestricted distance of Damerau is 2 (Boytsov, "Indexing methods for approximate dictionary
  // searching", ACM JEA 16, 2011).
  test.each([
    ["kitten", "sitting", 3],
    ["saturday", "sunday", 3],
    ["ca", "abc", 3],
    ["pike", "pkie", 1],
    ["same", "same", 0],
    ["", "ab", 2],
  ])("%s, %s: %i", (a, b, distance) => {
    expect(editDistance(a, b, 9)).toBe(distance);
    expect(editDistance(b, a, 9)).toBe(distance);
  });
  test("above the limit it stops counting", () => {
    expect(editDistance("kitten", "sitting", 1)).toBe(2);
  });
});

test("words are folded: case, accents, invisible characters, plural", () => {
  expect(foldText("Crêpes\u00ADde LUNGES, press\u200Des & flies; calves")).toBe("crepesde lunge press fly calf");
});

test("words put into a plan have no direction marks and are cut between characters", () => {
  expect(cleanWords("  a\u202Eb\n c ", 99)).toBe("ab c");
  expect(cleanWords("ab🙂", 3)).toBe("ab");
});

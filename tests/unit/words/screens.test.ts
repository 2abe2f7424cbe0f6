/** The sentences that screens put together agree with none, one, two and several. */

import { describe, expect, test } from "vitest";
import { lossWords } from "#app/_taken-out/taken-out-words.ts";
import { concernWords } from "#lib/cautions/concern.ts";
import { againstLength, changeWords, freeWords } from "#lib/clock/length-words.ts";
import { asideWords, type ClassTalk } from "#lib/cues/class-talk.ts";
import { sumsWords } from "#lib/cues/read-through.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { type KeptSprings, keepSprings } from "#lib/load/keep-springs.ts";
import { keptDetail, keptSentence } from "#lib/load/load-words.ts";
import { countWords } from "#lib/margin/slips.ts";
import { agree, listWords, plural } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import { faultsOfPhrase, faultsOfSentence } from "#tests/support/plain-english.ts";

const NUMBERS = [1, 2, 3, 11];

test("a number and its noun agree as they are shown", () => {
  expect([0, 1, 2, 1.04, 0.96, 1.1, -1].map((n) => plural(n, "rep"))).toEqual([
    "0 reps",
    "1 rep",
    "2 reps",
    "1 rep",
    "1 rep",
    "1.1 reps",
    "-1 rep",
  ]);
  expect(NUMBERS.map((n) => agree(n, "is", "are"))).toEqual(["is", "are", "are", "are"]);
  expect([[], ["a"], ["a", "b"], ["a", "b", "c"]].map(listWords)).toEqual(["", "a", "a and b", "a, b and c"]);
});

test("talk, in sum", () => {
  for (const said of NUMBERS)
    for (const aside of [0, ...NUMBERS])
      for (const crew of [0, ...NUMBERS]) {
        const talk: ClassTalk = { seconds: 196, total: 1500, share: 0.13, said, aside, shortBy: 1 };
        expect(faultsOfSentence(asideWords(talk))).toEqual([]);
        // It begins with a time.
        expect(faultsOfSentence(sumsWords({ talk, crew }))).toEqual([]);
      }
});

test("findings and threads, counted", () => {
  const finding: Finding = { rule: "x", level: "must", items: [], message: "", values: {} };
  for (const n of NUMBERS) {
    const must = Array.from({ length: n }, () => finding);
    expect(countWords(must, [])).toBe(`${n} must fix`);
    expect(faultsOfPhrase(countWords(must, []))).toEqual([]);
  }
});

test("a class against its slot", () => {
  for (const [total, length] of [
    [1500, 1500],
    [1499, 1500],
    [1501, 1500],
    [1300, 1500],
  ] as const) {
    expect(faultsOfPhrase(freeWords(total, length))).toEqual([]);
    expect(faultsOfPhrase(againstLength(total, length))).toEqual([]);
  }
});

test("what another order changes is what a reader of both times subtracts", () => {
  expect(
    [
      [508, 481],
      [481, 508],
      [508, 508],
      [100.6, 99.4],
      [100.2, 99.9],
    ].map(([before = 0, after = 0]) => changeWords(before, after)),
  ).toEqual(["27 s less", "27 s more", "the same", "2 s less", "0.3 s less"]);
});

describe("springs that could stay on", () => {
  const a = exampleMove("a", { springs: { heavy: 1 } });
  const b = exampleMove("b", { springs: { light: 2 } });
  const offer = (plan: Plan): KeptSprings => {
    const kept = keepSprings(plan, b);
    if (!kept) throw new Error("the springs before give this load");
    return kept;
  };
  const limited = (springs: { min?: Record<string, number>; max?: Record<string, number> }): Plan =>
    examplePlan([a, b], { moves: { ...exampleMoves, squat: { ...exampleMoves.squat, springs } } });

  test("either they can, or it is said why not: never both", () => {
    const free = offer(examplePlan([a, b]));
    expect(keptSentence(exampleMoves.squat, free, STANDARD_FORMATS)).toBe(
      "No spring change needed: stand 5 cm nearer to the anchor.",
    );
    expect(faultsOfSentence(keptDetail(examplePlan([a, b]), free, "Squat", STANDARD_FORMATS))).toEqual([]);
    for (const [springs, says] of [
      [{ max: { heavy: 0 } }, "this move takes no heavy"],
      [{ min: { heavy: 2 } }, "this move takes at least two heavy"],
      [{ min: { light: 1 } }, "this move takes at least one light"],
    ] as const) {
      const plan = limited(springs);
      expect(keptSentence(exampleMoves.squat, offer(plan), STANDARD_FORMATS)).toBe(
        `The springs have to change: ${says}.`,
      );
      expect(keptDetail(plan, offer(plan), "Squat", STANDARD_FORMATS)).toBe("");
    }
  });
});

test("who is expected, whatever the studio limits the rule to", () => {
  const plank = { move: "plank" } as const;
  const silent = { ...plank, script: [] };
  const words = (...items: Parameters<typeof exampleMove>[1][]) =>
    concernWords(examplePlan(items.map((item, i) => exampleMove(`m${i}`, item))), "wrist-pain");
  expect(words({})).toBe("no move of this class concerns them");
  expect(words(plank)).toBe("1 move concerns them, each with a safety line and an easier line");
  expect(words(plank, {}, silent)).toBe("2 moves concern them, 1 without a safety line or an easier line");
  expect(words(plank, silent)).toBe("2 moves concern them, each with a safety line and an easier line");
});

test("an item that somebody took out", () => {
  for (const undone of [true, false])
    for (const words of ["", "Go"])
      for (const writes of [true, false])
        expect(faultsOfSentence(lossWords("Jonas Berg", "Lunge pulses", { undone, words, writes }))).toEqual([]);
  const read = lossWords("Jonas Berg", "Lunge pulses", { undone: false, words: "Go", writes: false });
  expect(read).not.toMatch(/yours|can be put back/);
});

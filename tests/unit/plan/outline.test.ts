/** What is read of a class before its page is there. */
import { expect, test } from "vitest";
import { outlineOf } from "#lib/plan/outline.ts";
import { bothSides, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

test("one paragraph for each heading, in plan order, each item with its side and seconds", () => {
  const [left, right] = bothSides("row", { seconds: 60 }, { seconds: 60 });
  const plan = examplePlan([
    exampleMove("a", { seconds: 45 }),
    { id: "h", kind: "heading", title: "Pulls" },
    ...(left && right ? [left, right] : []),
    { id: "p", kind: "pause", seconds: 40, text: "Drink." },
    { id: "e", kind: "heading", title: " " },
  ]);
  expect(outlineOf(plan)).toEqual([
    { words: "Squat 45\u00a0s" },
    { title: "Pulls", words: "Kneeling row, left 60\u00a0s · Kneeling row, right 60\u00a0s · Drink. 40\u00a0s" },
    { title: "Heading without words", words: "" },
  ]);
});

test("an unknown move and one not chosen yet are named as on the rail", () => {
  const plan = examplePlan([exampleMove("a", { move: "" }), exampleMove("b", { move: "gone" })]);
  const { gone: _, "": __, ...moves } = plan.moves;
  expect(outlineOf({ ...plan, moves })).toEqual([
    { words: "Move not chosen yet 45\u00a0s · Unknown move “gone” 45\u00a0s" },
  ]);
});

test("a very long plan ends at its sixtieth item", () => {
  const plan = examplePlan(Array.from({ length: 75 }, (_, i) => exampleMove(`m${i}`)));
  const [part] = outlineOf(plan);
  expect(part?.words.split(" · ")).toHaveLength(61);
  expect(part?.words).toMatch(/ · and 15 more$/);
});

/** What each changed plate says: its mark, its words as a text with what went and came, what was removed and where. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { changedPlates } from "#lib/plan-diff/changed-plates.ts";
import { planChanges } from "#lib/plan-diff/plan-changes.ts";
import { wordChanges } from "#lib/plan-diff/word-changes.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const squat = exampleMove("a", {
  move: "squat",
  script: [{ kind: "start", text: "Press the carriage away and stop." }],
});
const plank = exampleMove("b", { move: "plank" });
const row = exampleMove("c", { move: "row" });
const base = examplePlan([squat, plank, row]);
const having = (items: readonly PlanItem[]): Plan => ({ ...base, items: [...items] });
const short = (before: Plan, after: Plan) => changedPlates(before, after).map(({ id, what }) => `${id} ${what}`);

describe("changed plates", () => {
  test("nothing for the same plan", () => {
    expect(changedPlates(base, structuredClone(base))).toEqual([]);
  });

  test("the words that went and came stand in the line itself", () => {
    const said = [{ kind: "start" as const, text: "Press the carriage slowly away and hold." }];
    const [plate] = changedPlates(base, having([{ ...squat, script: said }, plank, row]));
    expect(plate).toMatchObject({ id: "a", what: "changed", sentences: [], setUps: null });
    expect(plate?.lines).toEqual([
      {
        kind: "start",
        begins: null,
        moved: null,
        parts: [
          { how: "same", words: "Press the carriage" },
          { how: "came", words: "slowly" },
          { how: "same", words: "away and" },
          { how: "went", words: "stop." },
          { how: "came", words: "hold." },
        ],
      },
    ]);
  });

  test("springs have their sentence and a figure before and after; seconds alone have no figure", () => {
    const [springs] = changedPlates(base, having([{ ...squat, springs: { light: 2 } }, plank, row]));
    expect(springs?.setUps).toMatchObject({ was: { item: { id: "a" } }, is: { item: { springs: { light: 2 } } } });
    expect(springs?.sentences.join()).toMatch(/springs: .* became two light/);
    const [seconds] = changedPlates(base, having([{ ...squat, seconds: squat.seconds + 5 }, plank, row]));
    expect(seconds).toMatchObject({ what: "changed", setUps: null, lines: [] });
  });

  test("new, moved and removed plates; what was removed stands before what followed it", () => {
    expect(short(base, having([row, squat, plank]))).toEqual(["c moved"]);
    expect(short(base, having([squat, exampleMove("n"), plank, row]))).toEqual(["n new"]);
    const removed = changedPlates(base, having([squat, row]));
    expect(removed).toMatchObject([{ id: "b", what: "gone", followedBy: "c" }]);
    expect(changedPlates(base, having([squat, plank]))).toMatchObject([{ id: "c", what: "gone", followedBy: null }]);
  });

  test("a plate that moved and changed says both", () => {
    const [plate] = changedPlates(base, having([{ ...row, seconds: row.seconds + 10 }, squat, plank]));
    expect(plate).toMatchObject({ id: "c", what: "changed" });
    expect(plate?.sentences).toHaveLength(2);
  });

  test("without the lines it says what the list of all changes says", () => {
    const after = having([
      { ...row, seconds: 90 },
      { ...squat, springs: {} },
    ]);
    const told = changedPlates(base, after).flatMap(({ sentences }) => sentences);
    expect(told.toSorted()).toEqual(planChanges(base, after).toSorted());
  });
});

test("what stayed and went is the line before, what stayed and came the line after", () => {
  const word = fc.constantFrom("press", "away", "and", "hold", "breathe", "out", "slowly");
  const line = fc.array(word, { maxLength: 20 }).map((words) => words.join(" "));
  fc.assert(
    fc.property(line, line, (before, after) => {
      const parts = wordChanges(before, after);
      const without = (how: string) =>
        parts
          .filter((part) => part.how !== how)
          .map(({ words }) => words)
          .join(" ");
      expect([without("came"), without("went")]).toEqual([before, after]);
    }),
  );
});

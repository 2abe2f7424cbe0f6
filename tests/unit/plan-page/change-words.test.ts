/** What the page says of how long a change takes: doing and telling apart, and what is left out says nothing. */
import { describe, expect, test } from "vitest";
import { changeHint } from "#app/_plan/panel/panel-words.ts";
import { doTellWords, estimateWords } from "#app/_session/item-words.ts";
import { type ClockRow, classClock } from "#lib/clock/clock.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const planOf = (second: Partial<MoveItem>, people?: number): Plan =>
  examplePlan([exampleMove("a"), exampleMove("b", second)], people === undefined ? {} : { people });

function rowOf(plan: Plan, at = 1): ClockRow {
  const row = classClock(plan).rows[at];
  if (!row) throw new Error("the plan has two items");
  return row;
}
const hint = (second: Partial<MoveItem>, people?: number) => {
  const plan = planOf(second, people);
  return changeHint(plan, rowOf(plan), false);
};

test("doing and telling stand apart, and what takes no time is left out", () => {
  expect(doTellWords({ estimate: 4, telling: 6 })).toBe("4 s to do, 6 s to tell");
  expect(doTellWords({ estimate: 4, telling: 0 })).toBe("4 s to do");
  expect(doTellWords({ estimate: 0, telling: 6 })).toBe("6 s to tell");
  expect(doTellWords({ estimate: 0, telling: 0 })).toBe("");
});

test("the estimate is told with the people it waits for, if there is more than one", () => {
  const actions = { springOff: 1, carriageHome: 1 };
  const made = "2 s to begin with, spring off 2 s, carriage home 2 s";
  expect(estimateWords(planOf({}), actions)).toBe(`${made}, rounded up`);
  expect(estimateWords(planOf({}, 1), actions)).toBe(`${made}, rounded up`);
  expect(estimateWords(planOf({}, 10), actions)).toBe(`${made}, × 1.23 for the slowest of 10, rounded up`);
});

describe("beside the field of a change", () => {
  test("stands what it takes and what it then lasts", () => {
    // one off: 6 s; "no springs, stand in the middle." is 8 syllables, 1.8 s
    expect(hint({ springs: {} })).toBe(
      "6 s to do, 2 s to tell. To do: 2 s to begin with, spring off 2 s, carriage home 2 s, rounded up. Leave it empty for 6 s, the longer of the two.",
    );
    expect(hint({})).toBe("2 s to tell. Leave it empty for 2 s.");
    expect(hint({ script: [] })).toBe("Nothing has to be changed or told. Leave it empty for 0 s.");
    expect(hint({ script: [], springs: {} }, 10)).toMatch(/^8 s to do\. .*slowest of 10.* Leave it empty for 8 s\.$/);
  });

  test("the first move is set up in the opening", () => {
    const plan = planOf({});
    expect(changeHint(plan, rowOf(plan, 0), true)).toContain("set up during the opening");
  });
});

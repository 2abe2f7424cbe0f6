/** A class compared with its plan, in words: figures worked by hand. */
import { expect, test } from "vitest";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { taughtTimes } from "#lib/floor/taught-class.ts";
import { itemName } from "#lib/plan/format.ts";
import { samplePlan } from "../card/sample-plan.ts";

const plan = samplePlan();
const named = (id: string) => {
  const item = plan.items.find((one) => one.id === id);
  if (!item) throw new Error("the item is there");
  return itemName(plan, item);
};
const row = (
  phase: ClassLog["rows"][number]["phase"],
  item: string | null,
  planned: number,
  took: number,
  held = 0,
) => ({
  phase,
  item,
  planned,
  given: planned,
  took,
  held,
});
const log = (rows: ClassLog["rows"]): ClassLog => ({
  format: "springline.class-log/1",
  sessionId: "0".repeat(32),
  kind: "class",
  edition: { planId: "rows", number: 1, hash: "0".repeat(64) },
  startedAt: "2026-05-04T18:00:00.000Z",
  elapsed: rows.reduce((sum, one) => sum + one.took + one.held, 0),
  whole: true,
  rows,
});

test("one row per item with its change; the rows add up to the difference of the class", () => {
  const told = taughtTimes(
    plan,
    log([row("opening", null, 30, 34), row("change", "rest", 8, 20), row("pause", "rest", 20, 20, 25)]),
  );
  expect(told.rows.map(({ name, change, own, held, over }) => [name, change.took, own.took, held, over])).toEqual([
    ["Opening", 0, 34, 0, 4],
    [named("rest"), 20, 20, 25, 37],
  ]);
  expect(told.over).toBe(41);
  expect(told.why).toEqual([
    `held for 25 s at ${named("rest")}`,
    `the change to ${named("rest")} took 12 s more than planned`,
    "Opening took 4 s more than planned",
  ]);
});

test("names what was left out, and ignores a difference of two seconds", () => {
  const told = taughtTimes(
    plan,
    log([row("opening", null, 30, 32), row("work", "pike-1", 60, 0), row("closing", null, 40, 40)]),
  );
  expect(told.rows.map(({ leftOut }) => leftOut)).toEqual([false, true, false]);
  expect(told.why).toEqual([`${named("pike-1")} was left out: 60 s less`]);
});

/** The seconds of "held for 25 s", "took 4 s more" and "60 s less". */
const sumOf = (why: readonly string[]): number =>
  why.reduce(
    (sum, words) =>
      sum + Number(/(?:held for|took|left out:) (\d+) s/.exec(words)?.[1]) * (/ less/.test(words) ? -1 : 1),
    0,
  );

test("what is said of the parts adds up to what is said of the whole, whatever each is rounded to", () => {
  const rows = [
    row("opening", null, 30, 34.4),
    row("change", "rest", 8, 20.4),
    row("pause", "rest", 20, 20.4, 25.4),
    row("work", "pike-1", 60, 53.6),
    row("closing", null, 40, 41.4),
  ];
  const taught = log(rows);
  const over = Math.round(taught.elapsed) - rows.reduce((sum, { planned }) => sum + planned, 0);
  const { why } = taughtTimes(plan, taught, over);
  expect([over, why.length]).toEqual([38, 4]);
  expect(sumOf(why)).toBe(over);
  expect(why.at(-1)).toBe("all else together took 7 s more than planned");
  expect(taughtTimes(plan, log([row("opening", null, 30, 32)]), 2).why).toEqual([]);
});

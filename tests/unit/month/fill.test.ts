/** Fills worked by hand: each turns on one sentence of the month file's contract. */
import { describe, expect, test } from "vitest";
import { readMonthFile } from "#lib/month/file/read-month.ts";
import { explainFill } from "#lib/month/fill/explain.ts";
import { filledMonth, fillMonth } from "#lib/month/fill/fill.ts";
import type { MonthFile, MonthSlot, PlanFacts } from "#lib/month/types.ts";
import { smallMonth, smallPlan, smallSlot } from "#tests/support/small-month.ts";

const empty = (id: string, more: Partial<MonthSlot> = {}): MonthSlot => smallSlot(id, { plan: null, ...more });
const alone = (month: Partial<MonthFile>) =>
  smallMonth({ standards: { "little-variety": { level: "off" } }, ...month });
const chosen = (month: MonthFile): (string | null)[] => fillMonth(month).slots.map(({ plan }) => plan);

const early = { regulars: ["early"] };
/** Three days at 10:00: 24 h apart less the 45 minutes of a class. */
const days = (more: Partial<MonthSlot> = {}): MonthSlot[] =>
  ["06", "07", "08"].map((day) => empty(`s${day}`, { date: `2026-04-${day}`, ...early, ...more }));
const plan = (group: "chest" | "glutes" | "calves", seconds: number, move: string): PlanFacts =>
  smallPlan({ title: `${group} ${seconds}`, groups: { [group]: seconds }, moves: { [move]: seconds } });

describe("which slots and plans", () => {
  test("only slots that are on, empty, not locked, late enough and asked for", () => {
    const slots = [
      empty("before", { date: "2026-04-02" }),
      empty("locked", { locked: true }),
      empty("out", { out: true }),
      smallSlot("has"),
      empty("not-asked"),
      empty("late", { start: "18:00" }),
      empty("early", { start: "07:00" }),
    ];
    const asked = slots.map(({ id }) => id).filter((id) => id !== "not-asked");
    const answer = fillMonth(alone({ slots, asOf: "2026-04-03", fill: { slots: asked } }));
    expect(answer.slots.map(({ slot }) => slot)).toEqual(["early", "late"]);
  });

  test("only plans that are offered, known, signed, for the room's machines, and not too long", () => {
    const plans = {
      fits: smallPlan({ seconds: 2700 }),
      "not-offered": smallPlan(),
      long: smallPlan({ seconds: 2700.5 }),
      tower: smallPlan({ equipment: "tower" }),
      unsigned: smallPlan({ signed: false }),
      unknown: { title: "Someone's own", known: false as const },
    };
    const fill = { plans: Object.keys(plans).filter((id) => id !== "not-offered") };
    const inRoom = fillMonth(alone({ plans, fill, slots: [empty("a")] }));
    expect(inRoom.slots[0]).toMatchObject({ plan: "fits", others: [{ plan: null }] });
    const anywhere = fillMonth(alone({ plans, fill, slots: [empty("a", { room: null })] }));
    expect(anywhere.slots[0]?.others.map((other) => other.plan)).toEqual(["tower", null]);
  });

  test("a month in which nothing fits stays as it is", () => {
    const month = alone({ plans: { a: smallPlan({ seconds: 9000 }) }, slots: days() });
    expect(fillMonth(month)).toMatchObject({ before: 30, after: 30, proven: true, gone: [], new: [] });
    expect(chosen(month)).toEqual([null, null, null]);
    expect(fillMonth(alone({ slots: [] }))).toMatchObject({ before: 0, after: 0, proven: true, slots: [] });
  });
});

describe("cost", () => {
  test("an empty slot costs one look, a wish that is not met its weight", () => {
    const plans = { a: smallPlan(), b: smallPlan() };
    const wishes = [
      { slot: "one", plan: "b" },
      { slot: "has", plan: "b", weight: 900 },
    ];
    const month = alone({ plans, slots: [empty("one"), smallSlot("has", { date: "2026-04-07" })], fill: { wishes } });
    // The wish for a slot that is not to be filled counts nothing.
    expect(fillMonth(month)).toMatchObject({ before: 15, after: 0, gone: ["no-plan:one"], new: [] });
    expect(fillMonth(month).slots[0]).toEqual({
      slot: "one",
      plan: "b",
      others: [
        { plan: "a", cost: 5 },
        { plan: null, cost: 15 },
      ],
    });
  });

  test("likeness is counted in whole ten-thousandths for every two neighbours of all regulars", () => {
    // M = 1/3; no work by group, so likeness is M: 3333 x 5 for each of two groups of regulars.
    const plans = { a: smallPlan({ moves: { x: 100, y: 100 } }), b: smallPlan({ moves: { y: 100, z: 100 } }) };
    const both = { regulars: ["early", "late"] };
    const slots = [smallSlot("one", both), empty("two", { date: "2026-04-09", ...both })];
    const regulars = { early: { name: "Early birds" }, late: { name: "Owls" } };
    const answer = fillMonth(alone({ plans, regulars, slots, fill: { plans: ["b"] } }));
    expect(answer.after).toBe((2 * 5 * 3333) / 10_000);
  });

  test("a level that is off, or weighs nothing, costs nothing", () => {
    const standards = { "no-plan": { level: "off" as const } };
    expect(fillMonth(alone({ standards, slots: [empty("a")] }))).toMatchObject({ before: 0, after: 0 });
    // Equals: the plan stands before "left empty" in the order of candidates.
    expect(chosen(alone({ standards, slots: [empty("a")] }))).toEqual(["a"]);
    expect(chosen(alone({ weights: { look: 0 }, slots: [empty("a")] }))).toEqual(["a"]);
  });
});

describe("choice", () => {
  const plans = { arms: plan("chest", 400, "x"), legs: plan("glutes", 400, "y"), toes: plan("calves", 400, "z") };

  test("the same muscles do not come again too early", () => {
    // Two of three days may not be alike; all three groups differ, in the order of the ids.
    expect(chosen(alone({ plans, slots: days() }))).toEqual(["arms", "legs", "toes"]);
    const answer = fillMonth(alone({ plans, slots: days() }));
    expect(answer).toMatchObject({ before: 30, after: 0, new: [] });
  });

  test("among equals the first in the order of candidates, slot by slot", () => {
    const same = { c: smallPlan(), a: smallPlan(), b: smallPlan() };
    expect(chosen(alone({ plans: same, slots: days({ regulars: [] }) }))).toEqual(["a", "a", "a"]);
    expect(chosen(alone({ plans: same, slots: days({ regulars: [] }), fill: { mostUses: 1 } }))).toEqual([
      "a",
      "b",
      "c",
    ]);
  });

  test("a plan is put in no more often than it may stand, with the slots that have it already", () => {
    const two = { a: smallPlan(), b: smallPlan() };
    const slots = [smallSlot("has", { date: "2026-04-05" }), ...days({ regulars: [] })];
    const answer = fillMonth(alone({ plans: two, slots, fill: { mostUses: 1 } }));
    expect(answer.slots.map((slot) => slot.plan)).toEqual(["b", null, null]);
    // Barred choices are not among the others.
    expect(answer.slots.map(({ others }) => others.map((other) => other.plan))).toEqual([[null], [], []]);
    const earlier = { from: "2026-04-06", to: "2026-04-30", known: "2026-04-01" };
    // What stands before the first day of the month does not count.
    expect(chosen(alone({ plans: two, dates: earlier, slots, fill: { mostUses: 1 } }))).toEqual(["a", "b", null]);
  });

  test("leaving a slot empty can be the cheapest", () => {
    const short = { weights: { look: 10, likeness: 0 }, limits: { recoveryHours: 90 } };
    const month = alone({ ...short, plans: { arms: plan("chest", 400, "x") }, slots: days(), standards: off });
    expect(chosen(month)).toEqual(["arms", "arms", "arms"]);
    const dear = { ...month, standards: { ...off, "short-recovery": { level: "must" as const } } };
    expect(chosen(dear)).toEqual(["arms", null, null]);
  });
  const off = { "too-alike": { level: "off" as const }, "little-variety": { level: "off" as const } };
});

test("a filled occurrence of the pattern stands in the slots, and everything else is as it was", () => {
  const line = { id: "mon", days: [1], start: "10:00", minutes: 45, room: "loft", coach: "marta" };
  const month = alone({ pattern: [line], slots: [empty("one", { date: "2026-04-01" })], fill: { plans: ["a"] } });
  const answer = fillMonth(month);
  const { fill, ...filled } = filledMonth(month, answer);
  expect(fill).toBe(answer);
  expect(filled.slots.map(({ id, plan }) => [id, plan])).toEqual([
    ["one", "a"],
    ...["0406", "0413", "0420", "0427"].map((day) => [`mon-2026${day}`, "a"]),
  ]);
  expect(filled.slots[1]).toEqual({
    ...{ id: "mon-20260406", date: "2026-04-06", plan: "a" },
    ...{ start: "10:00", minutes: 45, room: "loft", coach: "marta" },
  });
  expect(filled).toMatchObject({ pattern: month.pattern, plans: month.plans });
  expect(readMonthFile(JSON.stringify(filled)).ok).toBe(true);
});

test("a fill is explained slot by slot: what the next best costs more and brings", () => {
  const plans = { arms: plan("chest", 400, "x"), legs: plan("glutes", 400, "y"), toes: plan("calves", 400, "z") };
  const month = alone({ plans, slots: days() });
  const [first] = explainFill(month, fillMonth(month));
  expect(first).toMatchObject({ slot: "s06", plan: "arms" });
  expect(first?.others.map(({ plan: other, more }) => [other, more])).toEqual([
    ["toes", 10],
    [null, 10],
    ["legs", 25],
  ]);
  const [toes, none, legs] = first?.others ?? [];
  expect(none?.brings.map(({ id }) => id)).toEqual(["no-plan:s06"]);
  // Calves on Monday and Wednesday: 47 h 15 min.
  expect(toes?.brings.map(({ id }) => id)).toEqual(["short-recovery:early:calves:2026-04-08"]);
  expect(legs?.brings.map(({ rule }) => rule).sort()).toEqual(["short-recovery", "too-alike"]);
  expect(first?.text).toMatch(
    /^Mon 6 Apr 10:00: chest 400\. Next best calves 400, 1 finding more: .*; left empty, 1 finding more; glutes 400, 2 findings more: /,
  );
});

test("a class that no plan fits says why", () => {
  const plans = {
    long: smallPlan({ seconds: 2700.5 }),
    tower: smallPlan({ equipment: "tower" }),
    unsigned: smallPlan({ signed: false }),
    draft: smallPlan({ signed: false }),
    unknown: { title: "Someone's own", known: false as const },
  };
  const text = (some: MonthFile["plans"]) => {
    const month = alone({ plans: some, slots: [empty("one")] });
    return explainFill(month, fillMonth(month))[0]?.text;
  };
  expect(text(plans)).toMatch(
    /: left empty\. No plan fits: 2 are not signed, 1 is for other machines, 1 is longer than 45 minutes\.$/,
  );
  expect(text({ unknown: plans.unknown })).toMatch(/: left empty\. There is no plan to choose from\.$/);
});

/** Groups of muscles planned and taught: worked by hand, and summed a second time, row by row, without the balance of a plan. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { groupsSentence, shareDone, workWords } from "#app/programme/[month]/looking-back/group-words.ts";
import type { ClassLogRow } from "#lib/floor/class-log-schema.ts";
import { type GroupWork, groupSums, groupSumsByRegulars, oneLogAClass } from "#lib/look-back/groups.ts";
import { plannedGroups, taughtGroups } from "#lib/look-back/taught.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { GROUPS, type Group, type Plan } from "#lib/plan/schema.ts";
import { samplePlan } from "../card/sample-plan.ts";

const plan: Plan = samplePlan();
const moves = plan.items.filter(isMoveItem);
const work = (item: string, took: number): ClassLogRow => ({
  ...{ phase: "work", item, planned: took, given: took, took, held: 0 },
});
const logged = (rows: readonly ClassLogRow[], regulars: readonly string[]): GroupWork => ({
  planned: plannedGroups(plan),
  taught: taughtGroups(plan, { rows: [...rows] }),
  regulars,
});

describe("by hand", () => {
  // The plank to pike trains abdominals (1) and shoulders (0.5) for 60 s, the row upper back (1) and biceps (0.5).
  const [pike] = moves;
  const rows = moves.filter((item) => item.move === "row");
  const rowSeconds = rows.reduce((sum, { seconds }) => sum + seconds, 0);

  test("two classes, one of which left the plank out and rowed for half of its time", () => {
    expect(pike).toMatchObject({ move: "pike", seconds: 60 });
    const pikes = moves.filter((item) => item.move === "pike").length * 60;
    const whole = logged(
      moves.map((item) => work(item.id, item.seconds)),
      ["early"],
    );
    const half = logged(
      rows.map((item) => work(item.id, item.seconds / 2)),
      ["early", "evening"],
    );
    expect(groupSums([whole, half])).toEqual(
      [
        { group: "abdominals", planned: 2 * pikes, taught: pikes },
        { group: "shoulders", planned: pikes, taught: pikes / 2 },
        { group: "upper-back", planned: 2 * rowSeconds, taught: 1.5 * rowSeconds },
        { group: "biceps", planned: rowSeconds, taught: 0.75 * rowSeconds },
      ].sort((a, b) => GROUPS.indexOf(a.group as Group) - GROUPS.indexOf(b.group as Group)),
    );
    const by = groupSumsByRegulars([whole, half]);
    expect([...by.keys()]).toEqual(["early", "evening"]);
    expect(by.get("early")).toEqual(groupSums([whole, half]));
    expect(by.get("evening")).toEqual(groupSums([half]));
  });

  test("classes of no regulars stand by themselves, and a name that is given twice counts once", () => {
    const none = logged([], []);
    const twice = logged([work(moves[0]?.id ?? "", 30)], ["early", "early"]);
    const by = groupSumsByRegulars([none, twice]);
    expect([...by.keys()]).toEqual(["", "early"]);
    expect(by.get("early")).toEqual(groupSums([twice]));
    expect(by.get("")?.every(({ taught }) => taught === 0)).toBe(true);
    expect(groupSums([])).toEqual([]);
  });

  test("a row that comes twice is worked twice; one of an item that the plan has not is none", () => {
    const again = logged([work("pike-1", 20), work("pike-1", 30), work("elsewhere", 99)], []);
    expect(groupSums([again]).find(({ group }) => group === "abdominals")?.taught).toBe(50);
  });
});

describe("of several logs of one class", () => {
  const log = (key: string, of: string | null, end: "whole" | "early" | "abandoned") => ({ key, of, end });
  const kept = (...logs: ReturnType<typeof log>[]) => oneLogAClass(logs, ({ of }) => of).map(({ key }) => key);

  test("the best counts, the first of equals; logs of no class all", () => {
    expect(kept(log("a", "x", "abandoned"), log("b", "x", "whole"), log("c", "y", "early"))).toEqual(["b", "c"]);
    expect(kept(log("a", "x", "early"), log("b", "x", "early"))).toEqual(["a"]);
    expect(kept(log("a", null, "whole"), log("b", null, "whole"))).toEqual(["a", "b"]);
  });
});

test("a second way gives the same: each row's seconds times each muscle's weight, straight into one table", () => {
  const ids = moves.map(({ id }) => id);
  const rowOf = fc.tuple(fc.constantFrom(...ids, "not-in-the-plan"), fc.integer({ min: 0, max: 400 }));
  const classOf = fc.record({
    rows: fc.uniqueArray(rowOf, { selector: ([id]) => id }),
    regulars: fc.uniqueArray(fc.constantFrom("early", "evening", "dock")),
  });
  fc.assert(
    fc.property(fc.array(classOf, { maxLength: 8 }), (classes) => {
      const table = new Map<string, number>();
      const add = (key: string, seconds: number) => table.set(key, (table.get(key) ?? 0) + seconds);
      const weigh = (whose: string, what: string, id: string, seconds: number) => {
        const item = moves.find((one) => one.id === id);
        for (const [group, weight] of Object.entries(plan.moves[item?.move ?? ""]?.muscles ?? {}))
          add(`${whose} ${what} ${group}`, seconds * (weight ?? 0));
      };
      for (const { rows, regulars } of classes) {
        for (const whose of ["all", ...(regulars.length > 0 ? regulars : [""])]) {
          for (const item of moves) weigh(whose, "planned", item.id, item.seconds);
          for (const [id, took] of rows) weigh(whose, "taught", id, took);
        }
      }
      const given = classes.map(({ rows, regulars }) =>
        logged(
          rows.map(([id, took]) => work(id, took)),
          regulars,
        ),
      );
      const sums = [["all", groupSums(given)] as const, ...groupSumsByRegulars(given)];
      const told = sums.flatMap(([whose, groups]) =>
        groups.flatMap(({ group, planned, taught }) => [
          [`${whose} planned ${group}`, planned] as const,
          [`${whose} taught ${group}`, taught] as const,
        ]),
      );
      for (const [key, seconds] of told) expect(seconds).toBeCloseTo(table.get(key) ?? 0, 6);
      const keys = new Set(told.map(([key]) => key));
      for (const [key, seconds] of table) if (seconds > 0) expect(keys).toContain(key);
    }),
  );
});

describe("in words", () => {
  test("what was done of the plan, and what fell furthest short", () => {
    expect(workWords({ planned: 2400, taught: 2040 })).toBe("34 of 40 min");
    expect(workWords({ planned: 90, taught: 45 })).toBe("0.8 of 1.5 min");
    expect([shareDone({ planned: 200, taught: 170 }), shareDone({ planned: 0, taught: 5 })]).toEqual([
      "85%",
      "not planned",
    ]);
    expect(
      groupsSentence([
        { group: "chest", planned: 6000, taught: 5500 },
        { group: "glutes", planned: 840, taught: 540 },
        { group: "biceps", planned: 60, taught: 10 },
      ]),
    ).toBe("Of 115 min planned 101 min were done, 88%. Furthest short: glutes, 9 of 14 min.");
    expect(groupsSentence([{ group: "chest", planned: 600, taught: 660 }])).toBe(
      "Of 10 min planned 11 min were done, 110%. No group fell short by a tenth.",
    );
  });
});

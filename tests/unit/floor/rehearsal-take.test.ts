/** A rehearsal next to a plan that may have changed since: what still matches, what is suggested, how fast somebody speaks. */
import { describe, expect, test } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { rehearsalTake, suggestedChoice, withTaken } from "#lib/floor/rehearsal-take.ts";
import type { Rehearsed } from "#lib/floor/rehearsed-schema.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { syllablesOfText } from "#lib/talk/syllables.ts";
import { samplePlan } from "../card/sample-plan.ts";

const plan = samplePlan();
/** The change to the left side, from bars to one handle: 17 s of actions; to the other hand: 5 s (see transitions.test.ts). */
const made = (left: number, right: number): Rehearsed => ({
  changes: [
    { item: "row-left", after: "pike-1", planned: 20, estimate: 17, took: left },
    { item: "row-right", after: "row-left", planned: 5, estimate: 5, took: right },
  ],
  lines: [],
});
const changed = (id: string, more: Partial<MoveItem>): Plan => ({
  ...plan,
  items: plan.items.map((item) => (item.id === id && item.kind === "move" ? { ...item, ...more } : item)),
});

describe("changes", () => {
  test("planned, current and own seconds: rounded up, and not suggested below the estimate", () => {
    const take = rehearsalTake(plan, made(23.1, 3.2));
    expect(take.changes).toEqual([
      { item: "row-left", planned: 20, took: 23.1, now: 20, estimate: 17, to: 24, noMatch: null, belowEstimate: false },
      { item: "row-right", planned: 5, took: 3.2, now: 5, estimate: 5, to: 4, noMatch: null, belowEstimate: true },
    ]);
    expect([...suggestedChoice(take).items]).toEqual(["row-left"]);
  });

  test("that are the plan's own already are nothing to take", () => {
    expect([...suggestedChoice(rehearsalTake(plan, made(19.2, 4.5))).items]).toEqual([]);
  });

  test("when taken, move the clock by the difference; only chosen ones are taken", () => {
    const take = rehearsalTake(plan, made(23.1, 3.2));
    const total = (p: Plan) => classClock(p).total;
    expect(total(withTaken(plan, take, suggestedChoice(take)))).toBe(total(plan) + 4);
    const both = { items: new Set(["row-left", "row-right", "nobody"]), rate: true };
    expect(total(withTaken(plan, take, both))).toBe(total(plan) + 4 - 1);
    expect(withTaken(plan, take, { items: new Set(), rate: false })).toEqual(plan);
  });

  test("match however many people the plan is for, and are compared with what those need", () => {
    // 16.5 x 1.2308 = 20.3 and 4.5 x 1.2308 = 5.5, rounded up
    const [left, right] = rehearsalTake({ ...plan, people: 10 }, made(23.1, 5.2)).changes;
    expect(left).toMatchObject({ estimate: 21, to: 24, noMatch: null, belowEstimate: false });
    expect(right).toMatchObject({ estimate: 6, to: 6, noMatch: null, belowEstimate: false });
  });

  test.each<[string, Plan, string]>([
    ["taken out", { ...plan, items: plan.items.filter(({ id }) => id !== "row-left") }, "item-gone"],
    ["after another move", { ...plan, items: [...plan.items].reverse() }, "other-move-before"],
    ["with other springs", changed("row-left", { springs: { light: 2, heavy: 1 } }), "other-set-up"],
  ])("%s since are said not to match, and never taken", (_, since, why) => {
    const take = rehearsalTake(since, made(30, 9));
    expect(take.changes[0]).toMatchObject({ item: "row-left", noMatch: why });
    expect(withTaken(since, take, { items: new Set(["row-left"]), rate: false })).toEqual(since);
  });
});

describe("the speaking rate", () => {
  const texts = [
    "Carriage home, one heavy, kneel to face the back.",
    "Pull with the left arm.",
    "Keep the ribs down and the neck long.",
    "Breathe out as you pull.",
    "Let the carriage come back slowly.",
    "Smaller pull, the same line.",
  ];
  const lines = (rate: number, more: Rehearsed["lines"] = []): Rehearsed => ({
    changes: [],
    lines: [
      ...texts.map((text) => ({
        item: "row-left",
        kind: "form" as const,
        text,
        planned: 3,
        took: syllablesOfText(text) / rate + 0.4,
      })),
      ...more,
    ],
  });

  test("is measured without the pause after each line", () => {
    for (const rate of [3.2, 4.5, 6]) {
      const take = rehearsalTake(plan, lines(rate));
      expect(take.rate).toMatchObject({ now: 4.5, to: rate, lines: 6 });
      expect(suggestedChoice(take).rate).toBe(rate !== 4.5);
      expect(withTaken(plan, take, { items: new Set(), rate: true }).speech).toEqual({ syllablesPerSecond: rate });
    }
    const own = { ...plan, speech: { syllablesPerSecond: 5, pauseSeconds: 0.4 } };
    expect(rehearsalTake(own, lines(3.2)).rate?.now).toBe(5);
  });

  test("leaves out lines whose tap came much too late or too soon", () => {
    const line = { item: "row-left", kind: "form", text: texts[0] ?? "", planned: 3 } as const;
    const slips = [45, 0.5, 0.1, 0].map((took) => ({ ...line, took }));
    const take = rehearsalTake(plan, lines(3.2, slips));
    expect(take).toMatchObject({ strangeLines: 4, rate: { to: 3.2, lines: 6 } });
  });

  test("is unknown after only a few words", () => {
    const { lines: all } = lines(3.2);
    expect(rehearsalTake(plan, { changes: [], lines: all.slice(0, 3) }).rate).toBeNull();
    expect(rehearsalTake(plan, { changes: [], lines: [] })).toMatchObject({ rate: null, strangeLines: 0 });
  });
});

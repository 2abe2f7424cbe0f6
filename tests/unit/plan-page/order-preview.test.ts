/** What Fewer set-ups shows: both orders, what is saved by kind, planned times that meant another change, new findings. */
import { describe, expect, test } from "vitest";
import { holdWords, kindRows, ordinal, savedWords } from "#app/_order/order-words.ts";
import {
  type FoundOrder,
  type OrderChoice,
  orderPreview,
  planInOrder,
  solveBlock,
  solvedFrom,
} from "#app/_order/preview.ts";
import { holdMarks } from "#app/_session/hold-sign.tsx";
import { classClock } from "#lib/clock/clock.ts";
import { clockTime } from "#lib/plan/format.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const heading = (id: string): PlanItem => ({ id, kind: "heading", title: id });
/**
 * Two heavy springs against one light one: putting them on and off takes its time. Nothing is told, so that every change
 * lasts as long as it takes to do.
 */
const heavy = (id: string, more: Partial<MoveItem> = {}) => light(id, { springs: { heavy: 2 }, ...more });
const light = (id: string, more: Partial<MoveItem> = {}) => exampleMove(id, { script: [], ...more });
const block = (...items: PlanItem[]): Plan => examplePlan([heading("h"), ...items, heading("k"), light("end")]);

function found(plan: Plan, choice: OrderChoice = { heading: "h", free: false }) {
  const { order, unheld } = solveBlock(plan, choice.heading);
  if (!order.ok) throw new Error(order.say);
  return { preview: orderPreview(plan, order, choice), unheld };
}

describe("the two orders", () => {
  const plan = block(light("a"), heavy("b"), light("c"), heavy("d"));
  const { preview } = found(plan);

  test("stand side by side, the moved ones marked with where they come from, and lead into what follows", () => {
    expect(preview.present.lines.map((line) => line.item.id)).toEqual(["a", "b", "c", "d"]);
    expect(preview.better.lines.map((line) => line.item.id)).toEqual([...preview.order.items]);
    expect(preview.moved.length).toBe(2);
    for (const line of preview.moved) {
      expect(preview.present.lines[line.other - 1]?.item.id).toBe(line.item.id);
      expect(preview.better.lines[line.place - 1]?.item.id).toBe(line.item.id);
    }
    expect(preview.better.next?.item.id).toBe("end");
  });

  test("add up: the changes of each order are the seconds it is said to take, and so is the clock's change", () => {
    const sum = ({ lines, next }: typeof preview.present) =>
      lines.reduce((s, line) => s + line.change.estimate, next?.change.estimate ?? 0);
    expect(sum(preview.present)).toBe(preview.order.before);
    expect(sum(preview.better)).toBe(preview.order.after);
    expect(preview.clock.before - preview.clock.after).toBe(preview.order.before - preview.order.after);
    expect(preview.clock.after).toBe(classClock(planInOrder(plan, "h", preview.order.items)).total);
  });

  test("depend on no script and no seconds", () => {
    const other = {
      ...plan,
      items: plan.items.map((i) => (i.kind === "move" ? { ...i, seconds: 99, script: [] } : i)),
    };
    expect(solvedFrom(other, "h")).toBe(solvedFrom(plan, "h"));
    expect(solvedFrom(plan, "k")).not.toBe(solvedFrom(plan, "h"));
  });
});

describe("planned times", () => {
  const plan = block(
    light("a"),
    heavy("b", { transitionSeconds: 30 }),
    light("c", { transitionSeconds: 30 }),
    heavy("d", { transitionSeconds: 30 }),
  );

  test("go with their move, so the clock stays; those that now mean another change are named", () => {
    const { preview } = found(plan);
    expect(preview.clock.after).toBe(preview.clock.before);
    expect(preview.planned.length).toBeGreaterThan(0);
    for (const item of preview.planned) expect(item.transitionSeconds).toBe(30);
  });

  test("are dropped when that is chosen, and only those", () => {
    const kept = found(plan).preview;
    const freed = found(plan, { heading: "h", free: true }).preview;
    const estimates = kept.planned.map((item) => {
      const line = kept.better.lines.find((l) => l.item.id === item.id);
      return 30 - (line?.change.estimate ?? 0);
    });
    expect(kept.clock.after - freed.clock.after).toBe(estimates.reduce((a, b) => a + b, 0));
  });
});

describe("what holds the items", () => {
  const plan = block(light("a"), heavy("b", { keep: "t" }), light("c", { keep: "t" }), heavy("d", { after: ["c"] }));
  const { preview, unheld } = found(plan);

  // All are squats: what tells them apart is when they start.
  const at = (id: string) => clockTime(classClock(plan).rows.find((row) => row.item === id)?.start ?? 0);

  test("is kept, said, and its price is known", () => {
    expect(preview.order.items.indexOf("c")).toBe(preview.order.items.indexOf("b") + 1);
    expect(preview.order.heldBy.map((hold) => holdWords(plan, hold))).toEqual([
      `Squat at ${at("c")} stays right below Squat at ${at("b")}.`,
      `Squat at ${at("d")} comes after Squat at ${at("c")}.`,
    ]);
    expect(unheld).not.toBeNull();
    expect(unheld).toBeLessThan(preview.order.after);
  });

  test("stands on the rail as a sign with words, and says when it is not as it should be", () => {
    const marks = (p: Plan, id: string) => {
      const item = p.items.find((i) => i.id === id);
      return item?.kind === "move" ? holdMarks(p, item).map((m) => [m.words, m.amiss]) : [];
    };
    expect(marks(plan, "b")).toEqual([]);
    expect(marks(plan, "c")).toEqual([["stays next to the one above", false]]);
    expect(marks(plan, "d")).toEqual([[`after Squat at ${at("c")}`, false]]);
    const mixed = planInOrder(plan, "h", ["d", "c", "a", "b"]);
    expect(marks(mixed, "d")).toEqual([[expect.stringMatching(/^should come after Squat at \d+:\d\d$/), true]]);
    expect(marks(mixed, "c")).toEqual([["apart from the item it is tied to", true]]);
  });
});

test("kinds are counted together, and only those that there are", () => {
  const order = {
    actionsBefore: { springOn: 3, springOff: 2, quarterTurn: 4 },
    actionsAfter: { springOn: 1, strapOn: 1 },
  };
  expect(kindRows(order as FoundOrder)).toEqual([
    { words: "springs on or off", before: 5, after: 1 },
    { words: "quarter turns", before: 4, after: 0 },
    { words: "straps on or off", before: 0, after: 1 },
  ]);
});

test("findings that the new order brings are told from those that go", () => {
  const { preview } = found(block(light("a"), heavy("b"), light("c"), heavy("d")));
  const { before, after, added, gone } = preview.findings;
  expect(after).toBe(before + added.length - gone.length);
});

test("words of places and of what is saved", () => {
  expect([1, 2, 3, 4, 11, 12, 13, 21, 22].map(ordinal)).toEqual([
    "1st",
    "2nd",
    "3rd",
    "4th",
    "11th",
    "12th",
    "13th",
    "21st",
    "22nd",
  ]);
  expect(savedWords({ before: 50, after: 12 })).toBe("38 s less for changes");
  expect(savedWords({ before: 12, after: 16 })).toBe("4 s more for changes");
});

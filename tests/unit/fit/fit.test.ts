/** Fit to length: what is fixed, what moves, and what is said when it cannot be done. Answers worked out by hand. */
import { describe, expect, it } from "vitest";
import { classClock } from "#lib/clock/clock.ts";
import { fitToLength, fittedPlan } from "#lib/fit/fit.ts";
import type { MoveItem, Plan, PlanItem } from "#lib/plan/schema.ts";
import { bothSides, exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";

/** 60 s opening, 60 s closing, no change of set-up between the same moves. */
const plan = (lengthSeconds: number, items: readonly PlanItem[], more: Partial<Plan> = {}): Plan =>
  examplePlan(items, { lengthSeconds, ...more });
/** Nothing is told, so that no change takes time. */
const item = (id: string, seconds: number, more: Partial<MoveItem> = {}) =>
  exampleMove(id, { seconds, script: [], ...more });

function changes(p: Plan): Record<string, number> {
  const fit = fitToLength(p);
  if (!fit.possible) throw new Error(fit.say);
  return Object.fromEntries(fit.changed.map((c) => [c.item, c.to]));
}

describe("what may change", () => {
  it("gives longer items the larger part: (d - w)^2 / w lets d grow with w", () => {
    // 135 s and 180 s to be shared out, two to one.
    expect(changes(plan(255, [item("a", 60), item("b", 30)]))).toEqual({ a: 90, b: 45 });
    expect(changes(plan(300, [item("a", 80), item("b", 40)]))).toEqual({ a: 120, b: 60 });
  });

  it("leaves locked items, pauses, opening and planned transitions alone", () => {
    const items = [
      item("a", 47, { locked: true }),
      { id: "p", kind: "pause" as const, seconds: 8 },
      item("b", 60, { transitionSeconds: 15 }),
    ];
    // 300 - 120 - 47 - 8 - 15 = 110, more than 1.5 x 60 = 90; with a range of its own b takes it.
    expect(fitToLength(plan(300, items)).possible).toBe(false);
    const free = items.map((it) => (it.id === "b" ? item("b", 60, { transitionSeconds: 15, range: [60, 120] }) : it));
    expect(changes(plan(300, free))).toEqual({ b: 110 });
  });

  it("keeps to the item's range, else the move's, else half to one and a half times, bounds inwards to the grid", () => {
    const wide = plan(300, [item("a", 45, { range: [41, 64] }), item("b", 45, { range: [5, 300] })]);
    expect(changes(wide)).toEqual({ a: 60, b: 120 });
    const squat = { ...wide.moves.squat, seconds: [42, 58] } as Plan["moves"][string];
    expect(
      changes({ ...wide, lengthSeconds: 230, moves: { ...wide.moves, squat }, items: [item("a", 45), item("b", 45)] }),
    ).toEqual({
      a: 55,
      b: 55,
    });
  });

  it("gives what the grid leaves over to the closing", () => {
    const p = plan(214, [item("a", 45), item("b", 45)]);
    const fit = fitToLength(p);
    expect(fit).toMatchObject({ possible: true, total: 214, closingSeconds: 64, changed: [], cost: 0 });
    if (fit.possible) expect(classClock(fittedPlan(p, fit)).total).toBe(214);
  });

  it("counts in a grid and in wishes with decimals", () => {
    const p = plan(200, [item("a", 33.3), item("b", 33.3)], { gridSeconds: 2.5 });
    const fit = fitToLength(p);
    expect(fit).toMatchObject({ possible: true, closingSeconds: 60 });
    expect(changes(p)).toEqual({ a: 40, b: 40 });
    // The squat takes 5 s a repetition: 40 s are whole, 39.6 s (36 steps of 1.1 s) within half a second of it.
    expect(changes(plan(200, [item("a", 40.1), item("b", 39.8)], { gridSeconds: 0.1 * 11 }))).toEqual({
      a: 40,
      b: 40,
    });
  });

  it("has nothing to do in a class of fixed times that ends within a grid step", () => {
    expect(fitToLength(plan(124, []))).toMatchObject({ possible: true, closingSeconds: 64, changed: [] });
    expect(fitToLength(plan(167, [item("a", 45, { locked: true })]))).toMatchObject({
      possible: true,
      closingSeconds: 62,
    });
  });

  it("never leaves a time alone only because it is the wish: a wish beside the grid moves to it", () => {
    expect(changes(plan(167, [item("a", 47)]))).toEqual({ a: 45 });
  });
});

describe("whole repetitions", () => {
  const row = (id: string, seconds: number, more: Partial<MoveItem> = {}) =>
    item(id, seconds, { move: "slow", ...more });
  const slow = (rep: number) => ({
    ...exampleMoves,
    slow: { ...exampleMoves.squat, tempo: { outSeconds: rep, backSeconds: 0 } },
  });

  it("take a time off the grid: 45 s of 8 s each become 48, and the closing the rest", () => {
    const p = plan(120 + 50, [row("a", 45)], { moves: slow(8) });
    expect(fitToLength(p)).toMatchObject({ changed: [{ item: "a", to: 48 }], closingSeconds: 62, cost: 0.2 });
  });

  it("are left where a grid step less than half a second off them will do", () => {
    // 8 x 5.06 = 40.48
    expect(changes(plan(120 + 40, [row("a", 42)], { moves: slow(5.06) }))).toEqual({ a: 40 });
  });

  it("are cut off where keeping them costs more than 2", () => {
    // Room 96 to 100 for 10 s each wanting 45 and a hold of 45: 50 and 50 cost 0.56 each.
    const p = plan(120 + 100, [row("a", 45), item("b", 45, { move: "plank", transitionSeconds: 0 })], {
      moves: slow(10),
    });
    expect(changes(p)).toEqual({ a: 50, b: 50 });
    // At 60 s a repetition 45 would have to be 60: (15^2)/45 = 5 and the hold at 40; instead it stays cut off.
    expect(changes({ ...p, moves: slow(60), lengthSeconds: 120 + 90 })).toEqual({});
  });

  it("leave up to a grid step less one second, and of equally dear sums the larger is taken", () => {
    // Holds have the grid alone: 97 s leave 95, and 99 s too; 4 s are the most that go to the closing.
    const hold = (id: string) => item(id, 45, { move: "plank", transitionSeconds: 0 });
    expect(fitToLength(plan(120 + 99, [hold("a"), hold("b")]))).toMatchObject({ closingSeconds: 64 });
    // 44 and 46 cost the same from a wish of 45 s; the room of 46 is filled.
    const p = plan(120 + 46, [row("a", 45, { range: [44, 46] })], { moves: slow(2), gridSeconds: 100 });
    expect(changes(p)).toEqual({ a: 46 });
  });
});

describe("pairs", () => {
  it("gives both sides the same, at the least cost for the two", () => {
    const p = plan(215, bothSides("row", { seconds: 40 }, { seconds: 60 }));
    // 215 - 120 - the change of hands (base 2 + handle down 1 + handle up 1.5, rounded up: 5) = 90.
    expect(changes(p)).toEqual({ "row-left": 45, "row-right": 45 });
  });

  it("lets a locked side lead, also out of the other's bounds, and says so", () => {
    const p = plan(320, [
      ...bothSides("row", { seconds: 77, locked: true }, { seconds: 40, range: [30, 50] }),
      item("z", 60, { transitionSeconds: 0 }),
    ]);
    const fit = fitToLength({ ...p, lengthSeconds: 120 + 77 * 2 + 5 + 60 });
    expect(fit).toMatchObject({
      possible: true,
      changed: [{ item: "row-right", from: 40, to: 77 }],
      outside: ["row-right"],
    });
  });

  it("keeps both where both are locked", () => {
    const p = plan(250, bothSides("row", { seconds: 60, locked: true }, { seconds: 65, locked: true }));
    expect(fitToLength(p)).toMatchObject({ possible: true, changed: [], outside: [] });
  });

  it("fits a side without a partner for itself", () => {
    const lone = bothSides("row")
      .slice(0, 1)
      .map((it) => ({ ...it, seconds: 40 }));
    expect(changes(plan(175, lone))).toEqual({ "row-left": 55 });
  });
});

describe("ties: the earlier item keeps its wish", () => {
  it("by one step between equals", () => {
    expect(changes(plan(120 + 95, [item("a", 45), item("b", 45)]))).toEqual({ b: 50 });
    expect(changes(plan(120 + 85, [item("a", 45), item("b", 45)]))).toEqual({ b: 40 });
  });

  it("between a pair and two single items", () => {
    const sides = bothSides("row", { seconds: 45 }, { seconds: 45 });
    const singles = [item("a", 45, { transitionSeconds: 0 }), item("b", 45, { transitionSeconds: 0 })];
    const length = (items: readonly PlanItem[]) => Math.round(classClock(examplePlan(items)).total) + 10;
    const pairFirst = [...sides, ...singles];
    expect(changes(plan(length(pairFirst), pairFirst))).toEqual({ a: 50, b: 50 });
    const singlesFirst = [...singles, ...sides];
    expect(changes(plan(length(singlesFirst), singlesFirst))).toEqual({ "row-left": 50, "row-right": 50 });
  });
});

describe("many ties at once", () => {
  /** All left sides, then all right sides, of 5 or 10 s. */
  function sides(count: number): Plan {
    const one = (side: "left" | "right", seconds: number) => (_: unknown, i: number) =>
      item(`${side}${i}`, seconds, { move: "row", side, range: [5, 10], transitionSeconds: 0 });
    const list = [
      ...Array.from({ length: count }, one("left", 7.5)),
      ...Array.from({ length: count }, one("right", 8)),
    ];
    // Half of the pairs at 10 s, half at 5 s.
    const moves = { ...exampleMoves, row: { ...exampleMoves.row, tempo: { outSeconds: 3, backSeconds: 2 } } };
    return plan(120 + 2 * count * 7.5, list, { moves });
  }

  it("are settled by sides that come much later: the first right sides are nearer to their wish", () => {
    // A left side is as far from 5 s as from 10 s, so that all choices of which half gets 10 s are open until the right
    // sides are looked at.
    const fitted = changes(sides(40));
    const to = (side: string) => Array.from({ length: 40 }, (_, i) => fitted[`${side}${i}`]);
    expect(to("right")).toEqual([...Array(20).fill(10), ...Array(20).fill(5)]);
    expect(to("left")).toEqual(to("right"));
  });

  it("are settled within seconds in the largest class of the format", () => {
    const before = process.cpuUsage();
    expect(fitToLength(sides(1000)).possible).toBe(true);
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(10);
  });
});

describe("a grid that is a fine fraction of a second", () => {
  const fine = (count: number, room: number, range: [number, number]) =>
    plan(
      120 + room,
      Array.from({ length: count }, (_, i) => item(`i${i}`, 40, { range, transitionSeconds: 0 })),
      { gridSeconds: 1.000_001 },
    );

  it("is combined with whole repetitions to the millionth", () => {
    // Such a grid leaves over a millionth of a second, so that 125 s are 40, 40 and 45 s of whole repetitions.
    expect(changes(fine(3, 125, [38, 46]))).toEqual({ i2: 45 });
    expect(fitToLength(fine(3, 123, [38, 46])).possible).toBe(false);
  });

  it("is refused with what to do where the times are too many", () => {
    const before = process.cpuUsage();
    expect(fitToLength(fine(2000, 14_000, [1, 14_400]))).toMatchObject({
      possible: false,
      say: expect.stringContaining("use a grid of whole seconds"),
    });
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(20);
  });
});

it("ends where no times at all add up to the room, however many there are", () => {
  // 300 pairs give even seconds and 61 s are fixed: 14,400 less 181 is odd.
  const pairs = Array.from({ length: 600 }, (_, i) =>
    item(`i${i}`, 20, { move: "row", side: i % 2 ? "right" : "left", range: [1, 14_400], transitionSeconds: 0 }),
  );
  const odd = item("odd", 60, { move: "plank", range: [61, 61], transitionSeconds: 0 });
  const before = process.cpuUsage();
  expect(fitToLength(plan(14_400, [...pairs, odd], { gridSeconds: 1 })).possible).toBe(false);
  expect(fitToLength(plan(14_399, [...pairs, odd], { gridSeconds: 1 })).possible).toBe(true);
  expect(process.cpuUsage(before).user / 1e6).toBeLessThan(10);
});

describe("why it cannot be done", () => {
  it.each<[string, Plan, string[], string]>([
    [
      "too much",
      plan(130, [item("a", 60), item("b", 30, { locked: true })]),
      ["a"],
      "Even with everything at its shortest the class takes 3 min, 50 s more than its slot.",
    ],
    [
      "too little",
      plan(400, [item("a", 60), item("b", 60)]),
      ["a", "b"],
      "Even with everything at its longest the class takes 5 min, 100 s less than its slot.",
    ],
    [
      "nothing may change",
      plan(180, [item("a", 45, { locked: true })]),
      ["a"],
      "Nothing in the class may change: it takes 2 min 45 s, 15 s less than its slot.",
    ],
    [
      "what is fixed is too long already",
      plan(100, [{ id: "p", kind: "pause", seconds: 30 }]),
      [],
      "Nothing in the class may change: it takes 2 min 30 s, 50 s more than its slot.",
    ],
    [
      "no grid step within the bounds",
      plan(200, [item("a", 33, { range: [31, 34] }), item("b", 60)]),
      ["a"],
      "Squat has no whole step of 5 s and no whole repetition between its shortest and its longest time.",
    ],
    [
      "two sides with nothing in common",
      plan(240, bothSides("row", { range: [30, 40] }, { range: [50, 60] })),
      ["row-left", "row-right"],
      "Kneeling row, left and Kneeling row, right must get the same time, but their bounds share no whole step of 5 s and no whole repetition.",
    ],
    [
      "one step left over and only pairs to give it to",
      plan(120 + 5 + 95, bothSides("row", { range: [45, 50] }, { range: [45, 50] })),
      ["row-left", "row-right"],
      "Only both sides of a move together may change, and no step of both fills the class: free an item or change a fixed time by 5 s.",
    ],
  ])("%s", (_what, p, stoppedBy, say) => {
    expect(fitToLength(p)).toMatchObject({ possible: false, stoppedBy, say });
  });

  it("tells the shortest and the longest class", () => {
    const items = [item("a", 60), ...bothSides("row", { transitionSeconds: 10 }, { transitionSeconds: 10 })];
    // fixed 60 + 60 + 10 + 10; a 30 to 90; each side of 45 s from 25 to 65
    expect(fitToLength(plan(900, items))).toMatchObject({ shortest: 220, longest: 360 });
  });
});

it("costs a little more with more items, not its square", () => {
  const cost = (count: number) => {
    const items = Array.from({ length: count }, (_, i) =>
      item(`i${i}`, 7, { range: [1, 14400], transitionSeconds: 0 }),
    );
    // Of the processor, not of the wall: a machine that has other work to do changes nothing.
    const before = process.cpuUsage();
    expect(fitToLength(plan(14400, items, { gridSeconds: 1 })).possible).toBe(true);
    return process.cpuUsage(before).user;
  };
  cost(200); // warms the engine up
  const few = Math.min(cost(250), cost(250), cost(250));
  const many = Math.min(cost(2000), cost(2000));
  // Eight times the items: measured 8 to 12 times the cost; 64 would be its square.
  expect(many / few).toBeLessThan(32);
});

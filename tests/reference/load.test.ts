/**
 * Springs against published worked examples and against a small class worked out by hand from the definition of the
 * plan file format ("Load"). The books' N/m and m are converted to the plan's N/mm and mm.
 */
import { describe, expect, it } from "vitest";
import { combinedSpring, forceN, loadRows, travelMm, workJ } from "#lib/load/load.ts";
import type { Equipment, Spring } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { handsShare } from "#lib/statics/hands.ts";

const spring = (id: string, newtonsPerMetre: number, preloadN = 0): Spring => ({
  id,
  label: id,
  count: 9,
  stiffnessNPerMm: newtonsPerMetre / 1000,
  preloadN,
});
const machine = (...springs: Spring[]): Equipment => ({ name: "Bench", carriageTravelMm: 1000, springs });

describe("published springs", () => {
  it("10 N stretch a spring by 2 mm: 5000 N/m; 25 N stretch it by 5 mm", () => {
    // qammunity.org/306773
    const one = machine(spring("a", 5000));
    expect(forceN(one, { a: 1 }, { xMm: 2, offsetMm: 0 })).toBeCloseTo(10, 9);
    expect(forceN(one, { a: 1 }, { xMm: 5, offsetMm: 0 })).toBeCloseTo(25, 9);
  });

  it("300 N at 0.60 m: 500 N/m, and 90 J are stored", () => {
    // qammunity.org/1781132
    const one = machine(spring("a", 500));
    expect(forceN(one, { a: 1 }, { xMm: 600, offsetMm: 0 })).toBeCloseTo(300, 9);
    expect(workJ(one, { a: 1 }, { fromMm: 0, toMm: 600, offsetMm: 0 })).toBeCloseTo(90, 9);
  });

  it("200 N/m over 0.10 m store 1 J, over twice that four times as much", () => {
    // christianblevens.me
    const one = machine(spring("a", 200));
    expect(workJ(one, { a: 1 }, { fromMm: 0, toMm: 100, offsetMm: 0 })).toBeCloseTo(1, 9);
    expect(workJ(one, { a: 1 }, { fromMm: 0, toMm: 200, offsetMm: 0 })).toBeCloseTo(4, 9);
  });

  it("OpenStax College Physics 16.1 (from memory, arithmetic checked): 50.0 N/m over 0.150 m store 0.563 J", () => {
    const work = workJ(machine(spring("a", 50)), { a: 1 }, { fromMm: 0, toMm: 150, offsetMm: 0 });
    expect(Number(work.toPrecision(3))).toBe(0.563);
  });

  it("springs side by side add their stiffness: the rule of Wolfson, Essential University Physics, ch. 4", () => {
    // The rule is published (also Brown University demonstration 3A20.20); the numbers are worked out here.
    const two = machine(spring("a", 200), spring("b", 300));
    expect(combinedSpring(two, { a: 1, b: 1 }).stiffnessNPerMm).toBeCloseTo(0.5, 12);
    expect(forceN(two, { a: 1, b: 1 }, { xMm: 400, offsetMm: 0 })).toBeCloseTo(200, 9);
    expect(workJ(two, { a: 1, b: 1 }, { fromMm: 0, toMm: 400, offsetMm: 0 })).toBeCloseTo(40, 9);
  });

  it("a preload adds to the force and F0 x to the work (worked out here)", () => {
    const one = machine(spring("a", 150, 20));
    expect(forceN(one, { a: 1 }, { xMm: 600, offsetMm: 0 })).toBeCloseTo(110, 9);
    expect(workJ(one, { a: 1 }, { fromMm: 0, toMm: 600, offsetMm: 0 })).toBeCloseTo(39, 9);
  });
});

/*
 * The example room: light 10 N + 0.12 N/mm, heavy 20 N + 0.3 N/mm, carriage 1000 mm. Row travels 100 to 500 mm, squat
 * has no travel of its own: 0 to 500 mm.
 *
 * item  move   springs            offset  start  middle  end    work J                     match
 * a     squat  light 1                 0  10     40      70     40 x 0.5 = 20              nothing before
 * p     plank  (bodyweight)                                                                null
 * b     row    light 2, heavy 1      -50  40 + 0.54(50)=67  40 + 0.54(250)=175  283  175 x 0.4 = 70
 *              light 1 over this travel: 10 + 0.12(300 + p) = 175 -> p = 1075: out of reach, null
 * c     row    light 3                 0  30 + 0.36(100)=66  138  210  138 x 0.4 = 55.2
 *              b's springs: 40 + 0.54(300 + p) = 138 -> p = 98 / 0.54 - 300 = -118.518518519
 * d     row    light 3               200  138    210     282    84                         same springs: null
 * e     squat  light 1              -200  max(0, 10 - 24) = 0  10 + 0.12(50) = 16  46
 *              pulls from x = 200 - 83.333 = 116.667: 46 / 2 x 383.333 mm = 8.816667 J
 *              d's springs: 30 + 0.36(250 + p) = 16 -> p = -288.888888889
 */
describe("a class by hand", () => {
  const moves = {
    squat: exampleMoves.squat,
    row: { ...exampleMoves.row, travelMm: [100, 500] as [number, number] },
    plank: { ...exampleMoves.plank, resistance: "bodyweight" as const },
  };
  const plan = examplePlan(
    [
      exampleMove("a"),
      exampleMove("p", { move: "plank", springs: {} }),
      { id: "h", kind: "heading", title: "On" },
      exampleMove("b", { move: "row", side: "left", springs: { light: 2, heavy: 1 }, offsetMm: -50 }),
      { id: "rest", kind: "pause", seconds: 20 },
      exampleMove("c", { move: "row", side: "left", springs: { light: 3 } }),
      exampleMove("d", { move: "row", side: "left", springs: { light: 3, heavy: 0 }, offsetMm: 200 }),
      exampleMove("e", { offsetMm: -200 }),
    ],
    { moves },
  );
  const rows = new Map(loadRows(plan).map((row) => [row.item, row]));

  it("has one row per move item, in order", () => {
    expect([...rows.keys()]).toEqual(["a", "p", "b", "c", "d", "e"]);
  });
  it("gives force at both ends and the middle, and work", () => {
    expect(rows.get("a")).toMatchObject({ atStartN: 10, atMidN: 40, atEndN: 70, workPerRepJ: 20 });
    expect(rows.get("b")).toMatchObject({ atStartN: 67, atMidN: 175, atEndN: 283, workPerRepJ: 70 });
    expect(rows.get("c")).toMatchObject({ atStartN: 66, atMidN: 138, atEndN: 210, workPerRepJ: 55.2 });
    expect(rows.get("d")).toMatchObject({ atStartN: 138, atMidN: 210, atEndN: 282, workPerRepJ: 84 });
  });
  it("holds the force at 0 where the springs hang slack, and counts the work of the rest alone", () => {
    expect(rows.get("e")).toMatchObject({ atStartN: 0, atMidN: 16, atEndN: 46 });
    expect(rows.get("e")?.workPerRepJ).toBeCloseTo(8.816667, 6);
  });
  it("finds the offset that replaces a change of springs, if one is within reach", () => {
    expect([...rows.values()].map((r) => r.offsetToMatchPrevious)).toEqual([
      null,
      null,
      null,
      -118.518518519,
      null,
      -288.888888889,
    ]);
  });
  it("takes the first half of the carriage where a move has no travel", () => {
    expect(travelMm(plan, exampleMoves.squat)).toEqual([0, 500]);
  });
  it("gives no load for bodyweight work", () => {
    expect(rows.get("p")).toMatchObject({ atStartN: null, atMidN: null, atEndN: null, workPerRepJ: null });
  });

  it("gives the wrist load per kilogram where the pose is known: the share of the pose times 9.80665 m/s2", () => {
    const posed = { ...exampleMoves.plank, handsShare: { pose: "high-plank" as const } };
    const [row] = loadRows(examplePlan([exampleMove("p", { move: "plank" })], { moves: { plank: posed } }));
    expect(row?.handsN).toBeCloseTo(handsShare("high-plank").share * 9.80665, 8);
    expect(loadRows(plan).every((r) => !("handsN" in r))).toBe(true);
  });
});

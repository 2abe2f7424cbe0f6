/** The choices beside an item's own springs, the springs that could stay on, and the corners of the curve. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { axisTicks, curvePoints } from "#lib/load/curve.ts";
import { keepSprings } from "#lib/load/keep-springs.ts";
import { forceN, loadRows, workJ } from "#lib/load/load.ts";
import { neighbours } from "#lib/load/neighbours.ts";
import { moveItems } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { exampleEquipment, exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

/** Example room at mid-travel 250 mm: light 40 N each (four), heavy 95 N each (two). */
const beside = (springs: MoveItem["springs"], limits?: Plan["moves"][string]["springs"]) => {
  const item = exampleMove("a", { springs });
  const moves = { squat: limits ? { ...exampleMoves.squat, springs: limits } : exampleMoves.squat };
  return neighbours(examplePlan([item], { moves }), item);
};

describe("neighbours", () => {
  it("are the nearest loads one spring away: on, off or exchanged", () => {
    expect(beside({ light: 2 })).toEqual({
      lighter: { springs: { light: 1 }, atMidN: 40 },
      heavier: { springs: { light: 3 }, atMidN: 120 },
    });
    // 95 N: a light one more is 135, exchanged for a light one 40; nothing lies nearer
    expect(beside({ heavy: 1 })).toEqual({
      lighter: { springs: { heavy: 0, light: 1 }, atMidN: 40 },
      heavier: { springs: { heavy: 1, light: 1 }, atMidN: 135 },
    });
  });
  it("stay within what the room has", () => {
    expect(beside({ light: 4, heavy: 2 }).heavier).toBeNull();
    expect(beside({}).lighter).toBeNull();
    expect(beside({ light: 4 }).heavier).toEqual({
      springs: { light: 3, heavy: 1 },
      atMidN: expect.closeTo(215, 9),
    });
  });
  it("of too many, one step lighter is one off, though still too many", () => {
    expect(beside({ light: 6 }).lighter?.springs).toEqual({ light: 5 });
  });
  it("stay within what the move allows", () => {
    expect(beside({ light: 2 }, { max: { light: 2, heavy: 0 } }).heavier).toBeNull();
    expect(beside({ light: 2 }, { min: { light: 2 } }).lighter).toBeNull();
  });
  it("property: lighter is lighter and heavier heavier, and neither asks for a spring that is not there", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        for (const item of moveItems(plan)) {
          const here = neighbours(plan, item);
          const row = loadRows(plan).find((r) => r.item === item.id);
          if (row?.atMidN === null || row === undefined) continue;
          expect(here.lighter === null || here.lighter.atMidN < row.atMidN).toBe(true);
          expect(here.heavier === null || here.heavier.atMidN > row.atMidN).toBe(true);
          for (const spring of plan.equipment.springs) {
            const more = (here.heavier?.springs[spring.id] ?? 0) > (item.springs[spring.id] ?? 0);
            if (more) expect(here.heavier?.springs[spring.id]).toBeLessThanOrEqual(spring.count);
          }
        }
      }),
    );
  });
});

describe("springs that could stay on", () => {
  // light 2 over 0-500 mm: 20 + 0.24 (250) = 80 N; heavy 1: 20 + 0.3 (250 + p) = 80 -> p = -50
  const a = exampleMove("a", { springs: { heavy: 1 } });
  const b = exampleMove("b", { springs: { light: 2 } });

  it("says how far to move, what it does to both ends, and what it saves", () => {
    const kept = keepSprings(examplePlan([a, b]), b);
    expect(kept).toMatchObject({ offsetMm: -50, byMm: -50, wantedN: 80, against: [] });
    expect(kept?.newtons.atStart).toBeCloseTo(5, 9);
    expect(kept?.newtons.atMid).toBeCloseTo(80, 9);
    expect(kept?.newtons.atEnd).toBeCloseTo(155, 9);
    // base 2 + one off 2 + two on 6 + carriage home 2
    expect(kept?.savedSeconds).toBe(12);
  });
  it("is measured from where the item before starts", () => {
    const from = exampleMove("a", { springs: { heavy: 1 }, offsetMm: 30 });
    expect(keepSprings(examplePlan([from, b]), b)).toMatchObject({ offsetMm: -50, byMm: -80 });
  });
  it("gives whole centimetres", () => {
    // light 3: 30 + 0.36 (250 + p) = 80 -> p = -111.1
    const three = exampleMove("a", { springs: { light: 3 } });
    expect(keepSprings(examplePlan([three, b]), b)).toMatchObject({ offsetMm: -110, wantedN: 80 });
  });
  it("names what the library would not allow", () => {
    const limited = { ...exampleMoves, plank: { ...exampleMoves.plank, springs: { max: { heavy: 0 } } } };
    const plank = exampleMove("b", { move: "plank", springs: { light: 2 } });
    expect(
      keepSprings(examplePlan([a, plank], { moves: limited }), plank)?.against.map(({ spring }) => spring),
    ).toEqual(["heavy"]);
  });
  it("never matches a load that the library does not ask for, or that the machine cannot make", () => {
    const asked = (loadN: [number, number]) => ({ ...exampleMoves, squat: { ...exampleMoves.squat, loadN } });
    const heavier = [a, exampleMove("b", { move: "squat", springs: { light: 2 } })] as const;
    expect(keepSprings(examplePlan([...heavier], { moves: asked([70, 90]) }), heavier[1])).not.toBeNull();
    expect(keepSprings(examplePlan([...heavier], { moves: asked([20, 60]) }), heavier[1])).toBeNull();
    const six = exampleMove("b", { springs: { light: 6 } });
    expect(keepSprings(examplePlan([exampleMove("a", { springs: { heavy: 2 } }), six]), six)).toBeNull();
  });
  it("is nothing when the springs are the same, there are none, or no offset in reach does it", () => {
    expect(keepSprings(examplePlan([a, exampleMove("b", { springs: { heavy: 1 } })]), a)).toBeNull();
    const none = exampleMove("b", { springs: {} });
    expect(keepSprings(examplePlan([a, none]), none)).toBeNull();
    const strong = exampleMove("b", { springs: { heavy: 2, light: 4 } });
    expect(keepSprings(examplePlan([exampleMove("a"), strong]), strong)).toBeNull();
    expect(keepSprings(examplePlan([b]), b)).toBeNull();
  });
});

describe("the curve", () => {
  it("has a corner where slack springs begin to pull", () => {
    const over = { fromMm: 0, toMm: 500, offsetMm: -200 };
    const points = curvePoints(exampleEquipment, { light: 1 }, over);
    expect(points).toHaveLength(3);
    expect(points[1]?.xMm).toBeCloseTo(200 - 10 / 0.12, 9);
    expect(points.map((p) => Math.round(p.newtons))).toEqual([0, 0, 46]);
  });
  it("property: the area under its straight lines is the work", () => {
    fc.assert(
      fc.property(fc.integer({ min: -400, max: 400 }), fc.nat(4), fc.nat(2), (offsetMm, light, heavy) => {
        const over = { fromMm: 50, toMm: 450, offsetMm };
        const points = curvePoints(exampleEquipment, { light, heavy }, over);
        let area = 0;
        points.forEach((p, i) => {
          const q = points[i + 1];
          if (q) area += ((p.newtons + q.newtons) / 2) * ((q.xMm - p.xMm) / 1000);
        });
        expect(area).toBeCloseTo(workJ(exampleEquipment, { light, heavy }, over), 9);
        expect(points.at(-1)?.newtons).toBe(forceN(exampleEquipment, { light, heavy }, { xMm: 450, offsetMm }));
      }),
    );
  });
  it("has round numbers on its axes", () => {
    expect(axisTicks(71)).toEqual([0, 20, 40, 60, 80]);
    expect(axisTicks(200)).toEqual([0, 50, 100, 150, 200]);
    expect(axisTicks(0)).toEqual([0, 0.5, 1]);
    expect(axisTicks(9)).toEqual([0, 5, 10]);
  });
});

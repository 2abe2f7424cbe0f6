/** Laws of the load: what must hold on every plan, whatever its springs, travels and offsets. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { forceN, loadRows, OFFSET_LIMIT_MM, springItemBefore, travelMm, workJ } from "#lib/load/load.ts";
import { moveItems, moveOf } from "#lib/plan/lookup.ts";
import type { Equipment, Plan } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { damagedPlan, validPlan } from "#tests/support/plan-arbitrary.ts";

const number = (max: number) => fc.double({ min: 0, max, noNaN: true });
const offset = fc.double({ min: -2000, max: 2000, noNaN: true });
const equipment: fc.Arbitrary<Equipment> = fc
  .array(fc.record({ stiffnessNPerMm: number(2), preloadN: number(100) }), { minLength: 1, maxLength: 4 })
  .map((list) => ({
    name: "Any",
    carriageTravelMm: 900,
    springs: list.map((s, i) => ({ id: `s${i}`, label: `s${i}`, count: 4, ...s })),
  }));
const counts = fc.dictionary(fc.constantFrom("s0", "s1", "s2", "s3", "gone"), fc.nat(4), { noNullPrototype: true });
const span = fc.tuple(number(2000), number(2000)).map(([a, b]) => ({ fromMm: Math.min(a, b), toMm: Math.max(a, b) }));
/** Rounding of sums of doubles, far below a tenth of a newton. */
const NOISE = 1e-6;

describe("load", () => {
  it("moving closer never makes it heavier", () => {
    fc.assert(
      fc.property(equipment, counts, number(2000), offset, number(500), (machine, springs, xMm, offsetMm, by) => {
        const far = forceN(machine, springs, { xMm, offsetMm });
        expect(forceN(machine, springs, { xMm, offsetMm: offsetMm - by })).toBeLessThanOrEqual(far + NOISE);
      }),
    );
  });

  it("neither force nor work is ever below nothing", () => {
    fc.assert(
      fc.property(equipment, counts, span, offset, (machine, springs, { fromMm, toMm }, offsetMm) => {
        expect(forceN(machine, springs, { xMm: fromMm, offsetMm })).toBeGreaterThanOrEqual(0);
        expect(workJ(machine, springs, { fromMm, toMm, offsetMm })).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("one spring more is never lighter, and never less work", () => {
    fc.assert(
      fc.property(
        equipment,
        counts,
        span,
        number(800),
        fc.constantFrom("s0", "s1", "s2", "s3"),
        (machine, springs, { fromMm, toMm }, offsetMm, id) => {
          // Held where every spring is stretched: the format holds the sum at 0, not each spring, so that below the
          // anchor a soft spring could take from a stiff one.
          const more = { ...springs, [id]: (springs[id] ?? 0) + 1 };
          const at = { xMm: fromMm, offsetMm };
          expect(forceN(machine, more, at)).toBeGreaterThanOrEqual(forceN(machine, springs, at) - NOISE);
          const over = { fromMm, toMm, offsetMm };
          expect(workJ(machine, more, over)).toBeGreaterThanOrEqual(workJ(machine, springs, over) - NOISE);
        },
      ),
    );
  });

  it("work is the area under the force: as a sum of thin slices says", () => {
    fc.assert(
      fc.property(equipment, counts, span, offset, (machine, springs, { fromMm, toMm }, offsetMm) => {
        const slices = 2000;
        const width = (toMm - fromMm) / slices;
        let sum = 0;
        for (let i = 0; i < slices; i++) {
          sum += (forceN(machine, springs, { xMm: fromMm + (i + 0.5) * width, offsetMm }) * width) / 1000;
        }
        const exact = workJ(machine, springs, { fromMm, toMm, offsetMm });
        // Springs that begin to pull within a slice are off by at most that slice: a millijoule is far above it.
        expect(Math.abs(exact - sum)).toBeLessThanOrEqual(1e-3 + exact * 1e-5);
      }),
      { numRuns: 60 },
    );
  });

  it("the offset it offers really gives the same middle load with the springs before, and is within reach", () => {
    let offered = 0;
    fc.assert(
      fc.property(validPlan, (plan: Plan) => {
        for (const row of loadRows(plan)) {
          const to = row.offsetToMatchPrevious;
          if (to === null) continue;
          offered++;
          const before = springItemBefore(plan, row.item);
          const item = moveItems(plan).find((i) => i.id === row.item);
          const performed = item && moveOf(plan, item);
          if (!before || !performed) throw new Error("an offset without a spring item before it");
          const [from, end] = travelMm(plan, performed);
          const kept = forceN(plan.equipment, before.springs, { xMm: (from + end) / 2, offsetMm: to });
          expect(kept).toBeCloseTo(row.atMidN ?? Number.NaN, 5);
          expect(Math.abs(to)).toBeLessThanOrEqual(OFFSET_LIMIT_MM);
        }
      }),
      { numRuns: 300 },
    );
    expect(offered).toBeGreaterThan(20);
  });

  it("an unknown move and a machine without the springs have no load and do no harm", () => {
    const plan = examplePlan([
      exampleMove("a", { springs: { constructor: 3, light: 1 } }),
      exampleMove("x", { move: "gone" }),
      exampleMove("y", { move: "constructor" }),
      exampleMove("b", { springs: { light: 2 } }),
    ]);
    const [a, x, y, b] = loadRows(plan);
    expect(a).toMatchObject({ atStartN: 10 });
    const nothing = { atStartN: null, atMidN: null, atEndN: null, workPerRepJ: null, offsetToMatchPrevious: null };
    expect(x).toMatchObject(nothing);
    expect(y).toMatchObject(nothing);
    // light 2: 20 + 0.24 x 250 = 80 N; light 1 (and springs that are not there): 10 + 0.12 (250 + p) = 80
    expect(b?.offsetToMatchPrevious).toBeCloseTo(70 / 0.12 - 250, 6);
  });

  it("never throws and gives finite numbers on any plan", () => {
    fc.assert(
      fc.property(validPlan, (plan: Plan) => {
        const rows = loadRows(plan);
        expect(rows.map((r) => r.item)).toEqual(moveItems(plan).map((i) => i.id));
        for (const { item, ...numbers } of rows) {
          for (const n of Object.values(numbers)) expect(n === null || Number.isFinite(n), item).toBe(true);
        }
      }),
    );
  });

  it("a damaged plan gets rows as well", () => {
    fc.assert(
      fc.property(damagedPlan, (plan: Plan) => {
        expect(loadRows(plan).map((row) => row.item)).toEqual(moveItems(plan).map((item) => item.id));
      }),
    );
  });
});

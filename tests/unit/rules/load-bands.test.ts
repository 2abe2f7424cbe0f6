/** The bands of `load-for-body` against the ranges of the starter library, which were set before them. */
import { describe, expect, it } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { forceN, travelMm } from "#lib/load/load.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { loadForBody } from "#lib/rules/rules/load-for-body.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";

/** Every choice of at most two springs of a kind that the starter room has. */
const CHOICES: MoveItem["springs"][] = STARTER_EQUIPMENT.springs.reduce<MoveItem["springs"][]>(
  (choices, { id, count }) =>
    choices.flatMap((springs) => Array.from({ length: Math.min(count, 2) + 1 }, (_, n) => ({ ...springs, [id]: n }))),
  [{}],
);

const asked = (move: Move, springs: MoveItem["springs"], equipment = STARTER_EQUIPMENT) => {
  const item = { id: "a", kind: "move", move: "m", side: "both", seconds: 45, springs } as const;
  const plan: Plan = {
    ...{ format: "springline.plan/1", title: "One move", lengthSeconds: 600, equipment },
    ...{ moves: { m: move }, items: [item] },
  };
  return checkPlan(plan, [loadForBody]).findings;
};

const midN = (move: Move, springs: MoveItem["springs"]): number => {
  const [from, to] = travelMm({ equipment: STARTER_EQUIPMENT }, move);
  return forceN(STARTER_EQUIPMENT, springs, { xMm: (from + to) / 2, offsetMm: 0 });
};

describe("a load without a library range", () => {
  const ranged = Object.entries(STARTER_MOVES).flatMap(([id, { loadN, ...move }]) =>
    loadN && move.resistance === "springs" ? [{ id, move: move as Move, loadN }] : [],
  );

  it("within what the library would ask for is not asked about", () => {
    expect(ranged.length).toBeGreaterThan(30);
    for (const { id, move, loadN } of ranged) {
      const within = CHOICES.filter((springs) => midN(move, springs) >= loadN[0] && midN(move, springs) <= loadN[1]);
      expect(within.length, id).toBeGreaterThan(0);
      expect(
        within.filter((springs) => asked(move, springs).some(({ level }) => level === "look")),
        id,
      ).toEqual([]);
    }
  });

  it("of four and a half times the library's most is asked about for everybody", () => {
    for (const { id, move, loadN } of ranged) {
      const spring = { id: "one", label: "one", count: 1, stiffnessNPerMm: 0, preloadN: 4.5 * loadN[1] };
      const found = asked(move, { one: 1 }, { ...STARTER_EQUIPMENT, springs: [spring] });
      expect(
        found.map(({ level }) => level),
        id,
      ).toEqual(["look"]);
    }
  });

  it("of 290 N in a kneeling overhead press is asked about, though never forbidden", () => {
    const { loadN: _range, cautions: _cautions, ...press } = STARTER_MOVES["overhead-press-kneeling"] as Move;
    const spring = { id: "one", label: "one", count: 1, stiffnessNPerMm: 0, preloadN: 290 };
    const [found] = asked(press, { one: 1 }, { ...STARTER_EQUIPMENT, springs: [spring] });
    expect(found?.level).toBe("look");
    // 290 N / (90 kg x 9.80665 m/s²) = 0.3286, shown rounded down
    expect(found?.message).toContain("290 N half-way is 33% of even 90 kg, and at most 25% is usual");
  });
});

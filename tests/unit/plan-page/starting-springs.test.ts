import { describe, expect, test } from "vitest";
import { startingSprings } from "#app/_session/starting-springs.ts";
import type { Equipment, Move } from "#lib/plan/schema.ts";

/** In the middle of 0..400 mm: light 10 + 0.1 x 200 = 30 N, firm 20 + 0.3 x 200 = 80 N. */
const equipment: Equipment = {
  name: "Six machines",
  carriageTravelMm: 800,
  springs: [
    { id: "light", label: "light", count: 2, stiffnessNPerMm: 0.1, preloadN: 10 },
    { id: "firm", label: "firm", count: 2, stiffnessNPerMm: 0.3, preloadN: 20 },
  ],
};
const move = (rest: Partial<Move>): Move => ({
  name: "Row",
  station: "carriage",
  position: "kneeling",
  facing: "back",
  hands: "handles",
  feet: "carriage",
  sides: "both",
  pattern: "pull",
  muscles: {},
  resistance: "springs",
  tempo: { outSeconds: 3, backSeconds: 3 },
  ...rest,
});

describe("startingSprings", () => {
  test.each<[string, Partial<Move>, Record<string, number>]>([
    ["one light gives 30 N", { loadN: [20, 40] }, { light: 1 }],
    ["one firm is nearer to the middle than two light", { loadN: [55, 90] }, { firm: 1 }],
    ["fewest first: one light and one firm make 110 N", { loadN: [100, 120] }, { light: 1, firm: 1 }],
    ["never less than the move asks for", { loadN: [20, 70], springs: { min: { light: 2 } } }, { light: 2 }],
    ["never more than the move allows", { loadN: [55, 90], springs: { max: { firm: 0 } } }, { light: 2 }],
    [
      "what cannot be reached falls back to the least",
      { loadN: [900, 950], springs: { min: { firm: 1 } } },
      { firm: 1 },
    ],
    ["body weight needs none", { resistance: "bodyweight" }, {}],
  ])("%s", (_say, rest, springs) => {
    expect(startingSprings(move(rest), equipment)).toEqual(springs);
  });
});

import { describe, expect, test } from "vitest";
import { searchMoves } from "#app/_plan/panel/search-moves.ts";
import type { Move } from "#lib/plan/schema.ts";

const move = (name: string, rest: Partial<Move>): Move => ({
  name,
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
const moves = {
  row: move("Kneeling row", { muscles: { "upper-back": 1, biceps: 0.5 } }),
  press: move("Chest press on the bars", { pattern: "push", position: "plank", muscles: { chest: 1 } }),
  reach: move("Quadruped leg reach", {
    position: "quadruped",
    sides: "each",
    pattern: "extension",
    muscles: { glutes: 1 },
  }),
};
const ids = (query: string) => searchMoves(moves, query).map((m) => m.id);

describe("searchMoves", () => {
  test.each([
    ["by name", "chest press", ["press"]],
    ["by muscle, in two words", "upper back", ["row"]],
    ["by position", "quadruped", ["reach"]],
    ["by pattern and muscle together", "pull bic", ["row"]],
    ["by side", "each", ["reach"]],
    ["letter case does not matter", "KNEEL", ["row"]],
    ["all words must fit", "push upper", []],
  ])("%s", (_say, query, found) => {
    expect(ids(query)).toEqual(found);
  });
  test("with nothing typed the whole library is there, by name", () => {
    expect(ids("  ")).toEqual(["press", "row", "reach"]);
  });
});

/** The acts of a change, in the plan file's order (plan format, "Acts"), and the one line that says them. */
import { describe, expect, it } from "vitest";
import { readOut } from "#lib/acts/act-words.ts";
import { setupActs, setupLine } from "#lib/acts/compose.ts";
import { plannedActs } from "#lib/acts/planned.ts";
import { setupChanges } from "#lib/cues/changes.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";

const moves: Plan["moves"] = {
  ...exampleMoves,
  legs: { ...exampleMoves.squat, feet: "cable-strap", position: "supine", hands: "handles", station: "back" },
  bridge: {
    ...exampleMoves.squat,
    feet: "front-strap",
    position: "kneeling",
    hands: "handles-crossed",
    facing: "right",
  },
};
const { squat: _none, ...known } = moves;

function change(before: Partial<MoveItem>, after: Partial<MoveItem>, all: Plan["moves"] = moves) {
  const [from, to] = [exampleMove("a", before), exampleMove("b", after)];
  const plan = examplePlan([from, to], { moves: all });
  return { plan, from, to };
}
function lineOf({ plan, from, to }: ReturnType<typeof change>): string {
  return readOut(plan, to, setupLine(plan, from, to, setupActs(plan, from, to))?.text ?? "");
}

describe("planned acts", () => {
  it("come in the order of hands and feet, springs in the order of the equipment", () => {
    const { plan, from, to } = change(
      { move: "legs", side: "left", springs: { heavy: 2, light: 1 } },
      { move: "plank", side: "right", springs: { light: 3, heavy: 1 }, facing: "left" },
    );
    expect(plannedActs(plan, from, to)).toEqual([
      { act: "carriage-home" },
      { act: "strap-off" },
      { act: "handles-down", count: 2 },
      { act: "spring-on", spring: "light", count: 2 },
      { act: "spring-off", spring: "heavy", count: 1 },
      { act: "station", station: "carriage" },
      { act: "turn", facing: "left" },
      { act: "position", position: "plank" },
      { act: "side", side: "right" },
    ]);
  });

  it("end with what is taken: handles crossed, handles up, the strap last", () => {
    const crossed = change({ move: "press", facing: "right" }, { move: "bridge" });
    expect(plannedActs(crossed.plan, crossed.from, crossed.to)).toEqual([
      { act: "handles-cross" },
      { act: "strap-on" },
    ]);
    const taken = change({}, { move: "legs" });
    expect(plannedActs(taken.plan, taken.from, taken.to).slice(-2)).toEqual([
      { act: "handles-up", count: 2 },
      { act: "strap-on" },
    ]);
  });

  it("put one handle down and up again for the other side", () => {
    const { plan, from, to } = change({ move: "row", side: "left" }, { move: "row", side: "right" });
    expect(plannedActs(plan, from, to)).toEqual([
      { act: "handles-down", count: 1 },
      { act: "side", side: "right" },
      { act: "handles-up", count: 1 },
    ]);
  });

  it("are none for the first move, without a difference, and where a move is not known", () => {
    const { plan, from, to } = change({}, {});
    expect(plannedActs(plan, undefined, from)).toEqual([]);
    expect(plannedActs(plan, from, to)).toEqual([]);
    const unknown = change({ springs: {} }, { move: "row" }, known);
    expect(plannedActs(unknown.plan, unknown.from, unknown.to)).toEqual([]);
  });
});

describe("the composed line", () => {
  it("says each act once, springs and side by live fields, the starting place before what is taken", () => {
    const { plan, from, to } = change(
      { move: "plank", springs: { heavy: 1 } },
      { move: "row", side: "left", springs: { light: 2 }, offsetMm: 80 },
    );
    expect(setupLine(plan, from, to, setupActs(plan, from, to))).toEqual({
      kind: "setup",
      text: "Carriage home, now on {springs}, face the back, kneel, {side} side, 8 cm further from the anchor, take one handle.",
    });
  });

  it.each<[string, Partial<MoveItem>, Partial<MoveItem>]>([
    ["Put one handle down, face the back, left side.", { move: "press" }, { move: "row", side: "left" }],
    ["Face the front, take the other handle too.", { move: "row" }, { move: "press" }],
    ["Cross the handles, feet in the front strap.", { move: "press", facing: "right" }, { move: "bridge" }],
    [
      "Out of the strap, put the handle down, right side, handle in the other hand, other foot in the cable strap.",
      { move: "both", side: "left" },
      { move: "both", side: "right" },
    ],
  ])("%s", (text, before, after) => {
    const both = { ...exampleMoves.row, feet: "cable-strap" as const };
    expect(lineOf(change(before, after, { ...moves, both }))).toBe(text);
  });

  it("lies people down on one side in one clause, where no foot and no hand holds anything", () => {
    const side = { ...exampleMoves.plank, position: "side-lying" as const, sides: "each" as const };
    const lying = { move: "side", side: "left", facing: "left" } as const;
    const all = { ...moves, side, legs: { ...side, feet: "cable-strap" as const } };
    expect(lineOf(change({ move: "plank" }, lying, all))).toBe("Face the left, lie on your left side.");
    expect(lineOf(change({ move: "plank" }, { ...lying, move: "legs" }, all))).toBe(
      "Face the left, lie on your side, left side, foot in the cable strap.",
    );
  });

  it("joins two kinds of springs as they are said", () => {
    const line = lineOf(change({ springs: { heavy: 2 } }, { springs: { heavy: 1, light: 2 } }));
    expect(line).toBe("Carriage home, now on two light and one heavy.");
  });

  it("has the words of the floor, but for springs, which it says by what is on", () => {
    const { plan, from, to } = change({ move: "legs", side: "left" }, { move: "plank", springs: { light: 2 } });
    const floor = setupChanges(plan, from, to).map(({ words }) => words);
    expect(floor).toContain("put on one light");
    const said = lineOf({ plan, from, to }).toLowerCase().replace(/\.$/, "").split(", ");
    expect(said).toContain("now on two light");
    expect(said.filter((clause) => !floor.includes(clause))).toEqual(["now on two light"]);
  });
});

/**
 * Transitions worked out by hand from the definitions of the plan file format (section "Exact meanings"). Every number
 * below was counted on paper; the working stands beside it. Seconds of an action are the format's defaults.
 */
import { describe, expect, it } from "vitest";
import type { Facing, MoveItem, Plan } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { actionsBetween, estimateSeconds, quarterTurns, type Setup, setupOf } from "#lib/transitions/transitions.ts";

const plan = examplePlan([]);
const start: Setup = {
  springs: { light: 1 },
  station: "carriage",
  position: "kneeling",
  facing: "front",
  hands: "free",
  feet: "free",
  side: "both",
};
const to = (change: Partial<Setup>, from: Setup = start) => {
  const after = { ...from, ...change };
  return { actions: actionsBetween(from, after), seconds: estimateSeconds(plan, from, after) };
};

describe("one difference at a time", () => {
  it.each<[string, Partial<Setup>, Partial<Setup>, object, number]>([
    // base 2 + 2 springs on x 3 + carriage home 2 = 10
    ["two springs on", {}, { springs: { light: 3 } }, { springOn: 2, carriageHome: 1 }, 10],
    // base 2 + 1 off x 2 + home 2 = 6
    ["a spring off", {}, { springs: {} }, { springOff: 1, carriageHome: 1 }, 6],
    // base 2 + 1 off x 2 + 1 on x 3 + home 2 = 9: one home, whatever the number of springs
    ["one kind for another", {}, { springs: { heavy: 1 } }, { springOn: 1, springOff: 1, carriageHome: 1 }, 9],
    ["a spring counted as none is no difference", {}, { springs: { light: 1, heavy: 0 } }, {}, 0],
    // base 2 + 1 x 1.5 = 3.5, rounded up
    ["a quarter turn", {}, { facing: "right" }, { quarterTurn: 1 }, 4],
    // base 2 + 2 x 1.5 = 5
    ["half way round", {}, { facing: "back" }, { quarterTurn: 2 }, 5],
    // three quarters to the right are one to the left
    ["the short way round", {}, { facing: "left" }, { quarterTurn: 1 }, 4],
    // base 2 + 3 = 5
    ["another position", {}, { position: "plank" }, { positionChange: 1 }, 5],
    ["another station", {}, { station: "front" }, { stationChange: 1 }, 5],
    // base 2 + 2 x 1.5 = 5
    ["two handles up", {}, { hands: "handles" }, { handleUp: 2 }, 5],
    // one more in the hand: base 2 + 1.5 = 3.5, rounded up
    ["from one handle to two", { hands: "one-handle" }, { hands: "handles" }, { handleUp: 1 }, 4],
    // base 2 + 2 x 1 = 4
    ["two handles down", { hands: "handles-crossed" }, { hands: "front-bars" }, { handleDown: 2 }, 4],
    // base 2 + 2 = 4
    ["handles crossed", { hands: "handles" }, { hands: "handles-crossed" }, { handlesCross: 1 }, 4],
    // base 2 + 1.5 = 3.5, rounded up; from free hands to a bar is a change of grip too
    ["another grip", { hands: "front-bars" }, { hands: "carriage" }, { gripChange: 1 }, 4],
    // base 2 + 4 = 6
    ["into a strap", {}, { feet: "front-strap" }, { strapOn: 1 }, 6],
    // base 2 + 2 = 4
    ["out of a strap", { feet: "back-strap" }, { feet: "floor" }, { strapOff: 1 }, 4],
    // base 2 + 2 + 4 = 8
    ["from one strap into another", { feet: "front-strap" }, { feet: "back-strap" }, { strapOn: 1, strapOff: 1 }, 8],
    ["nothing", {}, {}, {}, 0],
    // feet that step elsewhere are a difference with no action of their own: the base alone
    ["feet elsewhere", { feet: "carriage" }, { feet: "floor" }, {}, 2],
  ])("%s", (_what, before, after, actions, seconds) => {
    expect(to(after, { ...start, ...before })).toEqual({ actions, seconds });
  });

  it("turns the shorter way between any two facings", () => {
    const circle: Facing[] = ["front", "right", "back", "left"];
    const turns = circle.map((from) => circle.map((end) => quarterTurns(from, end)));
    expect(turns).toEqual([
      [0, 1, 2, 1],
      [1, 0, 1, 2],
      [2, 1, 0, 1],
      [1, 2, 1, 0],
    ]);
  });
});

describe("the other side of one move", () => {
  it("changes a single handle from hand to hand", () => {
    const left: Setup = { ...start, hands: "one-handle", side: "left" };
    // base 2 + down 1 + up 1.5 = 4.5, rounded up
    expect(to({ side: "right" }, left)).toEqual({ actions: { handleDown: 1, handleUp: 1 }, seconds: 5 });
  });

  it("changes a cable strap from foot to foot", () => {
    const right: Setup = { ...start, feet: "cable-strap", side: "right" };
    // base 2 + off 2 + on 4 = 8
    expect(to({ side: "left" }, right)).toEqual({ actions: { strapOff: 1, strapOn: 1 }, seconds: 8 });
  });

  it("is a change of legs or arms when nothing that changes with it is held", () => {
    // base 2 + side 4 = 6; two handles stay where they are
    const left: Setup = { ...start, side: "left" };
    expect(to({ side: "right" }, left)).toEqual({ actions: { sideChange: 1 }, seconds: 6 });
    expect(to({ side: "right" }, { ...left, hands: "handles" })).toEqual({ actions: { sideChange: 1 }, seconds: 6 });
    // out of the other straps nobody has to change: base 2 + side 4
    expect(to({ side: "right" }, { ...left, feet: "back-strap" })).toEqual({ actions: { sideChange: 1 }, seconds: 6 });
  });

  it("counts beside a handle or strap that only one of the two has", () => {
    // handle put down 1 + side 4 + base 2 = 7
    const row: Setup = { ...start, hands: "one-handle", side: "left" };
    expect(to({ side: "right", hands: "free" }, row)).toEqual({
      actions: { handleDown: 1, sideChange: 1 },
      seconds: 7,
    });
    // strap on 4 + side 4 + base 2 = 10
    expect(to({ side: "right", feet: "cable-strap" }, { ...start, side: "left" })).toEqual({
      actions: { strapOn: 1, sideChange: 1 },
      seconds: 10,
    });
  });

  it("is none from or to both sides or alternating ones", () => {
    for (const [from, after] of [
      ["left", "both"],
      ["both", "right"],
      ["alternating", "left"],
    ] as const)
      expect(to({ side: after }, { ...start, side: from })).toEqual({ actions: {}, seconds: 0 });
  });
});

describe("many differences at once", () => {
  it("adds them up and rounds once", () => {
    // From a row on two light, kneeling, facing back, one handle, on the left,
    // to a plank on one light and one heavy, facing front, hands on the front bars, at the front:
    //   spring off 1 x 2 = 2, spring on 1 x 3 = 3, carriage home 2, quarter turns 2 x 1.5 = 3, position 3, station 3,
    //   handle down 1 x 1 = 1; no change of grip, a handle being held before. base 2. Together 19.
    const row: Setup = { ...start, springs: { light: 2 }, facing: "back", hands: "one-handle", side: "left" };
    const plank: Partial<Setup> = {
      springs: { light: 1, heavy: 1 },
      position: "plank",
      station: "front",
      facing: "front",
      hands: "front-bars",
      side: "both",
    };
    expect(to(plank, row)).toEqual({
      actions: {
        springOn: 1,
        springOff: 1,
        carriageHome: 1,
        quarterTurn: 2,
        positionChange: 1,
        stationChange: 1,
        handleDown: 1,
      },
      seconds: 19,
    });
  });

  it("takes a studio's own timings, and rounds up after adding", () => {
    const timed: Plan = {
      ...plan,
      equipment: { ...plan.equipment, actionSeconds: { base: 0.1, springOn: 0.7, carriageHome: 0.2 } },
    };
    // 0.1 + 0.7 + 0.2 = 1.0, which binary fractions write as 0.9999999999999999 or 1.0000000000000002
    expect(estimateSeconds(timed, start, { ...start, springs: { light: 2 } })).toBe(1);
    // 0.1 + 2 x 0.7 + 0.2 = 1.7
    expect(estimateSeconds(timed, start, { ...start, springs: { light: 3 } })).toBe(2);
  });
});

describe("the slowest in the room", () => {
  const roomOf = (people: number | undefined, spreadShare?: number): Plan => ({
    ...plan,
    ...(people === undefined ? {} : { people }),
    equipment: { ...plan.equipment, ...(spreadShare === undefined ? {} : { spreadShare }) },
  });
  const swap = { ...start, springs: { heavy: 1 } };

  it.each<[number | undefined, number | undefined, number]>([
    // one for another: base 2 + off 2 + on 3 + home 2 = 9
    [undefined, undefined, 9],
    [1, undefined, 9],
    // 9 x (1 + 0.15 x 0.56419) = 9.76
    [2, undefined, 10],
    // 9 x (1 + 0.15 x 1.16296) = 10.57
    [5, undefined, 11],
    // 9 x (1 + 0.15 x 1.53875) = 11.08
    [10, undefined, 12],
    // 9 x (1 + 0.15 x 1.86748) = 11.52
    [20, undefined, 12],
    // 9 x (1 + 0.3 x 1.53875) = 13.15
    [10, 0.3, 14],
    // nobody differs
    [10, 0, 9],
  ])("of %s people who differ by %s", (people, share, seconds) => {
    expect(estimateSeconds(roomOf(people, share), start, swap)).toBe(seconds);
  });

  it("is waited for only where something changes", () => {
    expect(estimateSeconds(roomOf(30), start, start)).toBe(0);
  });
});

describe("the set-up of an item", () => {
  it("is the move's, with the item's own facing and springs", () => {
    const item: MoveItem = exampleMove("a", { move: "row", side: "left", springs: { heavy: 1 }, facing: "left" });
    const { station, position, hands, feet } = exampleMoves.row;
    expect(setupOf(examplePlan([item]), item)).toEqual({
      springs: { heavy: 1 },
      station,
      position,
      facing: "left",
      hands,
      feet,
      side: "left",
    });
  });

  it("is unknown for a move the plan does not carry, even one named like a property of every object", () => {
    for (const id of ["gone", "constructor"]) expect(setupOf(plan, exampleMove("a", { move: id }))).toBeNull();
  });
});

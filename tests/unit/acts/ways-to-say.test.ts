/** Wordings of one change that all tell the whole of it: nothing is missing and nothing contradicts the plan. */
import { describe, expect, it } from "vitest";
import { planActs } from "#lib/acts/plan-acts.ts";
import type { Move, MoveItem, Plan } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";

interface End extends Pick<Partial<MoveItem>, "springs" | "side"> {
  readonly set?: Partial<Move>;
}

function rowOf([before, after]: readonly [End, End], text: string) {
  const moves: Plan["moves"] = {
    before: { ...exampleMoves.squat, name: "First hold", ...before.set },
    after: { ...exampleMoves.squat, name: "Second hold", ...after.set },
  };
  const item = (id: "before" | "after", { springs = { light: 1 }, side = "both" }: End) =>
    exampleMove(id, { move: id, springs, side, script: id === "after" ? [{ kind: "setup", text }] : [] });
  const plan = {
    ...examplePlan([item("before", before), item("after", after)], { moves }),
    equipment: STARTER_EQUIPMENT,
  };
  const row = planActs(plan)[1];
  if (!row) throw new Error("two rows");
  return row;
}

const tellsAll = (change: readonly [End, End], texts: readonly string[]) =>
  it.each(texts)("%s", (text) => {
    const { missing, told } = rowOf(change, text);
    const untrue = told.filter(({ verdict }) => verdict !== "told" && verdict !== "unsure");
    expect({ missing, untrue }).toEqual({ missing: [], untrue: [] });
  });

const springs = (from: Record<string, number>, to: Record<string, number>) =>
  [{ springs: from }, { springs: to }] as const;

describe("a middle for a strong", () =>
  tellsAll(springs({ middle: 1 }, { strong: 1 }), [
    "Home. Middle comes off, strong goes on.",
    "Home. From middle to strong.",
    "Home. Middle down to strong.",
    "Home. Strong for middle.",
    "Home. Strong replaces the middle.",
    "Home. Everything off, one strong on.",
    "Home, strip it, then strong on.",
    "Home. Middle: off. Strong: on.",
    "Home. Substitute a strong for the middle.",
    "I want you to come home. Go ahead and swap the middle for a strong for me.",
    "Next, carriage home. We're going to drop the middle and put a strong on whenever you're ready.",
    "As the carriage comes home, middle off. You had a middle, now it's a strong.",
    "Home. The middle makes way for a strong.",
    "Home. Swap the middle for a firm, no, sorry, a strong.",
    "Home. A strong goes on where the middle was.",
  ]));
describe("a middle for a firm and a strong", () =>
  tellsAll(springs({ middle: 1 }, { firm: 1, strong: 1 }), [
    "Home, middle off, both the firm and the strong on.",
    "Home, middle out, firm in, strong in.",
    "Home, middle off, firm and strong on.",
  ]));
describe("less", () =>
  tellsAll(springs({ light: 1, firm: 1 }, { light: 1 }), [
    "Home. Light and nothing else.",
    "Home. Light only.",
    "Home, firm off, light stays.",
  ]));
describe("the other hand", () =>
  tellsAll(
    [
      { side: "left", set: { hands: "one-handle" } },
      { side: "right", set: { hands: "one-handle" } },
    ],
    [
      "Pass the handle across to the right.",
      "Handle down, take the other handle.",
      "Handle out of the left hand and into the right.",
      "Put the handle down, pick it up right handed.",
    ],
  ));
describe("one of two handles", () =>
  tellsAll(
    [{ set: { hands: "handles" } }, { side: "left", set: { hands: "one-handle" } }],
    ["Both handles down. Pick up one handle in your left hand.", "Keep one handle, left arm first."],
  ));
describe("the right side", () =>
  tellsAll(
    [{ side: "left" }, { side: "right" }],
    [
      "Turn to your right side.",
      "Right forearm on the platform.",
      "Take it to the right.",
      "Right side's turn.",
      "Mirror that.",
    ],
  ));
describe("round to the front", () =>
  tellsAll(
    [{ set: { station: "back" } }, { set: { station: "front" } }],
    ["Come round to the front.", "Step off to the front.", "Head for the front platform."],
  ));

it("lying on the wrong side is contradicted", () => {
  const lying = { position: "side-lying" } as const;
  const { told } = rowOf([{}, { side: "left", set: lying }], "Lie on your right side.");
  expect(told.map(({ act, verdict }) => `${act} ${verdict}`)).toEqual(["position told", "side contradicted"]);
});

it("what comes after so many seconds is not asked for now", () => {
  const { told } = rowOf([{}, { set: { position: "kneeling" } }], "Forty-eight seconds, then we stand for lunges.");
  expect(told.map(({ verdict }) => verdict)).toEqual(["unsure"]);
});

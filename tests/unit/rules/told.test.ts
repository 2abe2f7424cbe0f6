/** What counts as told: words coaches use on the floor, and words that only look like it. */
import { describe, expect, it } from "vitest";
import { planActs } from "#lib/acts/plan-acts.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import { changeCall } from "#lib/cues/changes.ts";
import { moveItems } from "#lib/plan/lookup.ts";
import type { Plan, ScriptLine } from "#lib/plan/schema.ts";
import { exampleEquipment, exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { RULES } from "#lib/rules/registry.ts";
import { STARTER_MOVES } from "#lib/starter/library.ts";
import { STARTER_EQUIPMENT } from "#lib/starter/room.ts";
import { walkSetups } from "#lib/transitions/walk.ts";
import { LONG } from "#tests/support/long.ts";

const line = (text: string, kind: ScriptLine["kind"] = "setup") => ({ script: [{ kind, text }] });
const moves = {
  ...exampleMoves,
  straps: { ...exampleMoves.squat, feet: "cable-strap" as const },
  side: { ...exampleMoves.squat, position: "side-lying" as const },
};
const plan = (first: Parameters<typeof exampleMove>[1], then: Parameters<typeof exampleMove>[1]): Plan =>
  examplePlan([exampleMove("a", first), exampleMove("b", then)], { moves });

const CHANGE_NOT_TOLD = RULES.filter((rule) => rule.id === "change-not-told");

/** Kinds that `change-not-told` misses in the second item. */
function untold(of: Plan): unknown[] {
  return checkPlan(of, CHANGE_NOT_TOLD).findings.flatMap((f) => f.values.kinds);
}

describe("springs are told", () => {
  const to = (text: string, springs: Record<string, number> = { light: 2 }) => plan({}, { springs, ...line(text) });
  it.each([
    "{springs}, stand tall",
    "TWO LIGHT!",
    "Now both lights.",
    "Add one, please",
    "One more spring",
    "take one heavy off",
    "Springs: 2",
    "Up to two",
    "Put another on",
    "A little heavier now",
    "Drop the one",
  ])("%s", (text) => expect(untold(to(text))).toEqual([]));
  it.each(["Stand tall on two feet.", "Three slow breaths.", "Lightly on the toes.", "Slight bend", "…", "{side}"])(
    "not by: %s",
    (text) => expect(untold(to(text))).toEqual(["springs"]),
  );
  it("in the studio's own words, whatever they are", () => {
    const springs = exampleEquipment.springs.map((s) => (s.id === "light" ? { ...s, label: "Légère (n° 1)" } : s));
    const of = (text: string) => ({ ...to(text), equipment: { ...exampleEquipment, springs } });
    expect(untold(of("Deux LEGERE n 1, debout"))).toEqual([]);
    expect(untold(of("Debout"))).toEqual(["springs"]);
  });
});

describe("the way to face is told", () => {
  const to = (text: string, facing: "back" | "left" = "back") => plan({}, { facing, ...line(text) });
  it.each([
    "Face the back.",
    "Facing back, feet wide",
    "Turn round",
    "turned to the anchor",
    "Towards the mirror",
    "Sideways now",
    "All the way around",
    "Look back",
    "to the Left!",
  ])("%s", (text) => expect(untold(to(text))).toEqual([]));
  it.each([
    "Back flat, stand tall",
    "Long back",
    "Sit back a little",
    "Left foot forward",
    "Keep your back straight",
    "Right hand on the hip",
    "Step back to the middle",
    "right now",
  ])("not by: %s", (text) => expect(untold(to(text))).toEqual(["facing"]));
  it("by lying down on one side", () => {
    const lying = (text: string) => plan({}, { move: "side", facing: "left", ...line(text) });
    expect(untold(lying("Lie on your left side"))).toEqual([]);
    expect(untold(lying("Hips stacked"))).toEqual(["facing"]);
    const other = (text: string) =>
      plan({ move: "side", side: "right" }, { move: "side", side: "left", facing: "back", ...line(text) });
    expect(untold(other("Left forearm down, feet stacked"))).toEqual([]);
  });
});

describe("the side is told", () => {
  const to = (text: string) => plan({ move: "row", side: "right" }, { move: "row", side: "left", ...line(text) });
  it.each(["{side} side", "Other side.", "LEFT arm", "second side", "Swap!", "Switch over", "Change hands"])(
    "%s",
    (text) => expect(untold(to(text))).toEqual([]),
  );
  it.each(["Again, arms long", "Leftovers", "One arm"])("not by: %s", (text) =>
    expect(untold(to(text))).toEqual(["side"]),
  );
  it("a side the move before had already needs no word", () => {
    expect(untold(plan({ move: "row", side: "left" }, { move: "row", side: "left", ...line("Again.") }))).toEqual([]);
  });
});

describe("handles and straps are told", () => {
  it.each(["Grab both handles", "handle in each hand", "Pick them up", "take hold", "Grips!", "Reach for the cables"])(
    "taking handles: %s",
    (text) => expect(untold(plan({}, { move: "press", ...line(text) }))).toEqual([]),
  );
  it.each(["Kneel tall, hands at the chest", "Arms long"])("not by: %s", (text) =>
    expect(untold(plan({}, { move: "press", ...line(text) }))).toEqual(["handles"]),
  );
  it.each(["Handles down", "Let go", "Put them away", "Hands on the bars", "Down on the forearms, hands wide"])(
    "freeing hands that must bear weight: %s",
    (text) => expect(untold(plan({ move: "press" }, { move: "plank", ...line(text) }))).toEqual([]),
  );
  it.each(["Foot in the strap", "Into the loops", "Feet in", "Clip in"])("a strap put on: %s", (text) =>
    expect(untold(plan({}, { move: "straps", ...line(text) }))).toEqual([]),
  );
  it.each(["Out of the straps", "Feet out, stand up", "Both feet on the carriage", "Step out"])(
    "a strap taken off: %s",
    (text) => expect(untold(plan({ move: "straps" }, line(text)))).toEqual([]),
  );
  it("standing up does not say that the foot leaves the strap", () => {
    expect(untold(plan({ move: "straps" }, line("Stand up")))).toEqual(["strap"]);
  });
});

describe("the carriage is told home", () => {
  const found = (text: string, kind: ScriptLine["kind"] = "setup") =>
    checkPlan(plan({}, { springs: { light: 2 }, ...line(text, kind) })).findings.some(
      (f) => f.rule === "springs-changed-carriage-out",
    );
  it.each([
    "Carriage home, two light.",
    "CARRIAGES HOME!",
    "carriage in, two light",
    "Carriage in, one light on",
    "Carriage in; the light one comes off",
    "Bring the carriage home",
    "Bring your carriage all the way in",
    "Close the carriage",
    "Come home first.",
    "Home. Two light.",
    "The carriage comes back in",
    "Come all the way in",
    "Carriage to the front",
    "Don't touch a spring until the carriage is home",
    "Carriage's home?",
  ])("%s", (text) => expect(found(text)).toBe(false));
  it.each([
    "Two light on.",
    "Carriage out and in",
    "Slide the carriage in and out",
    "Stop just short of home",
    "Never quite home",
    "Stand on the carriage in the middle",
    "Homework for two",
  ])("not by: %s", (text) => expect(found(text)).toBe(true));
  it("in a start or safety line only of the carriage by name", () => {
    expect(found("Carriage home before you change.", "safety")).toBe(false);
    expect(found("Straight wrists, home before you let go.", "safety")).toBe(true);
    expect(found("Out as you come home.", "breath")).toBe(true);
  });
});

it("no phrase spans two lines, and other kinds do not count", () => {
  const item = exampleMove("b", {
    springs: { light: 2 },
    script: [
      { kind: "setup", text: "The carriage." },
      { kind: "setup", text: "In the middle" },
      { kind: "form", text: "Two light." },
    ],
  });
  const [, row] = planActs(examplePlan([exampleMove("a"), item]));
  expect(row).toMatchObject({ told: [], missing: [{ act: "carriage-home" }, { act: "spring-on" }] });
});

describe("from any move of the library to any other", () => {
  const springs = { light: 1 };
  const heavier = { light: 2, firm: 1 };
  const ids = Object.keys(STARTER_MOVES);
  const SIDES = {
    each: ["right", "left"],
    both: ["both", "both"],
    alternating: ["alternating", "alternating"],
  } as const;
  /** All of them in a long run, else each twelfth, from another one for each move. */
  const targets = (n: number) => (LONG ? ids : ids.filter((_, m) => (m + n) % 12 === 0));
  const change = (from: string, to: string, script: ScriptLine[]) => {
    const side = (id: string, n: 0 | 1) => SIDES[STARTER_MOVES[id]?.sides ?? "both"][n];
    const before = exampleMove("a", { move: from, side: side(from, 0), springs });
    const after = exampleMove("b", { move: to, side: side(to, 1), springs: heavier, script });
    return examplePlan([before, after], { moves: STARTER_MOVES, equipment: STARTER_EQUIPMENT });
  };
  const RULES_OF_WORDS = ["change-not-told", "springs-changed-carriage-out", "hand-or-foot-not-free"];
  const rulesOfWords = RULES.filter((rule) => RULES_OF_WORDS.includes(rule.id));
  const rulesFound = (plan: Plan) => checkPlan(plan, rulesOfWords).findings.map((f) => f.rule);

  it("the plan's own words for the change tell all of it", () => {
    for (const [n, from] of ids.entries()) {
      for (const to of targets(n)) {
        const silent = change(from, to, []);
        const [before, after] = moveItems(silent);
        if (!before || !after) throw new Error("two moves");
        const { acts, on } = changeCall(silent, before, after);
        const text = `${acts} ${on}`.trim();
        expect(rulesFound(change(from, to, [{ kind: "setup", text }])), `${from} to ${to}: ${text}`).toEqual([]);
      }
    }
  }, 60_000);

  it("words about something else tell nothing of it", () => {
    for (const [n, from] of ids.entries()) {
      for (const to of targets(n)) {
        const plan = change(from, to, [{ kind: "setup", text: "Here we go, lovely." }]);
        const [, step] = walkSetups(plan);
        if (!step?.before) throw new Error("a step");
        const { setup } = step.before;
        const holds = (hands: string) => hands.includes("handle");
        const straps = (feet: string) => feet.includes("strap");
        const expected = [
          "springs",
          ...(setup.facing === step.to.facing ? [] : ["facing"]),
          ...(step.item.side === "left" ? ["side"] : []),
          ...(setup.hands !== step.to.hands && (holds(setup.hands) || holds(step.to.hands)) ? ["handles"] : []),
          ...(setup.feet !== step.to.feet && (straps(setup.feet) || straps(step.to.feet)) ? ["strap"] : []),
        ];
        expect(untold(plan), `${from} to ${to}`).toEqual(expected);
      }
    }
  }, 60_000);
});

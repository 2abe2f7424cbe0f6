/** Claims of the script against the plan, each judged at the moment at which it is said. */
import { describe, expect, it } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { Move, MoveItem, Plan, PlanItem, ScriptLine } from "#lib/plan/schema.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";

const moves = {
  ...exampleMoves,
  reach: { ...exampleMoves.plank, name: "Side plank and reach" },
  "side-plank": { ...exampleMoves.plank, name: "Side plank" },
  press: { ...exampleMoves.press, exhaleOn: "out" } satisfies Move,
  row: { ...exampleMoves.row, exhaleOn: "out" } satisfies Move,
};

/** Warm-up: squat. Work: press 60 s of 5 s, the line under test, then side plank and reach, row, side plank. */
function saying(line: ScriptLine | string, more: Partial<MoveItem> = {}, changes: Partial<Plan> = {}): Plan {
  const said: ScriptLine = typeof line === "string" ? { kind: "form", text: line } : line;
  const items: PlanItem[] = [
    { id: "h1", kind: "heading", title: "Warm-up" },
    exampleMove("a", { script: [] }),
    { id: "h2", kind: "heading", title: "Work" },
    exampleMove("b", { move: "press", seconds: 60, springs: { heavy: 1 }, script: [said], ...more }),
    exampleMove("c", { move: "reach", script: [] }),
    { id: "h3", kind: "heading", title: "End" },
    exampleMove("d", { move: "row", side: "left", script: [] }),
    exampleMove("e", { move: "side-plank", script: [] }),
  ];
  return examplePlan(items, { moves, ...changes });
}
const findings = (plan: Plan) => checkPlan(plan).findings.filter(({ rule }) => rule === "says-otherwise");
const at = (text: string, moment: ScriptLine["at"], kind: ScriptLine["kind"] = "form"): ScriptLine => ({
  kind,
  text,
  ...(moment ? { at: moment } : {}),
});

describe("time", () => {
  it.each([
    ["Last fifteen seconds", { leftSeconds: 15 }, true],
    ["Last fifteen seconds", { leftSeconds: 40 }, false],
    ["Last fifteen seconds", { afterSeconds: 20 }, false],
    ["Thirty seconds left", { leftSeconds: 31 }, true],
    ["Thirty seconds left", { leftSeconds: 50 }, false],
    ["A minute in this one", { afterSeconds: 2 }, true],
    ["Ninety seconds of work", { afterSeconds: 2 }, false],
    ["You are thirty seconds in", { afterSeconds: 29 }, true],
    ["You are thirty seconds in", { afterSeconds: 5 }, false],
    ["Ninety more seconds", { afterSeconds: 2 }, false],
    ["You're halfway", { afterSeconds: 30 }, true],
    ["You're halfway", { afterSeconds: 5 }, false],
    ["You're halfway through the class", { afterSeconds: 30 }, true],
  ] as const)("%s, said at %o: %s", (text, moment, isTrue) => {
    expect(findings(saying(at(text, moment))).length).toBe(isTrue ? 0 : 1);
  });

  it("before the start, a time is of the whole move", () => {
    expect(findings(saying(at("A minute in this one.", undefined, "setup")))).toEqual([]);
    expect(findings(saying(at("Thirty seconds of work.", undefined, "setup")))).toHaveLength(1);
  });

  it("a minute is fifty to seventy seconds", () => {
    const lasting = (seconds: number) =>
      findings(saying(at("A minute in this one.", { afterSeconds: 1 }), { seconds }));
    expect([48, 50, 60, 70, 74].map((seconds) => lasting(seconds).length)).toEqual([1, 0, 0, 0, 1]);
  });
  it("minutes may be of the class, unless they say of what", () => {
    // Squat, press, plank, row and plank with changes and a minute each to open and close: some 6 minutes.
    const plan = saying(at("Five minutes left in the class", { afterSeconds: 5 }));
    const [found] = findings(saying(at("Twenty minutes left in the class", { afterSeconds: 5 })));
    expect(findings(plan)).toEqual([]);
    expect(found?.message).toContain("the class goes on for");
  });
});

describe("what is next", () => {
  it.each([
    ["And next, the side plank and reach", true],
    ["Next up: side planks and reach!", true],
    ["Coming up, a Side plank & reach", true],
    ["Side plank and reach is next", true],
    ["Plank and reach next", true],
    ["Next up: the kneeling row", false],
    ["Next up, the side plank", false],
    ["Next up, chest press", false],
    ["After this, the kneeling row", false],
    ["Kneeling row is next", false],
    ["And next, squats", false],
    ["Next up: something you like", true],
    ["Next week we do the kneeling row", true],
    ["Not the kneeling row next", true],
  ] as const)("%s: %s", (text, isTrue) => {
    expect(findings(saying(text)).length).toBe(isTrue ? 0 : 1);
  });

  it("in the set-up it may be the move that is being set up, or the one after it", () => {
    for (const name of ["chest press", "side plank and reach"])
      expect(findings(saying({ kind: "setup", text: `Coming up, the ${name}.` }))).toEqual([]);
    expect(findings(saying({ kind: "setup", text: "Coming up, the kneeling row." }))).toHaveLength(1);
  });
});

describe("counts", () => {
  it.each([
    ["Twelve reps", {}, true],
    ["Ten of these", {}, true],
    ["Thirty reps", {}, false],
    ["Four more", { leftSeconds: 22 }, true],
    ["Three more reps", { leftSeconds: 50 }, false],
    ["Ten more", { leftSeconds: 15 }, false],
    ["Three rounds", {}, false],
    ["Second round", {}, false],
    ["One more round", {}, true],
    ["Three more rounds", {}, false],
  ] as const)("%s, said at %o: %s", (text, moment, isTrue) => {
    const line = "leftSeconds" in moment ? at(text, moment) : at(text, undefined, "setup");
    expect(findings(saying(line)).length).toBe(isTrue ? 0 : 1);
  });

  it("a hold has no repetitions", () => {
    expect(findings(saying("Thirty reps", { move: "plank" }))).toEqual([]);
  });
});

describe("last and first", () => {
  it.each([
    ["Last move of the class", false],
    ["Last block", false],
    ["First block", false],
    ["First move of the block", true],
    ["First move of the class", false],
    ["This is not the last move of the class", true],
  ] as const)("%s: %s", (text, isTrue) => {
    expect(findings(saying(text)).length).toBe(isTrue ? 0 : 1);
  });
});

describe("breath", () => {
  it.each([
    ["Exhale as you push out", true],
    ["Inhale as you push out", false],
    ["Breathe in on the way back", true],
    ["Breathe out on the way back", false],
    ["Breathe out as you press", true],
    ["Breathe in as you press", false],
    ["Breathe out as you pull", true],
    ["Breathe all the way in", true],
  ] as const)("%s: %s", (text, isTrue) => {
    expect(findings(saying({ kind: "breath", text })).length).toBe(isTrue ? 0 : 1);
  });

  it.each([
    ["push", "plank", "back", "In as you lower, out as you push", true],
    ["push", "plank", "back", "Out as you lower, in as you push", false],
    ["lunge", "standing", "back", "In as you sink, out as you rise", true],
    ["lunge", "standing", "back", "Out as you sink, in as you rise", false],
    ["squat", "supine", "out", "Out as you press, in as you bend", true],
    ["squat", "standing", "back", "Out as you sit, in as you stand", false],
    ["pull", "kneeling", "out", "In as you row, out as you reach", false],
    ["pull", "kneeling", "out", "Out as you lift the chest", true],
    ["rotation", "seated", "out", "In as you turn, out as you return", false],
  ] as const)("a %s, %s, breath out on the way %s: %s is %s", (pattern, position, exhaleOn, text, isTrue) => {
    const plan = saying(at(text, undefined, "breath"));
    const press: Move = { ...moves.press, pattern, position, exhaleOn, name: "A move" };
    expect(findings({ ...plan, moves: { ...moves, press } }).length > 0).toBe(!isTrue);
  });

  it("says nothing of a move without a breath of its own", () => {
    expect(findings(saying({ kind: "breath", text: "Inhale as you push out" }, { move: "squat" }))).toEqual([]);
  });
});

it("what is unsure is never a must fix, whatever the studio's level", () => {
  const standards = { "says-otherwise": { level: "must" as const } };
  const level = (text: string) => findings(saying({ kind: "breath", text }, {}, { standards }))[0]?.level;
  expect(level("Inhale as you push out")).toBe("must");
  expect(level("Inhale, push out")).toBe("look");
});

/** The order in which lines tell a change: what is a finding, what is not, and what is proposed. */
import { describe, expect, it } from "vitest";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { remedyFor } from "#lib/remedies/remedies.ts";
import { exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { mended } from "#tests/support/mended.ts";

/** From a press with both handles, the carriage out, to a plank on other springs that faces the back. */
function toPlank(lines: readonly string[], pause?: string): Plan {
  const script = lines.map((text) => ({ kind: "setup" as const, text }));
  return examplePlan([
    exampleMove("a", { move: "press" }),
    ...(pause === undefined ? [] : [{ id: "p", kind: "pause" as const, seconds: 20, text: pause }]),
    exampleMove("b", { move: "plank", springs: { light: 2 }, facing: "back", script }),
  ]);
}

const ORDER = ["springs-changed-carriage-out", "hand-or-foot-not-free", "let-go-before-carriage-home"];
const found = (plan: Plan) =>
  checkPlan(plan).findings.filter(({ rule, items }) => ORDER.includes(rule) && items.includes("b"));
const keys = (plan: Plan) => found(plan).map(({ rule, key, level }) => `${rule}:${key?.split(":")[1]}:${level}`);

const CARRIAGE_LATE = "springs-changed-carriage-out:late:must";
const HANDLES_LATE = "hand-or-foot-not-free:handles-late:look";
const LET_GO = "let-go-before-carriage-home:early:look";

describe("the order of a set-up", () => {
  it.each<[string, string[]]>([
    ["Carriage home, handles down, two light, face the back.", []],
    ["Handles down, carriage home, two light, face the back.", [LET_GO]],
    ["Handles down, two light, face the back, carriage home.", [CARRIAGE_LATE, LET_GO]],
    ["Two light, carriage home, handles down, face the back.", [CARRIAGE_LATE, HANDLES_LATE]],
    ["Carriage home, two light, handles down, face the back.", [HANDLES_LATE]],
    ["Carriage home, face the back, handles down, two light.", [HANDLES_LATE]],
    ["{springs}, then bring the carriage home, handles down, face the back.", [CARRIAGE_LATE, HANDLES_LATE]],
    ["Two light once the carriage is home and the handles are down, face the back.", []],
    ["Two light, carriage home first, handles down, face the back.", []],
    ["Don't let go yet. Carriage home, handles down, two light, face the back.", []],
    ["Handles down after the carriage is home. Two light, face the back.", []],
  ])("%s", (text, expected) => {
    expect(keys(toPlank([text]))).toEqual(expected);
    expect(keys(toPlank(text.split(/(?<=\.) /)))).toEqual(expected);
  });

  it("is worded with what comes before what, and what to do", () => {
    const text = "Two light, face the back, handles down, carriage home.";
    expect(found(toPlank([text])).map(({ message }) => message)).toEqual([
      'Plank hold: the set-up tells people to put on one light before it says "carriage home". Say that first.',
      'Plank hold: the set-up names the springs before "handles down", while hands still hold them. Say "handles down" first.',
      'Plank hold: the set-up says "handles down" before "carriage home", so an open carriage runs in. Say "carriage home" first.',
    ]);
  });

  it("is fixed by saying the whole set-up first, with the coach's line kept and named", () => {
    const plan = toPlank(["Handles down, carriage home, two light, face the back."]);
    const [finding] = found(plan);
    const fix = finding && remedyFor(plan, finding);
    expect(fix?.note).toMatch(/delete what it says from yours/);
    expect(fix?.label).toBe(
      "Say first: Carriage home, put the handles down, now on two light, face the back, come to a plank.",
    );
    const after = fix ? mended(plan, fix) : plan;
    expect(keys(after)).toEqual([]);
    expect(finding && remedyFor(after, finding)).toBeNull();
  });

  it("offers no line where a pause has the wrong order, since it is heard before any line", () => {
    const plan = toPlank(["Carriage home, face the back."], "Two light, handles down, drink.");
    expect(keys(plan)).toEqual(
      [
        "hand-or-foot-not-free:handles-late:look",
        "let-go-before-carriage-home:early:look",
        "springs-changed-carriage-out:late:look",
      ].sort(),
    );
    for (const finding of found(plan)) expect(remedyFor(plan, finding)).toBeNull();
  });

  it("ignores handles where the carriage stayed home", () => {
    const plan = toPlank(["Handles down, carriage home, two light, face the back."]);
    const press = { ...exampleMoves.press, travelMm: [0, 0] as [number, number] };
    expect(keys({ ...plan, moves: { ...plan.moves, press } })).toEqual([]);
  });
});

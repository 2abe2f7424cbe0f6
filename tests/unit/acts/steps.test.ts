/** The steps of a change, as they stand beside the set-up lines: each with what the words say of it. */
import { describe, expect, test } from "vitest";
import { stepsView } from "#app/_script/steps-view.ts";
import { checkPlan } from "#lib/analysis/check-plan.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const setup = (...texts: string[]): Pick<MoveItem, "script"> => ({
  script: texts.map((text) => ({ kind: "setup", text })),
});

/** From a plank facing the front on one heavy to a press facing the back with two light. */
function change(...texts: string[]): Plan {
  return examplePlan([
    exampleMove("a", { springs: { heavy: 1 } }),
    exampleMove("b", { move: "press", facing: "back", springs: { light: 2 }, ...setup(...texts) }),
  ]);
}
const seen = (plan: Plan, item = "b"): string[] =>
  (stepsView(plan, item)?.steps ?? []).map(({ words, state }) => `${words}: ${state}`);
const stateOf = (plan: Plan, words: string) => stepsView(plan, "b")?.steps.find((step) => step.words === words)?.state;

const besides = (plan: Plan): string[] => (stepsView(plan, "b")?.besides ?? []).map(({ said }) => said);

describe("the steps of a change", () => {
  test("are all missing before anything is written, in the order in which they are done", () => {
    const steps = seen(change());
    expect(steps[0]).toBe("Carriage home: missing");
    expect(steps).toContain("One heavy off: missing");
    expect(steps).toContain("Two light on: missing");
    expect(steps.indexOf("Two light on: missing")).toBeLessThan(steps.indexOf("Face the back: missing"));
    expect(steps.every((step) => step.endsWith(": missing"))).toBe(true);
  });

  test("what one press would write tells every step, and leaves nothing to write", () => {
    const offer = stepsView(change(), "b")?.offer;
    expect(offer).toMatchObject({ isFirst: true });
    const written = stepsView(change(...(offer?.lines ?? [])), "b");
    expect(written).toMatchObject({ allSaid: true, besides: [], offer: null });
  });

  test("of the first move the whole set-up is offered while nothing is said of it", () => {
    const first = (...texts: string[]) =>
      examplePlan([exampleMove("a", { springs: { heavy: 1 }, ...setup(...texts) })]);
    const offer = stepsView(first(), "a")?.offer;
    expect(offer).toMatchObject({ isFirst: true, isWhole: false });
    expect(offer?.lines[0]).toMatch(/^Carriage home, now on one heavy, .*face the front/);
    expect(stepsView(first(...(offer?.lines ?? [])), "a")).toBeNull();
  });

  test("what is said of a step decides its state, and the words that say it are known", () => {
    const plan = change("Carriage home. Face the front.");
    expect(stateOf(plan, "Carriage home")).toBe("told");
    const turn = stepsView(plan, "b")?.steps.find(({ words }) => words === "Face the back");
    expect(turn).toMatchObject({ state: "contradicted", heard: { line: 0, said: "Face the front" } });
    const { from = 0, to = 0 } = turn?.heard ?? {};
    expect("Carriage home. Face the front.".slice(from, to)).toBe("Face the front");
    expect(stepsView(plan, "b")).toMatchObject({ allSaid: false, besides: [], offer: { isFirst: false } });
  });

  test("springs told before the carriage is home are out of order", () => {
    expect(stateOf(change("Now on {springs}, then carriage home."), "Two light on")).toBe("wrong-order");
  });

  test("other springs than planned contradict the springs alone", () => {
    const plan = change("Carriage home, three heavy on.");
    expect(stateOf(plan, "Two light on")).toBe("contradicted");
    expect(stateOf(plan, "Carriage home")).toBe("told");
    expect(stateOf(plan, "Face the back")).toBe("missing");
  });

  test("a line that is false stays, whatever a right line beside it says, and one press more does not hide it", () => {
    const plan = change("Carriage home, same springs.");
    const written = change("Carriage home, same springs.", ...(stepsView(plan, "b")?.offer?.lines ?? []));
    expect(stepsView(written, "b")).toMatchObject({
      allSaid: false,
      besides: [{ verdict: "contradicted", said: "same springs" }],
      offer: null,
    });
    expect(stateOf(written, "Two light on")).toBe("told");
    const found = checkPlan(written).findings.filter(({ rule }) => rule === "says-otherwise");
    expect(found.map(({ values }) => values.said)).toEqual(["same springs"]);

    expect(besides(change("Face the left.", "Carriage home, now on {springs}, face the back, kneel."))).toEqual([
      "Face the left",
    ]);
    expect(besides(change("Carriage home, now on two light, otherwise the same springs."))).toEqual([]);
    expect(besides(change("Stand up.", "Carriage home, now on {springs}.", "Face the back, kneel."))).toEqual([]);
  });

  test("where only the order differs nothing is offered, and the step out of order is marked", () => {
    const late = change("Now on {springs}, then carriage home, face the back, kneel, take both handles.");
    expect(stateOf(late, "Two light on")).toBe("wrong-order");
    expect(stepsView(late, "b")).toMatchObject({ allSaid: false, offer: null });
    const short = change("Now on {springs}, then carriage home.");
    expect(stepsView(short, "b")?.offer).toMatchObject({ isFirst: false, isWhole: true });
  });

  test("what the plan does not have stands after the steps", () => {
    const plan = examplePlan([exampleMove("a"), exampleMove("b", setup("Face the back."))]);
    expect(stepsView(plan, "b")).toMatchObject({
      steps: [],
      besides: [{ verdict: "not-planned", said: "Face the back" }],
      allSaid: false,
    });
  });

  test("there is nothing to show where nothing changes and nothing is said of a change", () => {
    expect(stepsView(examplePlan([exampleMove("a"), exampleMove("b")]), "b")).toBeNull();
    expect(stepsView(examplePlan([exampleMove("a", setup("Face the front."))]), "a")).toBeNull();
    expect(stepsView(change(), "nobody")).toBeNull();
  });
});

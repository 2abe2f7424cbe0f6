import { changeTold, toldIn } from "#lib/acts/plan-acts.ts";
import { itemName } from "#lib/plan/format.ts";
import type { Plan, ScriptLine } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";
import { changeList } from "../select/changes.ts";

type Message = "unsaid" | "late" | "paused" | "loose";

const second = (text: string, kind: ScriptLine["kind"] = "setup") =>
  exampleMove("b", { springs: { light: 2 }, script: [{ kind, text }] });

/**
 * Must fix while a spring is on and the move before may leave the carriage out: a carriage that runs, or a spring that
 * snaps back, hurts hands and feet. After a pause, or with no spring on, it is worth another look.
 */
export const springsChangedCarriageOut = defineRule({
  id: "springs-changed-carriage-out",
  reads: "change",
  title: "Springs are changed before the carriage is called home",
  why: "A spring hooked on or off while the carriage is out can snap back or let the carriage run onto hands and feet; the machine maker's manual comes first.",
  fix: 'Say "carriage home" in the set-up, before the springs.',
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({}),
  messages: {
    late: '{itemName}: the set-up tells people to {changes} before it says "carriage home". Say that first.',
    unsaid: '{itemName}: people {changes}, and no line says "carriage home". Say it before the springs.',
    paused: '{itemName}: people {changes} after a pause. Say "carriage home" first, in case it is still out.',
    loose: '{itemName}: people {changes}, and no spring held the carriage before. Say "carriage home" first.',
  },
  check({ plan, steps }) {
    return steps.flatMap((step): Found<Message>[] => {
      if (!step.before || !step.actions.carriageHome || step.carriage === "home") return [];
      const { row, heard } = changeTold(plan, step);
      const said = !row.missing.some(({ act }) => act === "carriage-home");
      const isLate = heard.some(({ act, early }) => act.act.startsWith("spring") && early?.includes("carriage-home"));
      if (said ? !isLate : isSaidLater(plan, step)) return [];
      const values = {
        itemName: itemName(plan, step.item),
        changes: changeList(plan, step, ["spring-off", "spring-on"]),
      };
      const held = Object.values(step.before.setup.springs).some((count) => count > 0);
      const found = { items: [step.item.id], values };
      const level = held && step.carriage === "out" ? {} : { level: "look" as const };
      if (said) return [{ message: "late", ...found, ...level }];
      return [{ message: !held ? "loose" : step.carriage === "out" ? "unsaid" : "paused", ...found, ...level }];
    });
  },
});

export const springsChangedCarriageOutExamples = (): RuleExamples => ({ pass: passes(), fail: failures() });

const passes = (): RuleExamples["pass"] => [
  { say: "the set-up says it", plan: examplePlan([exampleMove("a"), second("Carriage home. Two light.")]) },
  {
    say: "in other words",
    plan: examplePlan([exampleMove("a"), second("Bring it all the way in, then two light.")]),
  },
  {
    say: "the springs come after it",
    plan: examplePlan([exampleMove("a"), second("Two light once the carriage is home.")]),
  },
  { say: "the springs stay", plan: examplePlan([exampleMove("a"), exampleMove("b", { script: [] })]) },
  {
    say: "the move before never took the carriage out",
    plan: examplePlan([exampleMove("a"), second("Two light.")], {
      moves: { squat: { ...exampleMoves.squat, travelMm: [0, 0] } },
    }),
  },
  {
    say: "the pause says it",
    plan: examplePlan([
      exampleMove("a"),
      { id: "p", kind: "pause", seconds: 20, text: "Carriages in, drink." },
      second("Two light."),
    ]),
  },
];

const failures = (): RuleExamples["fail"] => [
  {
    say: "only the springs are named",
    plan: examplePlan([exampleMove("a"), second("{springs}.")]),
    expect: ["unsaid"],
  },
  {
    say: "a line about sliding in and out does not count",
    plan: examplePlan([exampleMove("a"), second("Slide the carriage in and out.", "start")]),
    expect: ["unsaid"],
  },
  {
    say: "the springs come first",
    plan: examplePlan([exampleMove("a"), second("Two light on, then the carriage home.")]),
    expect: ["late"],
  },
  {
    say: "a pause in between",
    plan: examplePlan([
      exampleMove("a"),
      { id: "p", kind: "pause", seconds: 20, text: "Drink." },
      second("Two light."),
    ]),
    expect: ["paused"],
  },
  {
    say: "no spring was on",
    plan: examplePlan([exampleMove("a", { springs: {} }), second("Two light.")]),
    expect: ["loose"],
  },
];

/** A start or safety line that names the carriage: "Carriage home before you change." */
const isSaidLater = (plan: Plan, step: SetupStep): boolean =>
  (step.item.script ?? []).some(
    (line) =>
      (line.kind === "start" || line.kind === "safety") &&
      toldIn(plan, step, line).some(({ act, said }) => act.act === "carriage-home" && /carriage/i.test(said)),
  );

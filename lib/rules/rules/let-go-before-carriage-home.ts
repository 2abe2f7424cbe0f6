import { letGoEarly } from "#lib/acts/told-lines.ts";
import { itemName } from "#lib/plan/format.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

const afterPress = (text: string, moves: Partial<typeof exampleMoves> = {}) =>
  examplePlan(
    [
      exampleMove("a", { move: "press" }),
      exampleMove("b", { move: "plank", springs: { light: 2 }, script: [{ kind: "setup", text }] }),
    ],
    { moves: { ...exampleMoves, ...moves } },
  );
const cuffed = { ...exampleMoves.squat, feet: "cable-strap" as const };

/** Never "must fix": where feet bring the carriage home, the hands may let go first. */
export const letGoBeforeCarriageHome = defineRule({
  id: "let-go-before-carriage-home",
  reads: "change",
  title: "People are told to let go before the carriage is home",
  why: "Handles and cable straps hold an open carriage against its springs. Let go, and it runs in on its own, onto whoever is in its way.",
  fix: 'Say "carriage home" first, then what to put down or step out of.',
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({}),
  messages: {
    early:
      '{itemName}: the set-up says "{early}" before "carriage home", so an open carriage runs in. Say "carriage home" first.',
  },
  check({ plan, steps }) {
    return steps.flatMap((step): Found<"early">[] => {
      const early = letGoEarly(plan, step);
      if (early === null) return [];
      return [{ message: "early", items: [step.item.id], values: { itemName: itemName(plan, step.item), early } }];
    });
  },
});

export const letGoBeforeCarriageHomeExamples = (): RuleExamples => ({
  pass: [
    { say: "the carriage first", plan: afterPress("Carriage home, handles down, two light.") },
    { say: "the handles wait for it", plan: afterPress("Handles down once the carriage is home, two light.") },
    {
      say: "the move before never took the carriage out",
      plan: afterPress("Handles down, carriage home, two light.", {
        press: { ...exampleMoves.press, travelMm: [0, 0] } as typeof exampleMoves.press,
      }),
    },
  ],
  fail: [
    {
      say: "the handles first",
      plan: afterPress("Put the handles down, carriage home, two light."),
      expect: ["early"],
    },
    {
      say: "the foot first",
      plan: examplePlan(
        [
          exampleMove("a", { move: "cuffed" }),
          exampleMove("b", {
            springs: { light: 2 },
            script: [{ kind: "setup", text: "Foot out of the strap. Carriage home, two light." }],
          }),
        ],
        { moves: { ...exampleMoves, cuffed } },
      ),
      expect: ["early"],
    },
  ],
});

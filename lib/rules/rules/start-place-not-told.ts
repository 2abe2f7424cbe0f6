import { movedMm } from "#lib/acts/act-words.ts";
import { itemName, offsetWords } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, wholeLimit } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";
import { saidIn, saidInPauses, tellsPlace } from "../select/told.ts";

const setup = (text: string) => ({ script: [{ kind: "setup" as const, text }] });

export const startPlaceNotTold = defineRule({
  id: "start-place-not-told",
  reads: "change",
  title: "People start from another place and the set-up does not say it",
  why: "Whoever stays where they were feels another load than the one you chose, on the same springs.",
  fix: "Say in the set-up line how much nearer or further people start.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    leastMm: wholeLimit({
      from: 1,
      to: 400,
      usual: 20,
      says: "Smallest change of the starting place that must be told, mm",
    }),
  }),
  messages: {
    moved: "{itemName}: started {place} than what is before it, and no set-up line says from where; say it.",
    back: "{itemName}: back at the usual place, and no set-up line says so, so people stay where they are; say it.",
    first: "{itemName}: started {place} than usual, and no set-up line says from where; say it.",
  },
  check({ plan, steps }, { leastMm }) {
    return steps.flatMap((step): Found<Message>[] => {
      const by = movedMm(step.before?.item, step.item);
      if (!Number.isFinite(by) || Math.abs(by) < leastMm || isTold(plan, step)) return [];
      return [
        {
          message: messageOf(step),
          items: [step.item.id],
          values: { itemName: itemName(plan, step.item), place: offsetWords(by), byMm: by },
        },
      ];
    });
  },
});

export const startPlaceNotToldExamples = (): RuleExamples => ({
  pass: [
    {
      say: "told in words",
      plan: examplePlan([exampleMove("a"), exampleMove("b", { offsetMm: 80, ...setup("Sit a hand further back.") })]),
    },
    {
      say: "two sides of one place",
      plan: examplePlan([
        exampleMove("a", { offsetMm: 80, ...setup("8 cm out.") }),
        exampleMove("b", { offsetMm: 80 }),
      ]),
    },
    { say: "a centimetre nobody can tell", plan: examplePlan([exampleMove("a"), exampleMove("b", { offsetMm: 10 })]) },
  ],
  fail: [
    {
      say: "further away, and the line speaks of the feet",
      plan: examplePlan([exampleMove("a"), exampleMove("b", { offsetMm: 80, ...setup("Feet wide.") })]),
      expect: ["moved"],
    },
    {
      say: "back again without a word",
      plan: examplePlan([exampleMove("a", { offsetMm: 80, ...setup("8 cm out.") }), exampleMove("b")]),
      expect: ["back"],
    },
    { say: "the very first move", plan: examplePlan([exampleMove("a", { offsetMm: -60 })]), expect: ["first"] },
  ],
});

type Message = "moved" | "back" | "first";

function messageOf({ before, item }: SetupStep): Message {
  if (before === null) return "first";
  return (item.offsetMm ?? 0) === 0 ? "back" : "moved";
}

/** By a set-up line, or by a pause before the move. */
const isTold = (plan: Plan, step: SetupStep): boolean =>
  tellsPlace(`${saidInPauses(plan, step)}|${saidIn(plan, step.item, ["setup"])}`);

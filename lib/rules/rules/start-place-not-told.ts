import { movedMm } from "#lib/acts/act-words.ts";
import { isPlaceTold } from "#lib/acts/told-lines.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { offsetWords } from "#lib/formats/units.ts";
import { itemName } from "#lib/plan/format.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

const setup = (text: string) => ({ script: [{ kind: "setup" as const, text }] });

export const startPlaceNotTold = defineRule({
  id: "start-place-not-told",
  reads: "change",
  title: "A new starting place that the set-up does not mention",
  why: "People who stay where they were feel another load than the one you chose, on the same springs.",
  fix: "Say in the set-up line how much nearer or further away people start.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    leastMm: numberLimit({
      from: 1,
      to: 400,
      usual: 20,
      says: "Smallest change of the starting place that must be mentioned",
    }),
  }),
  messages: {
    moved: "{itemName}: people start {place:place} than before, and no set-up line says so. Say from where.",
    back: "{itemName}: people start from the usual place again, and no set-up line says so. Say it, or they stay where they are.",
    first: "{itemName}: people start {place:place} than usual, and no set-up line says so. Say from where.",
  },
  check({ plan, steps }, { leastMm }) {
    return steps.flatMap((step): Found<Message>[] => {
      const by = movedMm(step.before?.item, step.item);
      if (!Number.isFinite(by) || Math.abs(by) < leastMm || isPlaceTold(step)) return [];
      return [
        {
          message: messageOf(step),
          items: [step.item.id],
          values: { itemName: itemName(plan, step.item), place: offsetWords(by, STANDARD_FORMATS), byMm: by },
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
      say: "both sides from the same place",
      plan: examplePlan([
        exampleMove("a", { offsetMm: 80, ...setup("8 cm out.") }),
        exampleMove("b", { offsetMm: 80 }),
      ]),
    },
    {
      say: "one centimetre, which nobody notices",
      plan: examplePlan([exampleMove("a"), exampleMove("b", { offsetMm: 10 })]),
    },
  ],
  fail: [
    {
      say: "further away, and the line speaks of the feet",
      plan: examplePlan([exampleMove("a"), exampleMove("b", { offsetMm: 80, ...setup("Feet wide.") })]),
      expect: ["moved"],
    },
    {
      say: "back to the usual place, and no line says so",
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

import { itemName, tagWords } from "#lib/plan/format.ts";
import { MOVE_CAUTIONS } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan, fullScript } from "../define/example-plan.ts";
import { choicesLimit, limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";
import { cautionedMoves } from "../select/cautions.ts";

const plank = { move: "plank", script: fullScript.filter((line) => line.kind !== "easier") };

export const cautionWithoutEasier = defineRule({
  id: "caution-without-easier",
  reads: "item",
  title: "A move that asks for care offers no easier way",
  why: "People who cannot do the move as shown stop, or do it badly.",
  fix: "Write a line that offers the easier way.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    cautions: choicesLimit({
      of: MOVE_CAUTIONS,
      usual: [...MOVE_CAUTIONS],
      says: "Cautions that call for an easier way",
    }),
  }),
  messages: {
    unsaid: "{itemName}: care is asked for ({cautions}) and no easier way is said; the library has one: “{easier}”.",
    unknown: "{itemName}: care is asked for ({cautions}) and there is no easier way; write one, for the library too.",
  },
  check(ctx, { cautions }) {
    return cautionedMoves(ctx, cautions).flatMap(({ placed, tags, saysEasier }): Found<"unsaid" | "unknown">[] => {
      if (saysEasier) return [];
      const values = { itemName: itemName(ctx.plan, placed.item), cautions: tags.map(tagWords) };
      const items = [placed.item.id];
      // Quoted in a sentence that has its own full stop.
      const easier = placed.move?.easier?.[0]?.replace(/[.\s]+$/u, "");
      return easier === undefined
        ? [{ message: "unknown", items, values }]
        : [{ message: "unsaid", items, values: { ...values, easier } }];
    });
  },
});

export const cautionWithoutEasierExamples = (): RuleExamples => ({
  pass: [
    { say: "the easier way is said", plan: examplePlan([exampleMove("a", { move: "plank" })]) },
    { say: "a move without cautions", plan: examplePlan([exampleMove("a", { script: plank.script })]) },
  ],
  fail: [
    { say: "nobody knows an easier way", plan: examplePlan([exampleMove("a", plank)]), expect: ["unknown"] },
    {
      say: "the library knows one, the script does not say it",
      plan: examplePlan([exampleMove("a", plank)], {
        moves: { plank: { ...exampleMoves.plank, easier: ["Drop to the forearms."] } },
      }),
      expect: ["unsaid"],
    },
  ],
});

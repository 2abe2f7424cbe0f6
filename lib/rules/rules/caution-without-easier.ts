import { concernsOf } from "#lib/cautions/concern.ts";
import { itemName, tagWords } from "#lib/plan/format.ts";
import { moveOf } from "#lib/plan/lookup.ts";
import { MOVE_CAUTIONS } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan, fullScript } from "../define/example-plan.ts";
import { choicesLimit, limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";
import { AskedOnce } from "../select/asked-once.ts";

const plank = { move: "plank", script: fullScript.filter((line) => line.kind !== "easier") };

/** A move that lacks an easier way is asked about once, and a caution once in a block. */
const WHOLE_CLASS = { block: -1 };

export const cautionWithoutEasier = defineRule({
  id: "caution-without-easier",
  reads: "kinds",
  title: "No easier way for a move that needs care",
  why: "People who cannot do the move as shown stop, or do it badly.",
  fix: "Add an easier line that says what to do instead; the other side and repeats need not hear it again.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    cautions: choicesLimit({
      of: MOVE_CAUTIONS,
      usual: [...MOVE_CAUTIONS],
      says: "Cautions that need an easier way",
    }),
  }),
  messages: {
    unsaid: "{itemName}: no easier line, and the move needs care ({cautions}). Add the library's: “{easier}”.",
    unknown: "{itemName}: no easier line, and the move needs care ({cautions}). Write one, here and in the library.",
  },
  check({ plan }, { cautions }) {
    const asked = new AskedOnce<string>();
    return concernsOf(plan, cautions).flatMap((concern): Found<"unsaid" | "unknown">[] => {
      const { item } = concern;
      if (concern.saysEasier || asked.first(WHOLE_CLASS, [item.move]).length === 0) return [];
      const open = asked.first(concern, concern.tags);
      if (open.length === 0) return [];
      const values = { itemName: itemName(plan, item), cautions: open.map(tagWords) };
      const items = [item.id];
      // The sentence that quotes it has a full stop of its own.
      const easier = moveOf(plan, item)?.easier?.[0]?.replace(/[.\s]+$/u, "");
      return easier === undefined
        ? [{ message: "unknown", items, values }]
        : [{ message: "unsaid", items, values: { ...values, easier } }];
    });
  },
});

export const cautionWithoutEasierExamples = (): RuleExamples => ({
  pass: [
    { say: "an easier line is there", plan: examplePlan([exampleMove("a", { move: "plank" })]) },
    { say: "a move without cautions", plan: examplePlan([exampleMove("a", { script: plank.script })]) },
    {
      say: "the second side has the first one's easier way",
      plan: examplePlan([exampleMove("a", { move: "plank" }), exampleMove("b", plank)]),
    },
  ],
  fail: [
    {
      say: "neither the script nor the library has an easier way",
      plan: examplePlan([exampleMove("a", plank)]),
      expect: ["unknown"],
    },
    {
      say: "the library has one, and the script does not say it",
      plan: examplePlan([exampleMove("a", plank)], {
        moves: { plank: { ...exampleMoves.plank, easier: ["Drop to the forearms."] } },
      }),
      expect: ["unsaid"],
    },
  ],
});

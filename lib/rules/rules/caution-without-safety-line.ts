import { itemName, tagWords } from "#lib/plan/format.ts";
import { MOVE_CAUTIONS } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { choicesLimit, limits, yesNoLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";
import type { CautionedMove } from "../select/cautions.ts";
import { cautionedMoves } from "../select/cautions.ts";

const unsafe = fullScript.filter((line) => line.kind !== "safety");
const plank = { move: "plank", script: unsafe };

/** Must: a warning left out is the one omission that can hurt somebody. */
export const cautionWithoutSafetyLine = defineRule({
  id: "caution-without-safety-line",
  reads: "change",
  title: "No safety line for a move that needs care",
  why: "People who should hold back are not warned before they are in the move, and can be hurt.",
  fix: "Write a safety line that says what to watch for and when to stop; the machine maker's manual and a participant's clinician come first.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({
    cautions: choicesLimit({
      of: MOVE_CAUTIONS,
      usual: [...MOVE_CAUTIONS],
      says: "Cautions that need a safety line",
    }),
    onceForBothSides: yesNoLimit({
      usual: false,
      says: "A line on one side is enough if the other side follows at once",
    }),
  }),
  messages: {
    unsaid:
      "{itemName}: no safety line, and the move needs care ({cautions}). Write what to watch for and when to stop.",
  },
  check(ctx, { cautions, onceForBothSides }) {
    const cautioned = cautionedMoves(ctx, cautions);
    return cautioned.flatMap((found) => {
      const { placed, tags, saysSafety } = found;
      if (saysSafety || (onceForBothSides && saidOnOtherSide(found, cautioned))) return [];
      const values = { itemName: itemName(ctx.plan, placed.item), cautions: tags.map(tagWords) };
      return [{ message: "unsaid" as const, items: [placed.item.id], values }];
    });
  },
});

export const cautionWithoutSafetyLineExamples = (): RuleExamples => ({
  pass: [
    { say: "a plank with its safety line", plan: examplePlan([exampleMove("a", { move: "plank" })]) },
    { say: "a move without cautions", plan: examplePlan([exampleMove("a", { script: unsafe })]) },
  ],
  fail: [
    { say: "wrist load and no safety line", plan: examplePlan([exampleMove("a", plank)]), expect: ["unsaid"] },
    {
      say: "a safety line with no words in it",
      plan: examplePlan([exampleMove("a", { ...plank, script: [...unsafe, { kind: "safety", text: "  " }] })]),
      expect: ["unsaid"],
    },
  ],
});

function saidOnOtherSide({ placed: { item, index } }: CautionedMove, all: readonly CautionedMove[]): boolean {
  const before = all.find((other) => other.placed.index === index - 1);
  return before !== undefined && before.placed.item.move === item.move && before.saysSafety;
}

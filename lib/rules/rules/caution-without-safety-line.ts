import { type Concern, concernsOf } from "#lib/cautions/concern.ts";
import { itemName, tagWords } from "#lib/plan/format.ts";
import { MOVE_CAUTIONS, type MoveCaution, type Plan } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { choicesLimit, limits, wordsLimit, yesNoLimit } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";
import { AskedOnce } from "../select/asked-once.ts";

const unsafe = fullScript.filter((line) => line.kind !== "safety");
const plank = { move: "plank", script: unsafe };
const plankSaying = (text: string) => exampleMove("a", { ...plank, script: [...unsafe, { kind: "safety", text }] });
const heading = { id: "h", kind: "heading", title: "Planks" } as const;

/**
 * Must: a warning left out is the one omission that can hurt somebody. Look where the class has warned of it under another
 * heading, where an easier or breath line answers it, or where the safety line speaks of another caution of the move.
 */
export const cautionWithoutSafetyLine = defineRule({
  id: "caution-without-safety-line",
  reads: "kinds",
  title: "No safety line for a move that needs care",
  why: "People who should hold back are not warned before they are in the move, and can be hurt.",
  fix: "Write a safety line that names the joint or the posture, or what to do instead, once in each block; the machine maker's manual and a participant's clinician come first.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({
    cautions: choicesLimit({
      of: MOVE_CAUTIONS,
      usual: [...MOVE_CAUTIONS],
      says: "Cautions that need a safety line",
    }),
    onceForBothSides: yesNoLimit({
      usual: true,
      says: "A safety line counts for its whole block: the other side, repeats, and other moves with the same caution",
    }),
    moreWords: wordsLimit({
      of: MOVE_CAUTIONS,
      says: "The studio's own words for a caution, besides those that every studio has",
    }),
  }),
  messages: {
    unsaid:
      "{itemName}: no safety line, and the move needs care ({cautions}). Write what to watch for and when to stop.",
    besides: "{itemName}: the safety line says nothing of {cautions}. Say what to watch for, or what to do instead.",
  },
  check({ plan }, { cautions, moreWords, onceForBothSides: wholeBlock }) {
    const asked = new AskedOnce<MoveCaution>();
    return concernsOf(plan, cautions, { moreWords, wholeBlock }).flatMap((concern): Found<"unsaid" | "besides">[] => {
      const { item, hasSafetyLine } = concern;
      const open = asked.first(concern, missingIn(concern));
      if (open.length === 0 && concern.saysNothing) return [saysNothing(plan, concern)];
      if (open.length === 0) return [];
      const values = { itemName: itemName(plan, item), cautions: open.map(tagWords) };
      const level = open.every((caution) => concern.hinted.includes(caution)) || speaksAtAll(concern) ? "look" : "must";
      return [{ message: hasSafetyLine ? "besides" : "unsaid", items: [item.id], level, values }];
    });
  },
});

export const cautionWithoutSafetyLineExamples = (): RuleExamples => ({ pass: passes(), fail: failures() });

const passes = (): RuleExamples["pass"] => [
  { say: "a plank with its safety line", plan: examplePlan([exampleMove("a", { move: "plank" })]) },
  { say: "a move without cautions", plan: examplePlan([exampleMove("a", { script: unsafe })]) },
  {
    say: "said once under a heading, for the moves after it too",
    plan: examplePlan([heading, exampleMove("a", { move: "plank" }), exampleMove("b"), exampleMove("c", plank)]),
  },
  {
    say: "the second side hears what the first was told",
    plan: examplePlan([plankSaying("Fists are fine."), exampleMove("b", plank)]),
  },
  {
    say: "a word of the studio's own",
    plan: examplePlan([plankSaying("Take the wedge.")], {
      standards: { "caution-without-safety-line": { limits: { moreWords: { "wrist-load": ["wedge*"] } } } },
    }),
  },
];

const failures = (): RuleExamples["fail"] => [
  { say: "wrist load and no safety line", plan: examplePlan([exampleMove("a", plank)]), expect: ["unsaid"] },
  {
    say: "a safety line with no words in it",
    plan: examplePlan([exampleMove("a", { ...plank, script: [...unsafe, { kind: "safety", text: "  " }] })]),
    expect: ["unsaid"],
  },
  {
    say: "a line that would suit any move",
    plan: examplePlan([plankSaying("Enjoy this one.")]),
    expect: ["besides"],
  },
  {
    say: "when to stop, which is true of every move",
    plan: examplePlan([plankSaying("If anything hurts, stop.")]),
    expect: ["besides"],
  },
  {
    say: "a studio that wants a line with every move",
    plan: examplePlan([exampleMove("a", { move: "plank" }), exampleMove("b", plank)], {
      standards: { "caution-without-safety-line": { limits: { onceForBothSides: false } } },
    }),
    expect: ["unsaid"],
  },
  {
    say: "asked once under a heading",
    plan: examplePlan([heading, exampleMove("a", plank), exampleMove("b"), exampleMove("c", plank)]),
    expect: ["unsaid"],
  },
];

/** Half a warning is looked at again; none at all must be fixed. */
const speaksAtAll = ({ hasSafetyLine, isWarned }: Concern): boolean => hasSafetyLine && isWarned;

/** The block was warned, but a safety line that would suit any move takes the place of one that helps. */
const saysNothing = (plan: Plan, { item, tags }: Concern): Found<"besides"> => ({
  ...{ message: "besides", items: [item.id], level: "look" },
  values: { itemName: itemName(plan, item), cautions: tags.map(tagWords) },
});

/** A caution that another line of a move with a safety line answers is left alone. */
const missingIn = ({ unwarned, hinted, isWarned }: Concern): readonly MoveCaution[] =>
  isWarned ? unwarned.filter((caution) => !hinted.includes(caution)) : unwarned;

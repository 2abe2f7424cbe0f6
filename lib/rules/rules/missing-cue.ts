import { blockNumbers } from "#lib/plan/blocks.ts";
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import { itemName } from "#lib/plan/format.ts";
import { hasLineOf } from "#lib/plan/lookup.ts";
import { CUE_KINDS, type CueKind } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { bothSides, exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { choicesLimit, limits } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";
import { AskedOnce } from "../select/asked-once.ts";

/** The kinds of line as the finding names them. */
const MISSING_WORDS: Readonly<Record<CueKind, string>> = {
  ...KIND_WORDS,
  easier: "easier way",
  harder: "harder way",
};

/** Kinds that the second side and a repeat in the same block need not hear again. */
const SAID_ONCE: readonly CueKind[] = ["breath", "form", "focus", "easier", "harder", "safety"];

export const missingCue = defineRule({
  id: "missing-cue",
  reads: "kinds",
  title: "A cue line is missing",
  why: "What is not written gets left out on the floor, where there is no time to look for words.",
  fix: "Write the missing lines into the item's script.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    requiredKinds: choicesLimit({ of: CUE_KINDS, usual: ["setup", "breath"], says: "Kinds of line every move needs" }),
  }),
  messages: {
    missing:
      "{itemName}: no line for {missing}. Write what is missing, so that nobody has to look for words on the floor.",
  },
  check({ plan, moves }, { requiredKinds }) {
    const required = CUE_KINDS.filter((kind) => requiredKinds.includes(kind));
    const blocks = blockNumbers(plan.items);
    const asked = new AskedOnce<string>();
    return moves.flatMap(({ item, index }) => {
      // Said or asked for, it counts for the move's other side and its repeats.
      const at = { block: blocks[index] ?? 0 };
      const kinds = required.filter((kind) => {
        if (!SAID_ONCE.includes(kind)) return !hasLineOf(item, kind);
        return asked.first(at, [`${item.move} ${kind}`]).length > 0 && !hasLineOf(item, kind);
      });
      if (kinds.length === 0) return [];
      const values = { itemName: itemName(plan, item), missing: kinds.map((kind) => MISSING_WORDS[kind]), kinds };
      return [{ message: "missing" as const, items: [item.id], values }];
    });
  },
});

export const missingCueExamples = (): RuleExamples => ({
  pass: [
    { say: "set-up and breath are there", plan: examplePlan([exampleMove("a", { script: fullScript.slice(0, 2) })]) },
    {
      say: "the second side was told how to breathe on the first",
      plan: examplePlan(bothSides("row", {}, { script: fullScript.slice(0, 1) })),
    },
    {
      say: "a studio that asks for no lines",
      plan: examplePlan([exampleMove("a", { script: [] })], {
        standards: { "missing-cue": { limits: { requiredKinds: [] } } },
      }),
    },
  ],
  fail: [
    { say: "no script at all", plan: examplePlan([exampleMove("a", { script: [] })]), expect: ["missing"] },
    {
      say: "no breath",
      plan: examplePlan([exampleMove("a", { script: fullScript.slice(0, 1) })]),
      expect: ["missing"],
    },
    {
      say: "no breath on either side, asked for once",
      plan: examplePlan(bothSides("row", { script: fullScript.slice(0, 1) }, { script: fullScript.slice(0, 1) })),
      expect: ["missing"],
    },
    {
      say: "no set-up on the second side, which has to be told",
      plan: examplePlan(bothSides("row", {}, { script: fullScript.slice(1) })),
      expect: ["missing"],
    },
  ],
});

import { readOut } from "#lib/acts/act-words.ts";
import { itemName } from "#lib/plan/format.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

const setup = (...texts: string[]) =>
  exampleMove("a", { script: texts.map((text) => ({ kind: "setup" as const, text })) });

/** Happens when two people take the same offered line at the same moment. */
export const setupLineTwice = defineRule({
  id: "setup-line-twice",
  reads: "item",
  title: "A set-up line is there twice",
  why: "People who hear a set-up again look for what has changed, and do it twice or not at all.",
  fix: "Take one of the two lines out.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({}),
  messages: { twice: '{itemName}: the set-up says "{text}" {times} times. Once is enough: take the rest out.' },
  check({ plan, moves }) {
    return moves.flatMap(({ item }) =>
      [...timesSaid(item)]
        .filter(([, times]) => times > 1)
        .map(([line, times]): Found<"twice"> => {
          const text = readOut(plan, item, line);
          return {
            message: "twice",
            items: [item.id],
            values: { itemName: itemName(plan, item), text, times },
            about: line,
          };
        }),
    );
  },
});

export const setupLineTwiceExamples = (): RuleExamples => ({
  pass: [
    { say: "two lines of other words", plan: examplePlan([setup("Carriage home.", "Two light.")]) },
    {
      say: "a breath may be said again",
      plan: examplePlan([
        exampleMove("a", {
          script: [
            { kind: "breath", text: "Out." },
            { kind: "breath", text: "Out." },
          ],
        }),
      ]),
    },
  ],
  fail: [
    { say: "put in twice", plan: examplePlan([setup("{springs}.", "{springs}.")]), expect: ["twice"] },
    {
      say: "again, further down",
      plan: examplePlan([setup("Kneel.", "Face the back.", "Kneel.")]),
      expect: ["twice"],
    },
  ],
});

/** Each set-up line that has words, with how often it is there. */
function timesSaid(item: MoveItem): Map<string, number> {
  const times = new Map<string, number>();
  for (const { kind, text } of item.script ?? []) {
    const said = text.trim();
    if (kind === "setup" && said !== "") times.set(said, (times.get(said) ?? 0) + 1);
  }
  return times;
}

import { type Concern, concernsOf, isAnswered } from "#lib/cautions/concern.ts";
import { EXPECTED_GUIDANCE, EXPECTED_SOURCES } from "#lib/cautions/expected.ts";
import { moveName, plural, tagWords } from "#lib/plan/format.ts";
import { EXPECTED_CAUTIONS, MOVE_CAUTIONS, type MoveCaution } from "#lib/plan/schema.ts";
import { defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { choicesLimit, limits, wordsLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

const without = (kind: "safety" | "easier") => fullScript.filter((line) => line.kind !== kind);

export const expectedCautionUnanswered = defineRule({
  id: "expected-caution-unanswered",
  reads: "kinds",
  title: "Nothing is said for somebody who is expected",
  why: "People who are known to be coming meet a move that concerns them, with no warning or nothing else to do.",
  fix: "Say in the script what to watch for and what to do instead, or choose another move; their clinician's advice comes first.",
  level: "look",
  source: EXPECTED_SOURCES,
  limits: limits({
    conditions: choicesLimit({
      of: EXPECTED_CAUTIONS,
      usual: [...EXPECTED_CAUTIONS],
      says: "Conditions that are checked",
    }),
    moreWords: wordsLimit({
      of: MOVE_CAUTIONS,
      says: "The studio's own words for a caution, besides those that every studio has",
    }),
  }),
  messages: {
    unanswered:
      "For {people}: {lack} is missing from {moves} ({cautions}). Say what to watch for and what to do instead.",
  },
  check(ctx, { conditions, moreWords }) {
    const expected = ctx.plan.expected ?? [];
    return EXPECTED_GUIDANCE.flatMap(({ condition, people, concerns, source }) => {
      if (!expected.includes(condition) || !conditions.includes(condition)) return [];
      const open = concernsOf(ctx.plan, concerns, { moreWords }).filter((found) => !isAnswered(found));
      if (open.length === 0) return [];
      const values = {
        people,
        condition,
        moves: namesOf(ctx.plan, open),
        cautions: concerns.filter((tag) => open.some((found) => lacks(found, tag))).map(tagWords),
        lack: lackOf(open),
        source,
      };
      return [{ message: "unanswered" as const, about: condition, items: open.map((found) => found.item.id), values }];
    });
  },
});

export const expectedCautionUnansweredExamples = (): RuleExamples => ({
  pass: [
    {
      say: "wrist pain is expected, and the plank says what to watch for and what to do instead",
      plan: examplePlan([exampleMove("a", { move: "plank" })], { expected: ["wrist-pain"] }),
    },
    {
      say: "knee pain is expected, and nobody kneels",
      plan: examplePlan([exampleMove("a", { move: "plank", script: [] })], { expected: ["knee-pain"] }),
    },
  ],
  fail: [
    {
      say: "wrist pain, and no easier line",
      plan: examplePlan([exampleMove("a", { move: "plank", script: without("easier") })], { expected: ["wrist-pain"] }),
      expect: ["unanswered"],
    },
    {
      say: "recent surgery, for which every caution counts",
      plan: examplePlan([exampleMove("a", { move: "plank", script: without("safety") })], {
        expected: ["recent-surgery"],
      }),
      expect: ["unanswered"],
    },
  ],
});

/** At most three names, since the finding marks every item anyway. */
function namesOf(plan: Parameters<typeof moveName>[0], open: readonly Concern[]): string[] {
  const names = [...new Set(open.map((found) => moveName(plan, found.item)))];
  return names.length <= 3 ? names : [...names.slice(0, 2), plural(names.length - 2, "more move")];
}

const lacks = ({ tags, unwarned, saysEasier }: Concern, tag: MoveCaution): boolean =>
  saysEasier ? unwarned.includes(tag) : tags.includes(tag);

function lackOf(open: readonly Concern[]): string {
  const safety = open.some((found) => found.unwarned.length > 0);
  const easier = open.some((found) => !found.saysEasier);
  if (safety && easier) return "a safety line or an easier line";
  return safety ? "a safety line" : "an easier line";
}

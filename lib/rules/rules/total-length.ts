import { freeSeconds } from "#lib/clock/length-words.ts";
import { moreMoves, moreMovesWords } from "#lib/fit/more-moves.ts";
import { headSeconds } from "#lib/plan/lookup.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit, openLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

const squat = (seconds: number) => examplePlan([exampleMove("a", { seconds })], { lengthSeconds: 300 });

/** Must fix: a class that overruns takes the next one's time, and one that ends early leaves people standing. */
export const totalLength = defineRule({
  id: "total-length",
  reads: "times",
  title: "The class does not end on time",
  why: "A class that runs over takes time from the next one, and one that ends early leaves people standing.",
  fix: "Add moves if it is half-written; otherwise fit the items to the length, or plan other times for the changes, the opening or the closing.",
  level: "must",
  source: COMMON_PRACTICE,
  limits: limits({
    maxOverSeconds: numberLimit({ from: 0, to: 600, usual: 0, says: "Most that a class may run over" }),
    maxUnderSeconds: openLimit({
      from: 0,
      to: 3600,
      says: "How much of its length may stay unplanned; left empty: one second less than the plan's grid",
    }),
  }),
  messages: {
    over: "The class takes {totalSeconds} and its slot is {lengthSeconds}. Take {overSeconds} out.",
    under: "The class takes {totalSeconds} and its slot is {lengthSeconds}. Plan {underSeconds} more.",
    unwritten:
      "The class takes {totalSeconds} and its slot is {lengthSeconds}, which leaves {underSeconds} free. Add {moreMovesWords}.",
  },
  check({ plan, rows, total }, limits) {
    const { lengthSeconds } = plan;
    const over = total - lengthSeconds;
    const allowedUnder = limits.maxUnderSeconds ?? headSeconds(plan, "gridSeconds") - 1;
    const free = freeSeconds(total, lengthSeconds);
    const values = { totalSeconds: total, lengthSeconds };
    if (over > limits.maxOverSeconds)
      return [{ message: "over", items: [], values: { ...values, overSeconds: -free } }];
    if (-over <= allowedUnder) return [];
    const under = { ...values, underSeconds: free };
    const more = moreMoves(plan, { rows, total });
    if (more === 0) return [{ message: "under", items: [], values: under }];
    const said = { moreMoves: more, moreMovesWords: moreMovesWords(more) };
    return [{ message: "unwritten", items: [], values: { ...under, ...said } }];
  },
});

export const totalLengthExamples = (): RuleExamples => ({
  pass: [
    { say: "opening, 180 s of work and closing fill the five minutes", plan: squat(180) },
    { say: "four seconds that a grid of five leaves go to the closing", plan: squat(176) },
  ],
  fail: [
    { say: "one second too long", plan: squat(181), expect: ["over"] },
    { say: "five seconds that are not planned", plan: squat(175), expect: ["under"] },
    { say: "half-written: one minute of work in five", plan: squat(60), expect: ["unwritten"] },
  ],
});

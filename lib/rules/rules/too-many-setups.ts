import { NOISE, tenth } from "#lib/numbers/round.ts";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, RuleContext, RuleExamples } from "../define/types.ts";

const TEN_MINUTES = 600;

const springsTurnAbout = (count: number) =>
  examplePlan(Array.from({ length: count }, (_, i) => exampleMove(`m-${i}`, { springs: { light: 1 + (i % 2) } })));
const slow = (transitionSeconds: number) =>
  examplePlan([exampleMove("a"), exampleMove("b", { transitionSeconds }), exampleMove("c", { transitionSeconds })]);

export const tooManySetups = defineRule({
  id: "too-many-setups",
  reads: "times",
  title: "Too much of the class goes into changes",
  why: "People come to train: every spring change lets them cool down and is one more thing to get wrong.",
  fix: "Put moves on the same springs next to each other; 'Fewer set-ups' on a block finds the best order.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    maxInTenMinutesCount: numberLimit({
      from: 0,
      to: 60,
      usual: 4,
      says: "Most spring changes in ten minutes of class, opening and closing left out",
    }),
    allowedAnywayCount: numberLimit({
      from: 0,
      to: 60,
      usual: 3,
      says: "This many are never too many, however short the class",
    }),
    maxTimeShare: numberLimit({
      from: 0,
      to: 1,
      usual: 0.25,
      says: "Largest share of the time between opening and closing that changes may take",
    }),
  }),
  messages: {
    springs:
      "Spring changes in {classSeconds}: {changes}, and the limit is {most}. Put moves on the same springs together.",
    time: "Changes take {changeSeconds} of the {classSeconds} between opening and closing: {share}, and the limit is {maxShare}. Plan fewer changes.",
  },
  check(ctx, limits) {
    const { seconds, changing } = classTime(ctx);
    const found: Found<"springs" | "time">[] = [];
    const { springChanges } = ctx.balance.setups;
    const most = Math.max(limits.allowedAnywayCount, (limits.maxInTenMinutesCount * seconds) / TEN_MINUTES);
    if (springChanges > most) {
      const values = {
        changes: springChanges,
        most: Math.floor(most),
        classSeconds: seconds,
      };
      found.push({ message: "springs", items: [], values });
    }
    if (seconds > 0 && changing > limits.maxTimeShare * seconds + NOISE) {
      const values = {
        changeSeconds: changing,
        classSeconds: seconds,
        share: changing / seconds,
        maxShare: limits.maxTimeShare,
      };
      found.push({ message: "time", items: [], values });
    }
    return found;
  },
});

export const tooManySetupsExamples = (): RuleExamples => ({
  pass: [
    { say: "three changes", plan: springsTurnAbout(4) },
    { say: "a quarter of the time at most", plan: slow(20) },
    { say: "an empty plan", plan: examplePlan([]) },
  ],
  fail: [
    { say: "other springs for every move", plan: springsTurnAbout(9), expect: ["springs"] },
    { say: "half a minute and more before every move", plan: slow(35), expect: ["time"] },
  ],
});

/** Seconds from the end of the opening to the start of the closing, and how many of them go to changes. */
function classTime({ plan, rows, moves }: RuleContext): { seconds: number; changing: number } {
  const first = rows[plan.items.findIndex(isMoveItem)];
  const last = rows.at(-1);
  if (!first || !last) return { seconds: 0, changing: 0 };
  const changing = moves.reduce((sum, { row }) => sum + row.start - row.transitionFrom, 0);
  return { seconds: tenth(last.end - (rows[0]?.transitionFrom ?? 0)), changing: tenth(changing) };
}

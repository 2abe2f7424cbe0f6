import { NOISE, tenth } from "#lib/numbers/round.ts";
import { itemName } from "#lib/plan/format.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { Found, RuleExamples } from "../define/types.ts";

const LONG =
  "Carriage home, take the light spring off and put the heavy one on, then turn round and kneel in the middle. ";
const change = (times: number, more: Partial<MoveItem> = {}): MoveItem =>
  exampleMove("b", {
    springs: { heavy: 1 },
    transitionSeconds: 10,
    script: [...fullScript.slice(1), { kind: "setup", text: LONG.repeat(times) }],
    ...more,
  });

export const setupTalkTooLong = defineRule({
  id: "setup-talk-too-long",
  reads: "voice",
  title: "The set-up takes longer to say than to do",
  why: "People are still working while the next set-up is told, and miss a spring or a strap.",
  fix: "Shorten the set-up and safety lines, or plan more seconds for the change.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    maxEarlySeconds: numberLimit({
      from: 0,
      to: 120,
      usual: 8,
      says: "How long before the work ends the next set-up may begin",
    }),
  }),
  messages: {
    early:
      "{itemName}: set-up talk takes {talkSeconds} and the change allows {changeSeconds}. Cut it, or plan {planSeconds}.",
    unsaid:
      "{itemName}: no time to say the {kinds} before the start. Use fewer words, or give the change {shortBySeconds} more.",
  },
  check(ctx, { maxEarlySeconds }) {
    const { cues, dropped } = ctx.track;
    const isSetup = ({ kind }: { readonly kind: string }): boolean => kind === "setup" || kind === "safety";
    const told = new Map<string, { from: number; seconds: number }>();
    for (const cue of cues.filter(isSetup)) {
      const known = told.get(cue.item);
      told.set(cue.item, { from: known?.from ?? cue.from, seconds: (known?.seconds ?? 0) + cue.to - cue.from });
    }
    const unsaid = new Set(dropped.filter(isSetup).map((line) => line.item));
    return ctx.moves.flatMap(({ item, row }, n): Found<"early" | "unsaid">[] => {
      const name = { itemName: itemName(ctx.plan, item) };
      if (unsaid.has(item.id)) {
        const lines = dropped.filter((line) => isSetup(line) && line.item === item.id);
        const kinds = [...new Set(lines.map((line) => (line.kind === "setup" ? "set-up line" : "safety line")))];
        const shortBySeconds = Math.max(...lines.map((line) => line.shortBy));
        return [{ message: "unsaid", items: [item.id], values: { ...name, kinds, shortBySeconds } }];
      }
      const talk = told.get(item.id);
      const earlySeconds = tenth((talk ? row.transitionFrom - talk.from : 0) + NOISE);
      // Where nothing changes nobody has to stop work to set up.
      const { planned, estimate } = row.transition;
      const goesOn = planned === null ? estimate === 0 : row.start <= row.transitionFrom;
      if (!talk || n === 0 || goesOn || earlySeconds <= maxEarlySeconds) return [];
      const setupSeconds = tenth(talk.seconds);
      const changeSeconds = tenth(row.start - row.transitionFrom);
      // From the first word to the start: other lines may come in between.
      const talkSeconds = tenth(changeSeconds + earlySeconds);
      const planSeconds = Math.ceil(talkSeconds - NOISE);
      return [
        {
          message: "early",
          items: [item.id],
          values: { ...name, setupSeconds, earlySeconds, changeSeconds, talkSeconds, planSeconds },
        },
      ];
    });
  },
});

export const setupTalkTooLongExamples = (): RuleExamples => ({
  pass: [
    { say: "told within the change", plan: examplePlan([exampleMove("a"), change(1)]) },
    {
      say: "nothing changes, and the words come while people work",
      plan: examplePlan([exampleMove("a"), exampleMove("b")]),
    },
    { say: "the first move is set up in the opening", plan: examplePlan([change(3)]) },
  ],
  fail: [
    { say: "25 s of talk for a change of 10", plan: examplePlan([exampleMove("a"), change(3)]), expect: ["early"] },
    { say: "more than there is time for", plan: examplePlan([exampleMove("a"), change(5)]), expect: ["unsaid"] },
  ],
});

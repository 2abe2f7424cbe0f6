import type { DroppedLine } from "#lib/cues/types.ts";
import { itemName } from "#lib/plan/format.ts";
import type { MoveItem } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

const LONG = "Press the feet down, grow tall through the crown of the head, ribs over hips, and slow. ";
const talking = (times: number): Partial<MoveItem> => ({
  script: [...fullScript, ...Array.from({ length: times }, () => ({ kind: "form" as const, text: LONG }))],
});

export const talkTooLong = defineRule({
  id: "talk-too-long",
  reads: "voice",
  title: "More to say than there is time for",
  why: "A coach who talks against the clock speaks too fast, drops lines and is not understood.",
  fix: "Shorten or take out a line, or give the move more time.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    maxShortSeconds: numberLimit({
      from: 0,
      to: 600,
      usual: 0,
      says: "Seconds of extra talk that are allowed",
    }),
  }),
  messages: {
    "one-line": "{itemName}: no time for the {kinds} line. Use fewer words, or give it {shortBySeconds} more.",
    lines:
      "{itemName}: no time for {lineCountInWords} of the lines ({kinds}). Use fewer words, or give it at least {shortBySeconds} more.",
  },
  check(ctx, { maxShortSeconds }) {
    const asideOf = new Map<string, DroppedLine[]>();
    for (const line of ctx.track.dropped)
      if (line.kind !== "setup" && line.kind !== "safety")
        asideOf.set(line.item, [...(asideOf.get(line.item) ?? []), line]);
    return ctx.moves.flatMap(({ item }) => {
      const aside = asideOf.get(item.id) ?? [];
      const shortBySeconds = Math.max(0, ...aside.map((line) => line.shortBy));
      if (aside.length === 0 || shortBySeconds <= maxShortSeconds) return [];
      const kinds = [...new Set(aside.map((line) => line.kind))];
      const values = { itemName: itemName(ctx.plan, item), lineCount: aside.length, shortBySeconds, kinds };
      return [{ message: aside.length === 1 ? ("one-line" as const) : ("lines" as const), items: [item.id], values }];
    });
  },
});

export const talkTooLongExamples = (): RuleExamples => ({
  pass: [
    { say: "what is written can be said", plan: examplePlan([exampleMove("a", talking(1)), exampleMove("b")]) },
    {
      say: "a studio that lets a minute pass",
      plan: examplePlan([exampleMove("a", { ...talking(4), seconds: 30 }), exampleMove("b")], {
        standards: { "talk-too-long": { limits: { maxShortSeconds: 60 } } },
      }),
    },
  ],
  fail: [
    {
      say: "six long lines in half a minute",
      plan: examplePlan([exampleMove("a", { ...talking(8), seconds: 30 })]),
      expect: ["lines"],
    },
    {
      say: "a line longer than the move",
      plan: examplePlan([exampleMove("a", { ...talking(2), seconds: 15 })]),
      expect: ["one-line"],
    },
  ],
});

import { NOISE, tenth } from "#lib/numbers/round.ts";
import { itemName } from "#lib/plan/format.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { exampleMove, examplePlan, fullScript } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import { Moment, type RuleExamples } from "../define/types.ts";

export const silentStretch = defineRule({
  id: "silent-stretch",
  reads: "voice",
  title: "A long silence in the work",
  why: "Left alone, people lose the pace and their form, and feel that nobody sees them.",
  fix: "Write a form, focus or breath line for the silence.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    maxSilenceSeconds: numberLimit({
      from: 5,
      to: 600,
      usual: 45,
      says: "Longest silence in the work of one move",
    }),
  }),
  messages: {
    silent: "{itemName}: {silenceSeconds} of silence from {at} on. Write a line that keeps people with you.",
  },
  check(ctx, { maxSilenceSeconds }) {
    if (!ctx.moves.some(({ row }) => row.end - row.start > maxSilenceSeconds)) return [];
    const { cues } = ctx.track;
    let first = 0;
    return ctx.moves.flatMap(({ item, row }) => {
      while (first < cues.length && (cues[first]?.to ?? 0) <= row.start) first++;
      let from = row.start;
      let longest = { at: row.start, seconds: 0 };
      for (let n = first; from < row.end && n <= cues.length; n++) {
        const cue = cues[n];
        const until = Math.min(row.end, cue?.from ?? row.end);
        // Of equal silences the first, whatever the last digits of their times.
        if (until - from > longest.seconds + NOISE) longest = { at: from, seconds: until - from };
        from = cue ? Math.max(from, cue.to) : row.end;
      }
      if (longest.seconds <= maxSilenceSeconds) return [];
      const silenceSeconds = tenth(longest.seconds);
      const values = { itemName: itemName(ctx.plan, item), silenceSeconds, at: new Moment(longest.at) };
      return [{ message: "silent" as const, items: [item.id], values }];
    });
  },
});

export const silentStretchExamples = (): RuleExamples => ({
  pass: [
    { say: "45 s with breath, easier way and the calls", plan: examplePlan([exampleMove("a"), exampleMove("b")]) },
    {
      say: "a studio that likes it quiet",
      plan: examplePlan([exampleMove("a", { seconds: 180 })], {
        standards: { "silent-stretch": { limits: { maxSilenceSeconds: 300 } } },
      }),
    },
  ],
  fail: [
    {
      say: "three minutes and four short lines",
      plan: examplePlan([exampleMove("a", { seconds: 180 })]),
      expect: ["silent"],
    },
    {
      say: "nothing to say but the set-up",
      plan: examplePlan([exampleMove("a", { seconds: 90, script: fullScript.slice(0, 1) })]),
      expect: ["silent"],
    },
  ],
});

import { intensityArc } from "#lib/intensity/intensity.ts";
import { NOISE } from "#lib/numbers/round.ts";
import { defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

const moves = {
  easy: { ...exampleMoves.squat, name: "Bridge", met: 3 },
  hard: { ...exampleMoves.squat, name: "Lunge", met: 5 },
};
const classOf = (...order: (keyof typeof moves)[]) =>
  examplePlan(
    order.map((move, i) => exampleMove(`${move}-${i}`, { move, seconds: 150 })),
    { moves },
  );

export const warmUpTooSteep = defineRule({
  id: "warm-up-too-steep",
  reads: "times",
  title: "The class starts nearly as hard as it gets",
  why: "Muscles and hearts that have not been warmed up are asked for everything at once.",
  fix: "Put lighter moves first, and let the work get harder over some minutes.",
  level: "look",
  source:
    "American College of Sports Medicine, five to ten minutes of light to moderate work first (quoted from secondary sources); the share is common practice, no source",
  limits: limits({
    warmUpSeconds: numberLimit({
      from: 60,
      to: 1200,
      usual: 300,
      says: "How much work counts as the start of the class",
    }),
    maxShare: numberLimit({
      from: 0,
      to: 1,
      usual: 0.85,
      says: "How hard the start may be on average, as a share of the hardest move's MET",
    }),
    minPeakMet: numberLimit({
      from: 1,
      to: 20,
      usual: 4,
      says: "A class whose hardest move is below this needs no warm-up",
    }),
    minWorkSeconds: numberLimit({
      from: 0,
      to: 14400,
      usual: 600,
      says: "Classes with less work than this are not checked",
    }),
  }),
  messages: {
    steep:
      "The first {startSeconds} of work average {startMet} MET, and the hardest move has {peakMet}. Put lighter moves first.",
  },
  check({ plan, rows, total }, { warmUpSeconds, maxShare, minPeakMet, minWorkSeconds }) {
    const work = intensityArc(plan, { rows, total }).filter((part) => part.work);
    const known = work.flatMap((part) => (part.met === null ? [] : [part.met]));
    const peakMet = Math.max(0, ...known);
    const worked = work.reduce((sum, part) => sum + part.to - part.from, 0);
    if (peakMet < minPeakMet || worked < minWorkSeconds) return [];
    const items: string[] = [];
    let seconds = 0;
    let metSeconds = 0;
    for (const { item, met, from, to } of work) {
      if (seconds >= warmUpSeconds) break;
      // Without its MET nobody knows how hard the start is.
      if (met === null || item === null) return [];
      const counted = Math.min(to - from, warmUpSeconds - seconds);
      seconds += counted;
      metSeconds += met * counted;
      items.push(item);
    }
    const startMet = metSeconds / seconds;
    if (!(startMet > maxShare * peakMet + NOISE)) return [];
    const values = { startSeconds: seconds, startMet: Math.round(startMet * 10) / 10, peakMet };
    return [{ message: "steep" as const, items, values }];
  },
});

export const warmUpTooSteepExamples = (): RuleExamples => ({
  pass: [
    { say: "five minutes of lighter moves first", plan: classOf("easy", "easy", "hard", "hard", "easy") },
    { say: "a class that never gets hard", plan: classOf("easy", "easy", "easy", "easy", "easy") },
    { say: "ten minutes all told, which is no class yet", plan: classOf("hard", "hard", "easy") },
  ],
  fail: [
    { say: "the hardest moves first", plan: classOf("hard", "hard", "easy", "easy", "easy"), expect: ["steep"] },
    { say: "as hard from start to end", plan: classOf("hard", "hard", "hard", "hard", "hard"), expect: ["steep"] },
  ],
});

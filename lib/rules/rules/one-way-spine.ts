import { NOISE } from "#lib/numbers/round.ts";
import { defineRule } from "../define/define-rule.ts";
import { exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { RuleExamples } from "../define/types.ts";

const moves = {
  curl: { ...exampleMoves.squat, name: "Curl-up", spine: ["flexion" as const] },
  lift: { ...exampleMoves.squat, name: "Back extension", spine: ["extension" as const] },
};
const classOf = (flexion: number, extension: number) =>
  examplePlan(
    [
      exampleMove("curl", { move: "curl", seconds: flexion }),
      ...(extension > 0 ? [exampleMove("lift", { move: "lift", seconds: extension })] : []),
    ],
    { moves },
  );

export const oneWaySpine = defineRule({
  id: "one-way-spine",
  reads: "times",
  title: "The spine bends mostly one way",
  why: "A back that bends forward again and again and never the other way goes home stiffer than it came.",
  fix: "Add a move that extends the spine, or shorten one that bends it.",
  level: "look",
  source: "common practice, no source: guidelines ask for opposing muscles to be trained and give no ratio",
  limits: limits({
    maxFlexionShare: numberLimit({
      from: 0.5,
      to: 1,
      usual: 0.75,
      says: "Largest share of bending forward in all bending forward and back (75%: three to one)",
    }),
    minFlexionSeconds: numberLimit({
      from: 0,
      to: 14400,
      usual: 90,
      says: "Bending forward for less than this is never too much",
    }),
  }),
  messages: {
    apart:
      "The spine bends forward for {flexionSeconds} and back for {extensionSeconds}. Add about {missingSeconds} of extension.",
    never: "The spine bends forward for {flexionSeconds} and never back. Add about {missingSeconds} of extension.",
  },
  check({ moves: placed, balance: { spine } }, { maxFlexionShare, minFlexionSeconds }) {
    const flexion = spine.flexion ?? 0;
    const extension = spine.extension ?? 0;
    if (flexion < minFlexionSeconds || flexion <= maxFlexionShare * (flexion + extension) + NOISE) return [];
    const items = placed.filter(({ move: library }) => library?.spine?.includes("flexion")).map(({ item }) => item.id);
    const missing = (flexion * (1 - maxFlexionShare)) / maxFlexionShare - extension;
    const values = {
      flexionSeconds: flexion,
      extensionSeconds: extension,
      missingSeconds: Math.max(5, Math.ceil(missing / 5) * 5),
    };
    return [{ message: extension > 0 ? ("apart" as const) : ("never" as const), items, values }];
  },
});

export const oneWaySpineExamples = (): RuleExamples => ({
  pass: [
    { say: "as long one way as the other", plan: classOf(120, 120) },
    { say: "one minute of bending", plan: classOf(60, 0) },
    { say: "two to one", plan: classOf(120, 60) },
  ],
  fail: [
    { say: "four minutes forward, one back", plan: classOf(240, 60), expect: ["apart"] },
    { say: "forward only", plan: classOf(120, 0), expect: ["never"] },
  ],
});

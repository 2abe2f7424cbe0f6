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
      ...(flexion > 0 ? [exampleMove("curl", { move: "curl", seconds: flexion })] : []),
      ...(extension > 0 ? [exampleMove("lift", { move: "lift", seconds: extension })] : []),
    ],
    { moves },
  );

export const oneWaySpine = defineRule({
  id: "one-way-spine",
  reads: "times",
  title: "The spine bends mostly one way",
  why: "A back that bends one way again and again and never the other goes home stiffer than it came.",
  fix: "Add a move that bends the spine the other way, or shorten one that bends it this way.",
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
    maxExtensionShare: numberLimit({
      from: 0.5,
      to: 1,
      usual: 0.75,
      says: "Largest share of bending back in all bending forward and back",
    }),
    minExtensionSeconds: numberLimit({
      from: 0,
      to: 14400,
      usual: 90,
      says: "Bending back for less than this is never too much",
    }),
  }),
  messages: {
    apart:
      "The spine bends forward for {flexionSeconds} and back for {extensionSeconds}. Add about {missingSeconds} of extension.",
    never: "The spine bends forward for {flexionSeconds} and never back. Add about {missingSeconds} of extension.",
    backApart:
      "The spine bends back for {extensionSeconds} and forward for {flexionSeconds}. Add about {missingSeconds} of flexion.",
    backNever: "The spine bends back for {extensionSeconds} and never forward. Add about {missingSeconds} of flexion.",
  },
  check({ moves: placed, balance: { spine } }, limits) {
    const flexion = spine.flexion ?? 0;
    const extension = spine.extension ?? 0;
    const values = { flexionSeconds: flexion, extensionSeconds: extension };
    const itemsOf = (way: "flexion" | "extension") =>
      placed.filter(({ move }) => move?.spine?.includes(way)).map(({ item }) => item.id);
    const forward = missingSeconds(flexion, extension, limits.maxFlexionShare);
    if (forward > 0 && flexion >= limits.minFlexionSeconds) {
      const message = extension > 0 ? ("apart" as const) : ("never" as const);
      return [{ message, items: itemsOf("flexion"), values: { ...values, missingSeconds: forward } }];
    }
    const back = missingSeconds(extension, flexion, limits.maxExtensionShare);
    if (back > 0 && extension >= limits.minExtensionSeconds) {
      const message = flexion > 0 ? ("backApart" as const) : ("backNever" as const);
      return [{ message, items: itemsOf("extension"), values: { ...values, missingSeconds: back } }];
    }
    return [];
  },
});

/** Seconds of the other way that bring `much` down to its largest share, in steps of five; 0 where it is not over. */
function missingSeconds(much: number, other: number, maxShare: number): number {
  if (much <= maxShare * (much + other) + NOISE) return 0;
  const missing = (much * (1 - maxShare)) / maxShare - other;
  return Math.max(5, Math.ceil(missing / 5) * 5);
}

export const oneWaySpineExamples = (): RuleExamples => ({
  pass: [
    { say: "as long one way as the other", plan: classOf(120, 120) },
    { say: "one minute of bending", plan: classOf(60, 0) },
    { say: "two to one", plan: classOf(120, 60) },
  ],
  fail: [
    { say: "four minutes forward, one back", plan: classOf(240, 60), expect: ["apart"] },
    { say: "forward only", plan: classOf(120, 0), expect: ["never"] },
    { say: "one minute forward, four back", plan: classOf(60, 240), expect: ["backApart"] },
    { say: "back only", plan: classOf(0, 120), expect: ["backNever"] },
  ],
});

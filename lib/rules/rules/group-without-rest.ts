import { listWords, moveName, sentenceCase, tagWords } from "#lib/plan/format.ts";
import { GROUPS, type Group } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { bothSides, exampleMove, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { PlacedMove, RuleContext, RuleExamples } from "../define/types.ts";
import { type WorkStretch, workStretches } from "../select/stretches.ts";

const squats = (...seconds: number[]) => seconds.map((s, i) => exampleMove(`squat-${i}`, { seconds: s }));

/** These work on either side; every other group rests while the other side works. */
const MIDDLE: readonly Group[] = ["abdominals", "lower-back"];

export const groupWithoutRest = defineRule({
  id: "group-without-rest",
  reads: "times",
  title: "One muscle group works for too long without a rest",
  why: "Tired muscles leave the work to the joints, and people stop before the move is over.",
  fix: "Put a pause, a longer change or a move for other muscles into the stretch.",
  level: "look",
  source: COMMON_PRACTICE,
  limits: limits({
    maxSeconds: numberLimit({
      from: 30,
      to: 3600,
      usual: 300,
      says: "Longest work without a rest, for muscles that work at half weight or more",
    }),
    restSeconds: numberLimit({ from: 1, to: 600, usual: 30, says: "A change at least this long counts as a rest" }),
  }),
  messages: {
    long: "{groups}: {seconds} without a rest, from {first} to {last}; the limit is {maxSeconds}. Put in a pause or other muscles.",
    alone: "{groups}: {seconds} without a rest in {first}; the limit is {maxSeconds}. Shorten it, or pause half-way.",
  },
  check(ctx, { maxSeconds, restSeconds }) {
    return tooLong(ctx, maxSeconds, restSeconds).map(({ stretch: { moves, seconds }, side, groups }) => {
      const last = moves.at(-1) ?? moves[0];
      return {
        message: moves.length === 1 ? ("alone" as const) : ("long" as const),
        ...(side ? { about: side } : {}),
        items: moves.map(({ item }) => item.id),
        values: {
          groups: sentenceCase(listWords(groups.map(tagWords))) + (side ? ` (${side})` : ""),
          seconds,
          maxSeconds,
          first: moveName(ctx.plan, moves[0].item),
          last: moveName(ctx.plan, last.item),
        },
      };
    });
  },
});

export const groupWithoutRestExamples = (): RuleExamples => ({
  pass: [
    { say: "exactly five minutes in a row", plan: examplePlan(squats(100, 100, 100)) },
    {
      say: "a pause in the middle",
      plan: examplePlan([
        ...squats(120, 120),
        { id: "p", kind: "pause", seconds: 20 },
        exampleMove("b", { seconds: 120 }),
      ]),
    },
    {
      say: "one side rests while the other works",
      plan: examplePlan([
        ...bothSides("x", { seconds: 120 }, { seconds: 120 }),
        ...bothSides("y", { seconds: 120 }, { seconds: 120 }),
      ]),
    },
  ],
  fail: [
    {
      say: "six minutes of squats, for thighs and glutes",
      plan: examplePlan(squats(120, 120, 120)),
      expect: ["long"],
    },
    {
      say: "the same side again and again",
      plan: examplePlan([
        exampleMove("a", { move: "row", side: "right", seconds: 180 }),
        exampleMove("b", { move: "row", side: "right", seconds: 180 }),
      ]),
      expect: ["long"],
    },
    { say: "one squat of more than six minutes", plan: examplePlan(squats(400)), expect: ["alone"] },
  ],
});

type Side = "left" | "right";
interface Stretch {
  readonly stretch: WorkStretch;
  /** Null where both sides work. */
  readonly side: Side | null;
}

/** Each stretch over the limit once, with all groups that work from its start to its end. */
function tooLong(ctx: RuleContext, maxSeconds: number, restSeconds: number) {
  const found: (Stretch & { readonly groups: Group[] })[] = [];
  for (const group of GROUPS) {
    for (const each of stretchesOf(ctx, group, restSeconds)) {
      if (each.stretch.seconds <= maxSeconds) continue;
      const same = found.find((other) => other.side === each.side && sameMoves(other.stretch, each.stretch));
      if (same) same.groups.push(group);
      else found.push({ ...each, groups: [group] });
    }
  }
  return found;
}

/** The stretches of each side. One that is the same on both is given once, without a side. */
function stretchesOf(ctx: RuleContext, group: Group, restSeconds: number): Stretch[] {
  const works = ({ move }: PlacedMove) => (move?.muscles[group] ?? 0) >= 0.5;
  if (MIDDLE.includes(group)) return workStretches(ctx, works, restSeconds).map((stretch) => ({ stretch, side: null }));
  const without = (side: Side) =>
    workStretches(ctx, (placed) => works(placed) && placed.item.side !== side, restSeconds);
  const left = without("right");
  const right = without("left");
  const isIn = (stretch: WorkStretch, list: readonly WorkStretch[]) => list.some((other) => sameMoves(stretch, other));
  return [
    ...left.map((stretch) => ({ stretch, side: isIn(stretch, right) ? null : ("left" as const) })),
    ...right.filter((stretch) => !isIn(stretch, left)).map((stretch) => ({ stretch, side: "right" as const })),
  ];
}

const sameMoves = (a: WorkStretch, b: WorkStretch): boolean =>
  a.moves.length === b.moves.length && a.moves[0] === b.moves[0] && a.moves.at(-1) === b.moves.at(-1);

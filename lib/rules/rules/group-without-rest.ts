import { springShare } from "#lib/load/spring-share.ts";
import { perValue } from "#lib/memo/per-value.ts";
import { listWords, moveName, sentenceCase, tagWords } from "#lib/plan/format.ts";
import { GROUPS, type Group, type Move } from "#lib/plan/schema.ts";
import { COMMON_PRACTICE, defineRule } from "../define/define-rule.ts";
import { bothSides, exampleMove, exampleMoves, examplePlan } from "../define/example-plan.ts";
import { limits, numberLimit } from "../define/limit-fields.ts";
import type { PlacedMove, RuleContext, RuleExamples } from "../define/types.ts";
import { type Rests, type SidedStretch, sameMoves, sidedStretches, workStretches } from "../select/stretches.ts";

const squats = (...seconds: number[]) => seconds.map((s, i) => exampleMove(`squat-${i}`, { seconds: s }));

/** These work on either side; every other group rests while the other side works. */
const MIDDLE: readonly Group[] = ["abdominals", "lower-back"];

/** A group that helps less than this rests (judgement). */
const LEAST_WEIGHT = 0.25;

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
      usual: 240,
      says: "Longest work without a rest, seconds counted by the muscle's weight and the springs",
    }),
    minPauseSeconds: numberLimit({ from: 1, to: 600, usual: 15, says: "A pause at least this long counts as a rest" }),
    restSeconds: numberLimit({ from: 1, to: 600, usual: 30, says: "A change at least this long counts as a rest" }),
  }),
  messages: {
    long: "{groups}: {seconds} of effort without a rest, from {first} to {last}; the limit is {maxSeconds}. Put in a pause or other muscles.",
    alone:
      "{groups}: {seconds} of effort without a rest in {first}; the limit is {maxSeconds}. Shorten it, or pause half-way.",
  },
  check(ctx, limits) {
    return tooLong(ctx, limits).map(({ stretch: { moves, effortSeconds, workSeconds }, side, groups }) => {
      const last = moves.at(-1) ?? moves[0];
      return {
        message: moves.length === 1 ? ("alone" as const) : ("long" as const),
        ...(side ? { about: side } : {}),
        items: moves.map(({ item }) => item.id),
        values: {
          groups: sentenceCase(listWords(groups.map(tagWords))) + (side ? ` (${side})` : ""),
          seconds: Math.round(effortSeconds),
          workSeconds,
          maxSeconds: limits.maxSeconds,
          first: moveName(ctx.plan, moves[0].item),
          last: moveName(ctx.plan, last.item),
        },
      };
    });
  },
});

export const groupWithoutRestExamples = (): RuleExamples => ({ pass: passes(), fail: failures() });

const passes = (): RuleExamples["pass"] => [
  { say: "exactly four minutes in a row", plan: examplePlan(squats(80, 80, 80)) },
  {
    say: "a pause in the middle",
    plan: examplePlan([
      ...squats(120, 120),
      { id: "p", kind: "pause", seconds: 20 },
      exampleMove("b", { seconds: 120 }),
    ]),
  },
  {
    say: "helpers count by their weight: seven minutes in which the glutes only help",
    plan: examplePlan(
      [300, 120].map((seconds, i) => exampleMove(`squat-${i}`, { move: "help", seconds })),
      {
        moves: { help: { ...exampleMoves.squat, muscles: { glutes: 0.5 } } },
      },
    ),
  },
  {
    say: "one side rests while the other works",
    plan: examplePlan([
      ...bothSides("x", { seconds: 120 }, { seconds: 120 }),
      ...bothSides("y", { seconds: 120 }, { seconds: 120 }),
    ]),
  },
];

const failures = (): RuleExamples["fail"] => [
  {
    say: "a pause of ten seconds is no rest",
    plan: examplePlan([
      ...squats(120, 120),
      { id: "p", kind: "pause", seconds: 10 },
      exampleMove("b", { seconds: 120 }),
    ]),
    expect: ["long"],
  },
  {
    say: "three minutes on springs far heavier than the library means",
    plan: examplePlan([exampleMove("a", { seconds: 180, springs: { heavy: 2 } })], {
      moves: { squat: { ...exampleMoves.squat, hands: "handles", loadN: [40, 120] } },
    }),
    expect: ["alone"],
  },
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
];

/** Each stretch over the limit once, with all groups that work from its start to its end. */
function tooLong(ctx: RuleContext, { maxSeconds, ...rests }: Rests & { readonly maxSeconds: number }) {
  const found: (SidedStretch & { readonly groups: Group[] })[] = [];
  const efforts = effortsOf(ctx);
  for (const group of GROUPS) {
    for (const each of stretchesOf(ctx, { group, efforts: efforts.get(group) }, rests)) {
      if (each.stretch.effortSeconds <= maxSeconds) continue;
      const same = found.find((other) => other.side === each.side && sameMoves(other.stretch, each.stretch));
      if (same) same.groups.push(group);
      else found.push({ ...each, groups: [group] });
    }
  }
  return found;
}

type Efforts = ReadonlyMap<PlacedMove, number>;

/** How hard each move works each group; groups and moves without work are left out. */
function effortsOf({ plan, moves }: RuleContext): ReadonlyMap<Group, Efforts> {
  const efforts = new Map<Group, Map<PlacedMove, number>>();
  for (const placed of moves) {
    const { item, move } = placed;
    const worked = move ? groupsWorked(move) : [];
    const share = move && worked.length > 0 ? springShare(plan, item, move) : 0;
    for (const [group, weight] of worked) {
      const ofGroup = efforts.get(group) ?? new Map<PlacedMove, number>();
      efforts.set(group, ofGroup.set(placed, weight * share));
    }
  }
  return efforts;
}

const groupsWorked = perValue(({ muscles }: Move): readonly (readonly [Group, number])[] =>
  GROUPS.flatMap((group) => {
    const weight = muscles[group] ?? 0;
    return weight >= LEAST_WEIGHT ? [[group, weight] as const] : [];
  }),
);

interface Worked {
  readonly group: Group;
  readonly efforts: Efforts | undefined;
}

function stretchesOf(ctx: RuleContext, { group, efforts }: Worked, rests: Rests): SidedStretch[] {
  if (!efforts) return [];
  const effortOf = (placed: PlacedMove): number => efforts.get(placed) ?? 0;
  if (MIDDLE.includes(group)) return workStretches(ctx, effortOf, rests).map((stretch) => ({ stretch, side: null }));
  const other = { left: "right", right: "left" } as const;
  return sidedStretches(ctx, (placed, side) => (placed.item.side === other[side] ? 0 : effortOf(placed)), rests);
}

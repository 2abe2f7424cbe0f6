/** Stretches of work without a rest, measured by effort. */
import { withoutNoise } from "#lib/numbers/round.ts";
import type { PlacedMove, RuleContext } from "../define/types.ts";

export interface WorkStretch {
  /** At least one. */
  readonly moves: readonly [PlacedMove, ...PlacedMove[]];
  /** Seconds of work times how hard it is, the changes between them not counted. */
  readonly effortSeconds: number;
  /** The same seconds as they are. */
  readonly workSeconds: number;
}

/** What ends a stretch besides a move that does not work. */
export interface Rests {
  /** Pauses of together at least this long. */
  readonly minPauseSeconds: number;
  /** A change of at least this long. */
  readonly restSeconds: number;
}

/** How hard a second of the move is: 1 for full work, 0 for none. */
export type Effort = (placed: PlacedMove) => number;

/** Runs of neighbouring move items with an effort above 0. A short pause does not break a run, nor does a heading. */
export function workStretches({ plan, moves }: RuleContext, effortOf: Effort, rests: Rests): WorkStretch[] {
  const stretches: WorkStretch[] = [];
  let open: { moves: [PlacedMove, ...PlacedMove[]]; effortSeconds: number; workSeconds: number } | undefined;
  let last: PlacedMove | undefined;
  for (const placed of moves) {
    const { seconds } = placed.item;
    const effort = effortOf(placed);
    if (!(effort > 0)) open = undefined;
    else if (open && last && !hasRested(plan.items, last, placed, rests)) {
      open.moves.push(placed);
      open.effortSeconds = withoutNoise(open.effortSeconds + seconds * effort);
      open.workSeconds = withoutNoise(open.workSeconds + seconds);
    } else {
      open = { moves: [placed], effortSeconds: withoutNoise(seconds * effort), workSeconds: seconds };
      stretches.push(open);
    }
    last = placed;
  }
  return stretches;
}

function hasRested(items: RuleContext["plan"]["items"], from: PlacedMove, to: PlacedMove, rests: Rests): boolean {
  if (to.row.start - to.row.transitionFrom >= rests.restSeconds) return true;
  let paused = 0;
  for (let i = from.index + 1; i < to.index; i++) {
    const item = items[i];
    if (item?.kind === "pause") paused += item.seconds;
  }
  return paused > 0 && paused >= rests.minPauseSeconds;
}

type Side = "left" | "right";
export interface SidedStretch {
  readonly stretch: WorkStretch;
  /** Null where both sides work. */
  readonly side: Side | null;
}

/** The stretches of each side. One that is the same on both is given once, without a side. */
export function sidedStretches(
  ctx: RuleContext,
  effortOf: (placed: PlacedMove, side: Side) => number,
  rests: Rests,
): SidedStretch[] {
  const of = (side: Side) => workStretches(ctx, (placed) => effortOf(placed, side), rests);
  const left = of("left");
  const right = of("right");
  const isIn = (stretch: WorkStretch, list: readonly WorkStretch[]) => list.some((other) => sameMoves(stretch, other));
  return [
    ...left.map((stretch) => ({ stretch, side: isIn(stretch, right) ? null : ("left" as const) })),
    ...right.filter((stretch) => !isIn(stretch, left)).map((stretch) => ({ stretch, side: "right" as const })),
  ];
}

export const sameMoves = (a: WorkStretch, b: WorkStretch): boolean =>
  a.moves.length === b.moves.length && a.moves[0] === b.moves[0] && a.moves.at(-1) === b.moves.at(-1);

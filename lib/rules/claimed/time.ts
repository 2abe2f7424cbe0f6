/** Time and halfway, judged at the moment at which they are said. */
import { tenth } from "#lib/numbers/round.ts";
import { moveName } from "#lib/plan/format.ts";
import { isPartOf } from "#lib/talk/claims/spoken-names.ts";
import type { HalfwayClaim, SaidWords, TimeClaim } from "#lib/talk/claims/types.ts";
import { type ClaimedCase, type Contradiction, isOneSided } from "./case.ts";

export interface Tolerance {
  readonly toleranceSeconds: number;
  readonly toleranceShare: number;
}

/** Whole minutes are round numbers: a sixth of the time either way, but no more than half a minute. Common practice, no source. */
const MINUTES_SHARE = 1 / 6;
const MINUTES_MOST = 30;
/** "About", "give or take". */
const ROUGH_SHARE = 0.25;
const ROUGH_MOST = 120;
/** "Under five minutes" is said from half of it on, "more than an hour" up to twice as much. */
const BOUND_FROM = 0.5;
const BOUND_TO = 2;
/** A block is told in minutes. */
const BLOCK_FROM = 45;
/** Nobody says a time within the second. */
const ROUNDING = 1;

export function timeDiffers(c: ClaimedCase, claim: TimeClaim & SaidWords, t: Tolerance): Contradiction {
  const at = saidAt(c, claim);
  if (at === undefined || !isOfThis(c, claim)) return undefined;
  const rough = claim.rough ? Math.min(ROUGH_MOST, claim.seconds * ROUGH_SHARE) : 0;
  const round = claim.unit === "minutes" ? Math.min(MINUTES_MOST, claim.seconds * MINUTES_SHARE) : 0;
  const slack = Math.max(round, rough, t.toleranceSeconds, claim.seconds * t.toleranceShare) + ROUNDING;
  const readings = readingsOf(c, claim, at);
  const from = claim.bound === "most" ? claim.seconds * BOUND_FROM : claim.seconds - slack;
  const to = claim.bound === "least" ? claim.seconds * BOUND_TO : claim.seconds + slack;
  if (readings.some((seconds) => seconds >= from && seconds <= to)) return undefined;
  return really(c, claim, at);
}

const isOfThis = ({ ctx, placed }: ClaimedCase, { what }: TimeClaim): boolean =>
  what === undefined || isPartOf(what, moveName(ctx.plan, placed.item));

/** When the words are said: as far into the cue as they stand in the line. Undefined for a line that is not said. */
function saidAt({ cue, line }: ClaimedCase, { from }: SaidWords): number | undefined {
  return cue && cue.from + (cue.to - cue.from) * (from / Math.max(1, line.text.length));
}

/** Seconds of all that the words may mean. */
function readingsOf(c: ClaimedCase, { which, of, unit, what, seconds }: TimeClaim, at: number): number[] {
  const { ctx, placed } = c;
  const { start, end } = placed.row;
  const { classFrom, classTo, workTo, blockFrom, blockTo } = ctx.placeInClass(placed);
  const whole = end - start;
  const leftOfMove = Math.min(end - at, whole);
  const leftOfClass = [classTo - at, workTo - at];
  const leftOfBlock = blockTo - at;
  if (which === "any") return [whole, leftOfMove, at - start, classTo - classFrom, ...leftOfClass];
  if (which === "done") return of === "class" ? [at - classFrom] : [at - start, at - classFrom, at - blockFrom];
  if (which === "each-side") return isOneSided(placed) ? [whole] : [whole / 2, whole];
  if (of === "class")
    return which === "whole" ? [classTo - classFrom, ctx.plan.lengthSeconds, ...leftOfClass] : leftOfClass;
  if (of === "block") return [leftOfBlock];
  // In the line that sets it up, "thirty seconds of work" is the whole; once people move, it is mostly what is left.
  const ofMove = which === "whole" ? [whole, leftOfMove] : [leftOfMove];
  if (of === "move" || what !== undefined) return ofMove;
  return [
    ...ofMove,
    ...leftOfClass,
    ...(unit === "minutes" && which === "left" && seconds >= BLOCK_FROM ? [leftOfBlock] : []),
  ];
}

function really({ ctx, placed }: ClaimedCase, { which, of }: TimeClaim, at: number): string {
  const { start, end } = placed.row;
  const { classFrom, classTo } = ctx.placeInClass(placed);
  if (of === "class")
    return which === "whole"
      ? `the class is ${tenth(classTo - classFrom)} s long`
      : `the class goes on for ${tenth(classTo - at)} s`;
  if (which === "done") return at < start ? "the move has not begun" : `${tenth(at - start)} s of the move are done`;
  if (which === "left") return `the move goes on for ${tenth(Math.min(end - at, end - start))} s`;
  return `the move is ${tenth(end - start)} s long`;
}

const HALF_FROM = 0.33;
const HALF_TO = 0.67;

/** "Halfway through the curls"; halfway through one curl is another matter, unless it is a hold. */
function isOfMove({ ctx, placed }: ClaimedCase, what: string): boolean {
  const isHold = placed.move !== undefined && "holdSeconds" in placed.move.tempo;
  return (isHold || what.endsWith("s")) && isPartOf(what, moveName(ctx.plan, placed.item));
}

export function notHalfway(c: ClaimedCase, { of: said, past, what }: HalfwayClaim): Contradiction {
  const { ctx, placed, cue } = c;
  const of = what === undefined ? said : "move";
  if (!cue || (what !== undefined && !isOfMove(c, what))) return undefined;
  const { start, end } = placed.row;
  const { classFrom, classTo } = ctx.placeInClass(placed);
  const isHalf = (share: number): boolean => share >= HALF_FROM && (past || share <= HALF_TO);
  const ofMove = (at: number): number => (end > start ? (at - start) / (end - start) : 0);
  const ofClass = (at: number): number => (at - classFrom) / Math.max(1, classTo - classFrom);
  const isTrue = (at: number): boolean =>
    (of !== "class" && isHalf(ofMove(at))) || (of !== "move" && isHalf(ofClass(at)));
  if ([cue.from, cue.to].some(isTrue)) return undefined;
  const [whole, share] = of === "class" ? ["class", ofClass(cue.from)] : ["move", ofMove(cue.from)];
  return share < 0.5 ? `the ${whole} has hardly begun` : `the ${whole} is nearly over`;
}

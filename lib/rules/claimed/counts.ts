/** Rounds and repetitions. */
import { cycleSeconds } from "#lib/clock/clock.ts";
import { countWord, moveName } from "#lib/plan/format.ts";
import { isPartOf } from "#lib/talk/claims/spoken-names.ts";
import type { FollowingClaim, RepsClaim, RoundsClaim } from "#lib/talk/claims/types.ts";
import type { PlacedMove } from "../define/types.ts";
import { type ClaimedCase, type Contradiction, counted, inBlock, isBeforeStart, laterOf, movesOf } from "./case.ts";

export function otherRounds(c: ClaimedCase, claim: RoundsClaim): Contradiction {
  const either = movesOf(c);
  const same = either.filter(({ item }) => item.side === c.placed.item.side);
  if (claim.which === "more") {
    const later = laterOf(c);
    const sameLater = later.filter(({ item }) => item.side === c.placed.item.side).length;
    // Told before the start, this one is among those to come.
    const are = [sameLater, later.length, ...(claim.afterThis || !isBeforeStart(c) ? [] : [sameLater + 1])];
    if (are.includes(claim.count)) return undefined;
    return sameLater === 0
      ? "no round of it follows"
      : counted(sameLater, "more round of it follows", "more rounds of it follow");
  }
  if (claim.which === "done") {
    const nth = same.indexOf(c.placed) + 1;
    const isLate = !c.cue || c.cue.to > (c.placed.row.start + c.placed.row.end) / 2;
    return claim.count === nth - 1 || (isLate && claim.count === nth) ? undefined : `it is round ${countWord(nth)}`;
  }
  if (claim.which === "nth") {
    const nth = same.indexOf(c.placed) + 1;
    if (nth === claim.count || (same.length < 2 && claim.count === 1)) return undefined;
    return `it is round ${countWord(nth)}`;
  }
  return same.length === claim.count || either.length === claim.count
    ? undefined
    : `the plan has ${counted(same.length, "round")} of it`;
}

/** "After this we stretch" holds when only stretches are left. */
function isCoolDown({ ctx }: ClaimedCase, { item, index }: PlacedMove): boolean {
  const heading = ctx.plan.items.slice(0, index).findLast(({ kind }) => kind === "heading");
  const title = heading?.kind === "heading" ? heading.title : "";
  return /stretch|cool|release|relax/i.test(`${moveName(ctx.plan, item)} ${title}`);
}

export function otherFollowing(c: ClaimedCase, { count, withThis, of }: FollowingClaim): Contradiction {
  const later = c.ctx.moves.slice(c.n + 1);
  const inThis = inBlock(c, 1);
  const kinds = (moves: typeof later): number => new Set(moves.map(({ item }) => item.move)).size;
  if (count === 0 && later.every((move) => isCoolDown(c, move))) return undefined;
  const are =
    count === 0
      ? []
      : of === "class"
        ? [later.length, kinds(later)]
        : [later.length, kinds(later), inThis.length, kinds(inThis), laterOf(c).length];
  if (are.some((n) => n === count || (withThis && n + 1 === count))) return undefined;
  return later.length === 0 ? "nothing follows" : counted(later.length, "move follows", "moves follow");
}

/**
 * A count is right within one repetition or a quarter, since nobody keeps the tempo to the second and a count is begun
 * in the middle of one. Common practice, no source.
 */
const REPS_EITHER_WAY = 1;
const REPS_SHARE = 0.25;

export function otherReps(
  { ctx, placed, cue, line }: ClaimedCase,
  { count, which, what, orSeconds }: RepsClaim,
): Contradiction {
  if (what !== undefined && !isPartOf(what, moveName(ctx.plan, placed.item))) return undefined;
  // An easier or harder way may have another tempo.
  if (what !== undefined && count === 1 && line.kind === "setup") return undefined;
  if (line.kind === "easier" || line.kind === "harder") return undefined;
  const cycle = placed.move && cycleSeconds(placed.move);
  if (!cycle) return undefined;
  const { start, end } = placed.row;
  if (orSeconds && cue && end - cue.to <= count + orSeconds && end - cue.from >= count - orSeconds) return undefined;
  const all = (end - start) / cycle;
  const [first, last] = cue ? [cue.from, cue.to].map((at) => Math.min(end - at, end - start) / cycle) : [all, all];
  const slack = Math.max(REPS_EITHER_WAY, count * REPS_SHARE) + 0.5;
  const isNear = (least: number, most: number): boolean => count >= least - slack && count <= most + slack;
  if (isNear(last ?? all, first ?? all) || (which === "any" && isNear(all, all))) return undefined;
  const room = which === "any" ? all : (first ?? all);
  return `there is time for ${counted(Math.round(room), which === "any" ? "repetition" : "more repetition", which === "any" ? "repetitions" : "more repetitions")}`;
}

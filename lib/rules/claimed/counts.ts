/** Rounds and repetitions. */
import { cycleSeconds } from "#lib/clock/clock.ts";
import { countWord } from "#lib/plan/format.ts";
import type { RepsClaim, RoundsClaim } from "#lib/talk/claims/types.ts";
import { type ClaimedCase, type Contradiction, counted, laterOf, movesOf } from "./case.ts";

export function otherRounds(c: ClaimedCase, claim: RoundsClaim): Contradiction {
  const either = movesOf(c);
  const same = either.filter(({ item }) => item.side === c.placed.item.side);
  if (claim.which === "more") {
    const later = laterOf(c);
    const sameLater = later.filter(({ item }) => item.side === c.placed.item.side).length;
    // Told before the start, this one is among those to come.
    const are = [sameLater, later.length, sameLater + 1];
    if (are.includes(claim.count)) return undefined;
    return sameLater === 0
      ? "no round of it follows"
      : counted(sameLater, "more round of it follows", "more rounds of it follow");
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

/**
 * A count is right within one repetition or a quarter, since nobody keeps the tempo to the second and a count is begun
 * in the middle of one. Common practice, no source.
 */
const REPS_EITHER_WAY = 1;
const REPS_SHARE = 0.25;

export function otherReps({ placed, cue, line }: ClaimedCase, { count, which }: RepsClaim): Contradiction {
  // An easier or harder way may have another tempo.
  if (line.kind === "easier" || line.kind === "harder") return undefined;
  const cycle = placed.move && cycleSeconds(placed.move);
  if (!cycle) return undefined;
  const { start, end } = placed.row;
  const all = (end - start) / cycle;
  const [first, last] = cue ? [cue.from, cue.to].map((at) => Math.min(end - at, end - start) / cycle) : [all, all];
  const slack = Math.max(REPS_EITHER_WAY, count * REPS_SHARE) + 0.5;
  const isNear = (least: number, most: number): boolean => count >= least - slack && count <= most + slack;
  if (isNear(last ?? all, first ?? all) || (which === "any" && isNear(all, all))) return undefined;
  const room = which === "any" ? all : (first ?? all);
  return `there is time for ${counted(Math.round(room), which === "any" ? "repetition" : "more repetition", which === "any" ? "repetitions" : "more repetitions")}`;
}

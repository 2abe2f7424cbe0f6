/**
 * Finds the move a name means: the same words, the same words in another order, another spelling of them, or the only
 * move that has them all. Anything less sure is offered, never taken.
 */
import { foldedWords } from "#lib/library/fold.ts";
import { fitCompounds, type NameIndex, runTogether, sortedKey, tellingWords } from "#lib/library/name-index.ts";
import { type RankedMove, rankMoves } from "#lib/library/rank-moves.ts";
import { hundredth } from "#lib/numbers/round.ts";
import type { Match } from "./types.ts";

/** Offered below this score never, and at most so many. */
const LEAST = 0.35;
const MOST_OFFERED = 6;
/** A part of a name counts as the whole name only when it is at least this share of it and at least two words. */
const PART_IS_ENOUGH = 0.7;
/** How far behind the second best must be for a different spelling to be certain. */
const CLEAR = 0.12;

export function matchMove(name: string, library: NameIndex): Match {
  const exact = matchExact(name, library);
  if (exact) return exact;
  const all = rankMoves(name, library, false);
  const ranked = all.filter((c) => c.score >= LEAST);
  const [best] = ranked;
  if (!best) return { how: "none", near: [] };
  if (ambiguous(best, all)) return { how: "near", near: offered(all.filter((c) => isComplete(c) || c.score >= LEAST)) };
  const how = certain(best, ranked);
  const near = offered(ranked);
  return how ? { how, move: best.entry.id, near } : { how: "near", near };
}

const isComplete = (c: RankedMove): boolean => c.completeIn.length > 0;

const offered = (ranked: readonly RankedMove[]): Match["near"] =>
  ranked.slice(0, MOST_OFFERED).map((c) => ({
    move: c.entry.id,
    score: hundredth(c.score),
    ...(isComplete(c) ? { complete: true } : {}),
  }));

/** How the best move is meant beyond doubt; null when it may be another one. */
function certain(best: RankedMove, ranked: readonly RankedMove[]): "spelling" | "part" | null {
  if (best.tier === "some") return null;
  const second = Math.max(0, ...ranked.filter((c) => c !== best).map((c) => c.score));
  if (best.allNamed && best.score - second >= CLEAR) return "spelling";
  const complete = ranked.filter(isComplete);
  const only = !best.typo && complete.length === 1 && best.readAs.length > 1;
  return only && Math.max(best.score, best.headScore) >= PART_IS_ENOUGH ? "part" : null;
}

/**
 * Whether a short form or a part of a word may also mean another move. The library's own words, found as written, win
 * over what they may be short for.
 */
function ambiguous(best: RankedMove, ranked: readonly RankedMove[]): boolean {
  if (best.literal) return false;
  const complete = ranked.filter(isComplete);
  return complete.some(
    (c) =>
      c.completeIn.some((reading) => !best.completeIn.includes(reading)) ||
      c.readAs.join(" ") !== best.readAs.join(" "),
  );
}

/** The score of the best move offered; 0 when there is none. */
export const bestScore = ({ near }: Match): number => Math.max(0, ...near.map((n) => n.score));

/**
 * The move with the same words, in the same or another order; null when there is none. Two moves of one name are both
 * offered.
 */
export function matchExact(name: string, library: NameIndex): Match | null {
  const same = library.bySame.get(runTogether(name));
  if (same) return sure("same", same);
  const words = fitCompounds(tellingWords(foldedWords(name)), library).map((w) => w.fold);
  const order = words.length > 1 ? library.byWords.get(sortedKey(words)) : undefined;
  return order ? sure("order", order) : null;
}

function sure(how: "same" | "order", ids: readonly string[]): Match {
  const near = ids.slice(0, MOST_OFFERED).map((move) => ({ move, score: 1 }));
  const [move] = ids;
  return ids.length === 1 && move !== undefined ? { how, move, near } : { how: "near", near };
}

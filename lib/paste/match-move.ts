/**
 * Finds the move a name means: the same words, the same words in another order, another spelling of them, or the only
 * move that has them all. Anything less sure is offered, never taken.
 */
import { hundredth } from "#lib/numbers/round.ts";
import {
  distinctiveWords,
  type Entry,
  fitCompounds,
  type PasteLibrary,
  runTogether,
  sortedKey,
  sumOf,
} from "./library.ts";
import type { Match } from "./types.ts";

/** Offered below this score never, and at most so many. */
const LEAST = 0.35;
const MOST_OFFERED = 6;
/** A part of a name counts as the whole name only when it is at least this share of it and at least two words. */
const PART_IS_ENOUGH = 0.7;
/** How far behind the second best must be for a different spelling to be certain. */
const CLEAR = 0.12;

export function matchMove(name: string, library: PasteLibrary): Match {
  const exact = matchExact(name, library);
  if (exact) return exact;
  const asked = fitCompounds(distinctiveWords(name), library);
  if (asked.length === 0) return { how: "none", near: [] };
  const ranked = candidates(asked, library).filter((c) => c.score >= LEAST);
  const [best, second] = ranked;
  const near = ranked.slice(0, MOST_OFFERED).map(({ entry, score }) => ({ move: entry.id, score: hundredth(score) }));
  if (!best) return { how: "none", near };
  const clear = best.score - (second?.score ?? 0) >= CLEAR;
  if (best.allAsked && best.allNamed && clear) return { how: "spelling", move: best.entry.id, near };
  const others = ranked.filter((c) => c.allAsked && c.equal).length;
  const enough = best.allAsked && best.equal && others === 1 && best.score >= PART_IS_ENOUGH && asked.length > 1;
  return enough ? { how: "part", move: best.entry.id, near } : { how: "near", near };
}

/**
 * The move with the same words, in the same or another order; null when there is none. Two moves of one name are both
 * offered.
 */
export function matchExact(name: string, library: PasteLibrary): Match | null {
  const same = library.bySame.get(runTogether(name));
  if (same) return sure("same", same);
  const words = fitCompounds(distinctiveWords(name), library);
  const order = words.length > 1 ? library.byWords.get(sortedKey(words)) : undefined;
  return order ? sure("order", order) : null;
}

function sure(how: "same" | "order", ids: readonly string[]): Match {
  const near = ids.slice(0, MOST_OFFERED).map((move) => ({ move, score: 1 }));
  const [move] = ids;
  return ids.length === 1 && move !== undefined ? { how, move, near } : { how: "near", near };
}

interface Candidate {
  readonly entry: Entry;
  /** Twice the shared weight over the weight of both: 1 when the words are the same. */
  readonly score: number;
  /** Every word asked for is in the name, exactly or nearly. */
  readonly allAsked: boolean;
  /** Every word of the name was asked for. */
  readonly allNamed: boolean;
  /** All matching words are exactly the same. */
  readonly equal: boolean;
}

function candidates(asked: readonly string[], library: PasteLibrary): Candidate[] {
  const touched = new Set<number>();
  const likes = asked.map((word) => new Map(library.like(word)));
  for (const like of likes)
    for (const word of like.keys()) for (const i of library.byWord.get(word) ?? []) touched.add(i);
  const askedWeight = sumOf(asked.map(library.weightOf));
  return [...touched]
    .flatMap((i) => library.entries[i] ?? [])
    .map((entry) => compare(entry, likes, { askedWeight, library }))
    .sort((a, b) => b.score - a.score || (a.entry.name < b.entry.name ? -1 : 1));
}

type Likes = readonly ReadonlyMap<string, number>[];

function compare(entry: Entry, likes: Likes, to: { askedWeight: number; library: PasteLibrary }): Candidate {
  const open = [...entry.words];
  let shared = 0;
  let found = 0;
  let equal = true;
  for (const like of likes) {
    let [bestAt, best] = [-1, 0];
    open.forEach((word, at) => {
      const score = like.get(word) ?? 0;
      if (score > best) [bestAt, best] = [at, score];
    });
    if (bestAt < 0) continue;
    const [word] = open.splice(bestAt, 1);
    shared += best * to.library.weightOf(word ?? "");
    found++;
    if (best < 1) equal = false;
  }
  const score = (2 * shared) / (to.askedWeight + entry.weight);
  return { entry, score: Math.min(1, score), allAsked: found === likes.length, allNamed: open.length === 0, equal };
}

/**
 * The one search for moves by words: the library page, adding and changing a move, and a pasted list all rank with it.
 * Words are folded, short forms written out, and may come in any order or be typed only in part.
 */
import { type NamedMove, type NameIndex, runTogether, sumOf, type WordLikeness } from "./name-index.ts";
import { type NameReading, readingsOf } from "./name-readings.ts";

/** How a move was found, best first. `facts`: some of the words are not in its name. `some`: not all words were found. */
const TIERS = ["same", "words", "begins", "in-order", "any-order", "facts", "some"] as const;
type Tier = (typeof TIERS)[number];

export interface RankedMove {
  readonly entry: NamedMove;
  readonly tier: Tier;
  /** Twice the shared weight over the weight of both names: 1 when the words are the same. */
  readonly score: number;
  /** The same against what comes before a comma or "with" in the name, where that has all the words; else `score`. */
  readonly headScore: number;
  /** Some word was found only as a typo. */
  readonly typo: boolean;
  /** Every word of the move's name was asked for. */
  readonly allNamed: boolean;
  /** The words as typed were all found whole in the name. */
  readonly literal: boolean;
  /** The readings of the name, by number, in which all words were found in this move without a typo. */
  readonly completeIn: readonly number[];
  /** The words asked for, each as the library has it; empty for one that is not in the name. */
  readonly readAs: readonly string[];
}

interface Fit extends Omit<RankedMove, "completeIn"> {
  readonly passed: number;
  /** No short form was written out to find it. */
  readonly asTyped: boolean;
}

const byName = new Intl.Collator("en", { sensitivity: "base", numeric: true });

/**
 * Every move that has one of the words, or all of them while typing, best first: all words before some, whole or begun words before typos, the name
 * before the facts, words as typed before what they are short for, then by tier, shared weight and name. `typing`: a
 * search as it is typed.
 */
export function rankMoves(text: string, index: NameIndex, typing: boolean): RankedMove[] {
  const same = new Set(index.bySame.get(runTogether(text)));
  const best = new Map<NamedMove, { fit: Fit; completeIn: number[] }>();
  readingsOf(text, index, typing).forEach((reading, number) => {
    for (const found of fitsOf(reading, index, typing)) {
      const fit: Fit = same.has(found.entry.id) ? { ...found, tier: "same", typo: false } : found;
      const known = best.get(fit.entry) ?? { fit, completeIn: [] };
      if (fit.tier !== "some" && !fit.typo) known.completeIn.push(number);
      if (byRank(fit, known.fit) < 0) known.fit = fit;
      best.set(fit.entry, known);
    }
  });
  return [...best.values()].sort((a, b) => byRank(a.fit, b.fit)).map(({ fit, completeIn }) => ({ ...fit, completeIn }));
}

function byRank(a: Fit, b: Fit): number {
  const [someA, someB] = [a.tier === "some", b.tier === "some"];
  if (someA || someB) return Number(someA) - Number(someB) || b.score - a.score || nameOrder(a, b);
  return (
    Number(a.typo) - Number(b.typo) ||
    Number(b.tier === "same") - Number(a.tier === "same") ||
    Number(a.tier === "facts") - Number(b.tier === "facts") ||
    Number(b.asTyped) - Number(a.asTyped) ||
    a.passed - b.passed ||
    TIERS.indexOf(a.tier) - TIERS.indexOf(b.tier) ||
    b.score - a.score ||
    nameOrder(a, b)
  );
}

const nameOrder = ({ entry: a }: Fit, { entry: b }: Fit): number =>
  byName.compare(a.name, b.name) || (a.id < b.id ? -1 : Number(a.id > b.id));

type Likes = readonly ReadonlyMap<string, WordLikeness>[];

function fitsOf(reading: NameReading, index: NameIndex, typing: boolean): Fit[] {
  const likes = reading.words.map((word) => index.like(word, typing));
  const touched = likes.map((like) => new Set([...like.keys()].flatMap((word) => index.byAny.get(word) ?? [])));
  const places = typing ? inAll(touched) : new Set(touched.flatMap((places) => [...places]));
  return [...places].flatMap((at) => {
    const entry = index.entries[at];
    return entry ? fitOf(entry, { reading, likes, index }) : [];
  });
}

function inAll([first, ...others]: readonly ReadonlySet<number>[]): ReadonlySet<number> {
  return new Set([...(first ?? [])].filter((at) => others.every((places) => places.has(at))));
}

interface Asked {
  readonly reading: NameReading;
  readonly likes: Likes;
  readonly index: NameIndex;
}

function fitOf(entry: NamedMove, asked: Asked): Fit {
  const { reading, likes, index } = asked;
  const found = foundIn(entry, likes);
  const named = found.filter((f) => f.at >= 0);
  const weigh = (at: number) => index.weightOf(entry.words[at] ?? "");
  const shared = sumOf(named.map((f) => f.like.score * weigh(f.at)));
  const askedWeight = sumOf(
    found.map((f, i) => (f.at >= 0 ? weigh(f.at) : index.weightOf(reading.words[i]?.fold ?? ""))),
  );
  const share = (words: readonly string[]) =>
    Math.min(1, (2 * shared) / (askedWeight + sumOf(words.map(index.weightOf)) || 1));
  const score = share(entry.words);
  const allNamed = named.length === entry.words.length;
  const equal = found.every((f) => f.at >= 0 && f.like.how === "equal");
  return {
    entry,
    tier: tierOf(found, { allNamed, equal }),
    score,
    headScore: named.every((f) => f.at < entry.head) ? share(entry.words.slice(0, entry.head)) : score,
    typo: found.some((f) => f.like.how === "typo"),
    allNamed,
    literal: reading.literal && equal,
    passed: reading.passed,
    asTyped: reading.literal,
    readAs: found.map((f) => entry.words[f.at] ?? ""),
  };
}

interface FoundWord {
  /** Its place in the name; -1 when it is a small word, only in the facts, or nowhere. */
  readonly at: number;
  readonly like: WordLikeness;
  readonly small: boolean;
  readonly missing: boolean;
}

const NOT_FOUND: WordLikeness = { how: "equal", score: 0 };

/** Where each word asked for is found in a move, every word of its name once. A typo gives way to a fact without one. */
function foundIn(entry: NamedMove, likes: Likes): FoundWord[] {
  const open = new Set(entry.words.keys());
  return likes.map((like): FoundWord => {
    const place = bestPlace(entry, like, open);
    if (place.at < 0) {
      const small = bestOf(entry.small, like);
      if (small && small.how !== "typo") return { at: -1, like: small, small: true, missing: false };
    }
    const fact = bestOf(entry.facts, like);
    if (place.at < 0 || (place.like.how === "typo" && fact && fact.how !== "typo")) {
      return { at: -1, like: fact ?? NOT_FOUND, small: false, missing: !fact };
    }
    open.delete(place.at);
    return { ...place, small: false, missing: false };
  });
}

function bestPlace(entry: NamedMove, like: Likes[number], open: ReadonlySet<number>) {
  let best = { at: -1, like: NOT_FOUND };
  for (const at of open) {
    const now = like.get(entry.words[at] ?? "");
    if (now && now.score > best.like.score) best = { at, like: now };
  }
  return best;
}

function bestOf(words: ReadonlySet<string>, like: Likes[number]): WordLikeness | undefined {
  let best: WordLikeness | undefined;
  if (words.size === 0) return best;
  for (const [word, now] of like) if (words.has(word) && now.score > (best?.score ?? 0)) best = now;
  return best;
}

function tierOf(found: readonly FoundWord[], is: { readonly allNamed: boolean; readonly equal: boolean }): Tier {
  if (found.some((f) => f.missing)) return "some";
  if (found.some((f) => f.at < 0 && !f.small)) return "facts";
  if (is.allNamed && is.equal) return "words";
  const places = found.flatMap((f) => (f.small ? [] : f.at));
  if (places.every((at, i) => at === i)) return "begins";
  return places.every((at, i) => i === 0 || at > (places[i - 1] ?? 0)) ? "in-order" : "any-order";
}

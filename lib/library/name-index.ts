/**
 * The library prepared for finding moves: words folded, rare words weighing more, an index from word to moves. Make it
 * once for each library, not for each name or key press.
 */
import type { Move } from "#lib/plan/schema.ts";
import { type FoldedWord, foldedWords, foldText } from "./fold.ts";
import { likeness } from "./similar.ts";

export interface NamedMove {
  readonly id: string;
  readonly name: string;
  /** Folded words of the name that tell moves apart, in order. */
  readonly words: readonly string[];
  /** How many of them come before a comma or "with", which begin what a coach leaves out. */
  readonly head: number;
  /** Its other words, folded: "with", "on". */
  readonly small: ReadonlySet<string>;
  /** Folded words of the move's facts, where they are searched too. */
  readonly facts: ReadonlySet<string>;
}

/** A word to find: `bare` as typed, in small letters without accents. */
export interface AskedWord {
  readonly fold: string;
  readonly bare: string;
}

/** How a word that was asked for fits a word of the library: the same, its beginning, or the same but for a typo. */
export interface WordLikeness {
  readonly how: "equal" | "part" | "typo";
  /** 1 when equal, less for less. */
  readonly score: number;
}

export interface NameIndex {
  readonly entries: readonly NamedMove[];
  /** All folded words of a name run together, so that "pushup" and "push-up" are the same. */
  readonly bySame: ReadonlyMap<string, readonly string[]>;
  /** The distinctive words of a name in sorted order. */
  readonly byWords: ReadonlyMap<string, readonly string[]>;
  /** Places in `entries` by a word of the name. */
  readonly byWord: ReadonlyMap<string, readonly number[]>;
  /** Places in `entries` by any word of the name or the facts. */
  readonly byAny: ReadonlyMap<string, readonly number[]>;
  /** Two neighbouring words of a name by both run together. */
  readonly pairs: ReadonlyMap<string, readonly [string, string]>;
  weightOf(word: string): number;
  /**
   * Words of the library similar to this one. `typing`: it may not be typed to its end, so one letter begins a word and a
   * typo may stand in the beginning of one; else it takes three letters. Cached, so that long lists cost little.
   */
  like(word: AskedWord, typing: boolean): ReadonlyMap<string, WordLikeness>;
}

/** Words that do not tell moves apart. "in", "out" and "up" do. */
const SMALL = new Set(["the", "a", "an", "on", "of", "with", "and", "to", "at", "your", "from", "for", "by"]);
const MAX_NAME_WORDS = 16;

/** Whether a folded word tells moves apart. */
export const isDistinctive = (word: string): boolean => !SMALL.has(word);

/** `factsOf`: what else a search looks through, phrase by phrase; without it, names alone. */
export function nameIndexOf(
  moves: Readonly<Record<string, Move>>,
  factsOf: (move: Move) => readonly string[] = () => [],
): NameIndex {
  const bySame = new Map<string, string[]>();
  const byWords = new Map<string, string[]>();
  const byWord = new Map<string, number[]>();
  const byAny = new Map<string, number[]>();
  const pairs = new Map<string, readonly [string, string]>();
  const spelt = new Map<string, Set<string>>();
  const folded = rememberedFolds();
  const entries = Object.entries(moves).map(([id, move], i): NamedMove => {
    const name = folded(move.name);
    const facts = factsOf(move).flatMap(folded);
    const entry = namedMove(id, move.name, { name, facts });
    for (const { fold, bare } of [...name, ...facts]) spelt.set(fold, (spelt.get(fold) ?? new Set()).add(bare));
    push(bySame, name.map((w) => w.fold).join(""), id);
    push(byWords, sortedKey(entry.words), id);
    for (const word of new Set(entry.words)) push(byWord, word, i);
    for (const word of new Set([...name.map((w) => w.fold), ...entry.facts])) push(byAny, word, i);
    entry.words.slice(1).forEach((word, at) => {
      pairs.set(`${entry.words[at]}${word}`, [entry.words[at] ?? "", word]);
    });
    return entry;
  });
  const weightOf = (word: string) => 1 + Math.log(entries.length / (byWord.get(word)?.length ?? 1) || 1);
  return { entries, bySame, byWords, byWord, byAny, pairs, weightOf, like: likenesses(spelt) };
}

type Words = readonly FoldedWord[];

/** Folds each phrase once: the facts of moves repeat the same few. */
function rememberedFolds(): (phrase: string) => Words {
  const known = new Map<string, Words>();
  return (phrase) => {
    const words = known.get(phrase) ?? foldedWords(phrase);
    known.set(phrase, words);
    return words;
  };
}

function namedMove(id: string, name: string, folded: { readonly name: Words; readonly facts: Words }): NamedMove {
  const headEnd = name.search(/,|\bwith\b/i);
  const head = folded.name.filter((w) => headEnd < 0 || w.from < headEnd);
  return {
    id,
    name,
    words: tellingWords(folded.name).map((w) => w.fold),
    head: tellingWords(head).length,
    small: new Set(folded.name.flatMap(({ fold }) => (isDistinctive(fold) ? [] : fold))),
    facts: new Set(folded.facts.map((w) => w.fold)),
  };
}

/** The likeness of words to those of the library, remembered. `spelt`: how each folded word is written. */
function likenesses(spelt: ReadonlyMap<string, ReadonlySet<string>>): NameIndex["like"] {
  const remembered = [new Map<string, ReadonlyMap<string, WordLikeness>>(), new Map<string, never>()] as const;
  return (word, typing) => {
    const memory: Map<string, ReadonlyMap<string, WordLikeness>> = remembered[typing ? 1 : 0];
    const known = memory.get(word.bare);
    if (known) return known;
    const found = new Map<string, WordLikeness>();
    for (const [fold, written] of spelt) {
      const like = wordLikeness(word, { fold, written }, typing);
      if (like) found.set(fold, like);
    }
    memory.set(word.bare, found);
    return found;
  };
}

/** From this many letters on, a beginning stands for its word in a list; while typing, one letter does. */
const SHORTEST_PART = 3;
const PART_SCORE = 0.9;

function wordLikeness(
  asked: AskedWord,
  word: { readonly fold: string; readonly written: ReadonlySet<string> },
  typing: boolean,
): WordLikeness | null {
  if (asked.fold === word.fold) return { how: "equal", score: 1 };
  const long = asked.bare.length >= (typing ? 1 : SHORTEST_PART);
  if (long && [...word.written].some((bare) => bare.startsWith(asked.bare))) return { how: "part", score: PART_SCORE };
  const begun = typing ? likeness(word.fold.slice(0, asked.fold.length), asked.fold) : 0;
  const score = Math.max(likeness(asked.fold, word.fold), begun);
  return score > 0 ? { how: "typo", score: Math.min(score, PART_SCORE - 0.01) } : null;
}

export const runTogether = (name: string): string => foldText(name).replaceAll(" ", "");
export const sortedKey = (words: readonly string[]): string => [...words].sort().join(" ");
export const sumOf = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

/** The words of a name that tell moves apart, or all of them when none does. At most sixteen. */
export const distinctiveWords = (name: string): string[] => tellingWords(foldedWords(name)).map((w) => w.fold);

/** The same for words already folded. */
export function tellingWords<W extends AskedWord>(words: readonly W[]): W[] {
  const telling = words.filter((word) => isDistinctive(word.fold));
  return (telling.length > 0 ? telling : [...words]).slice(0, MAX_NAME_WORDS);
}

/** "pushup" becomes "push up" and "pull down" "pulldown", whichever the library uses. */
export function fitCompounds(words: readonly AskedWord[], index: NameIndex): AskedWord[] {
  const fit: AskedWord[] = [];
  for (const word of words) {
    const before = fit.at(-1);
    if (before !== undefined && !index.byWord.has(word.fold) && index.byWord.has(before.fold + word.fold))
      fit[fit.length - 1] = { fold: before.fold + word.fold, bare: before.bare + word.bare };
    else if (index.byWord.has(word.fold)) fit.push(word);
    else fit.push(...(parted(word, index) ?? [word]));
  }
  return fit;
}

function parted({ fold, bare }: AskedWord, index: NameIndex): AskedWord[] | null {
  for (let at = 2; at <= fold.length - 2 && fold.length <= 40; at++) {
    const [a, b] = [fold.slice(0, at), fold.slice(at)];
    if (index.byWord.has(a) && index.byWord.has(b)) return [a, b].map((word) => ({ fold: word, bare: word }));
  }
  // "pulld", on the way to "pulldown".
  for (const [run, [first]] of index.pairs) {
    if (bare.length > first.length && run.startsWith(bare)) {
      return [first, bare.slice(first.length)].map((word) => ({ fold: word, bare: word }));
    }
  }
  return null;
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

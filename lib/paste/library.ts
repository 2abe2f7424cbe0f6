/** The library prepared for finding names: words folded, rare words weighing more, an index from word to moves. */

import { likeness } from "#lib/library/similar.ts";
import type { Move } from "#lib/plan/schema.ts";
import { foldedWords, foldText } from "./clean.ts";

export interface Entry {
  readonly id: string;
  readonly name: string;
  /** Folded words that tell moves apart, sorted. */
  readonly words: readonly string[];
  readonly weight: number;
}

export interface PasteLibrary {
  readonly entries: readonly Entry[];
  /** All folded words run together, so that "pushup" and "push-up" are the same. */
  readonly bySame: ReadonlyMap<string, readonly string[]>;
  /** The distinctive words in sorted order. */
  readonly byWords: ReadonlyMap<string, readonly string[]>;
  readonly byWord: ReadonlyMap<string, readonly number[]>;
  weightOf(word: string): number;
  /** Words of the library similar to this one, each with its likeness. Cached, so that long lists cost little. */
  like(word: string): readonly (readonly [string, number])[];
}

/** Words that do not tell moves apart. "in", "out" and "up" do. */
const SMALL = new Set(["the", "a", "an", "on", "of", "with", "and", "to", "at", "your", "from", "for", "by"]);
const MAX_NAME_WORDS = 16;

/** Whether a folded word tells moves apart. */
export const isDistinctive = (word: string): boolean => !SMALL.has(word);

export function libraryOf(moves: Readonly<Record<string, Move>>): PasteLibrary {
  const bySame = new Map<string, string[]>();
  const byWords = new Map<string, string[]>();
  const byWord = new Map<string, number[]>();
  const named = Object.entries(moves).map(([id, move]) => ({
    id,
    name: move.name,
    words: distinctiveWords(move.name),
  }));
  named.forEach(({ id, name, words }, i) => {
    push(bySame, runTogether(name), id);
    push(byWords, sortedKey(words), id);
    for (const word of new Set(words)) push(byWord, word, i);
  });
  const weightOf = (word: string) => 1 + Math.log(named.length / (byWord.get(word)?.length ?? 1) || 1);
  const remembered = new Map<string, readonly (readonly [string, number])[]>();
  return {
    entries: named.map((n) => ({ ...n, weight: sumOf(n.words.map(weightOf)) })),
    bySame,
    byWords,
    byWord,
    weightOf,
    like: (word) => {
      const known = remembered.get(word) ?? alike(word, byWord);
      remembered.set(word, known);
      return known;
    },
  };
}

function alike(word: string, byWord: ReadonlyMap<string, unknown>): (readonly [string, number])[] {
  const found: [string, number][] = [];
  for (const other of byWord.keys()) {
    const score = likeness(word, other);
    if (score > 0) found.push([other, score]);
  }
  return found;
}

export const runTogether = (name: string): string => foldText(name).replaceAll(" ", "");
export const sortedKey = (words: readonly string[]): string => [...words].sort().join(" ");
export const sumOf = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

/** The words of a name that tell moves apart, or all of them when none does. At most sixteen. */
export function distinctiveWords(name: string): string[] {
  const all = foldedWords(name).map((w) => w.fold);
  const telling = all.filter(isDistinctive);
  return (telling.length > 0 ? telling : all).slice(0, MAX_NAME_WORDS);
}

/** "pushup" becomes "push up" and "pull down" "pulldown", whichever the library uses. */
export function fitCompounds(words: readonly string[], library: PasteLibrary): string[] {
  const fit: string[] = [];
  for (const word of words) {
    const before = fit.at(-1);
    if (before !== undefined && !library.byWord.has(word) && library.byWord.has(before + word))
      fit[fit.length - 1] = before + word;
    else if (library.byWord.has(word)) fit.push(word);
    else fit.push(...(parted(word, library) ?? [word]));
  }
  return fit;
}

function parted(word: string, library: PasteLibrary): string[] | null {
  for (let at = 2; at <= word.length - 2 && word.length <= 40; at++) {
    const [a, b] = [word.slice(0, at), word.slice(at)];
    if (library.byWord.has(a) && library.byWord.has(b)) return [a, b];
  }
  return null;
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

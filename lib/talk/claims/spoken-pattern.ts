/**
 * Patterns over plain words that are tried only where they can match. There are some two hundred, and most clauses claim
 * nothing, so each is read once for the parts of words that it cannot do without.
 */
import { FIGURE, LONGEST_PART, type Need, needsOf } from "./pattern-needs.ts";

/** What the readers ask of a pattern. */
export type PatternOfWords = Pick<RegExp, "exec">;

/** No pattern gets far in it. */
const NOTHING_SAID = "\n".repeat(1000);

class SpokenPattern implements PatternOfWords {
  private readonly pattern: RegExp;
  private readonly needs: readonly number[];
  private isCompiled = false;

  constructor(pattern: RegExp) {
    this.pattern = pattern;
    this.needs = needsOf(pattern).map(numberOf);
  }

  exec(words: string): RegExpExecArray | null {
    if (!this.mayBeIn(words)) return null;
    if (!this.isCompiled) this.compile();
    return this.pattern.exec(words);
  }

  /**
   * Engines interpret a pattern the first time and compile it the second; V8 compiles at once for a text of a thousand signs. These
   * patterns are long, and interpreting each once takes longer than all the rest of the first reading.
   */
  private compile(): void {
    this.isCompiled = true;
    this.pattern.test(NOTHING_SAID);
  }

  /** False only where the pattern cannot match. */
  mayBeIn(words: string): boolean {
    hear(words);
    for (const need of this.needs) if (filledIn[need] !== turn) return false;
    return true;
  }
}

/** For patterns over words as `sentences.ts` writes them: lower case, apart by spaces. */
export const spoken = (pattern: RegExp | string): SpokenPattern => new SpokenPattern(new RegExp(pattern));

/** The rows of a table, the pattern of each tried only where it can match. */
export const spokenEach = <T extends { readonly pattern: RegExp }>(
  rows: readonly T[],
): readonly (Omit<T, "pattern"> & { readonly pattern: SpokenPattern })[] =>
  rows.map((row) => ({ ...row, pattern: spoken(row.pattern) }));

/** Needs are numbered, since patterns share them. */
const NUMBERS = new Map<string, number>();
/** Part of a word -> the needs that it fills. */
const FILLED_BY = new Map<string, number[]>();

function numberOf(need: Need): number {
  const key = need.join("|");
  const number = NUMBERS.get(key) ?? NUMBERS.size;
  if (number < NUMBERS.size) return number;
  NUMBERS.set(key, number);
  known.clear();
  for (const part of need) FILLED_BY.set(part, [...(FILLED_BY.get(part) ?? []), number]);
  return number;
}

/** The words last heard, counted, and when each need was last filled: all patterns are asked about one clause in turn. */
let heard: string | undefined;
let turn = 0;
const filledIn: number[] = [];

function hear(words: string): void {
  if (words === heard) return;
  heard = words;
  turn++;
  for (const word of words.split(" ")) for (const need of needsFilledBy(word)) filledIn[need] = turn;
}

const known = new Map<string, readonly number[]>();
/** More words than a plan has. */
const MOST_KNOWN = 5000;

function needsFilledBy(word: string): readonly number[] {
  const needs = known.get(word) ?? [...new Set(partsOf(word).flatMap((part) => FILLED_BY.get(part) ?? []))];
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(word, needs);
  return needs;
}

function partsOf(word: string): string[] {
  const parts = /\d/.test(word) ? [FIGURE] : [];
  for (let from = 0; from < word.length; from++)
    for (let to = from + 1; to <= from + LONGEST_PART && to <= word.length; to++) parts.push(word.slice(from, to));
  return parts;
}

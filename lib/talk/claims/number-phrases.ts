/** Numbers from 0 to 199 as people say or type them: "45", "forty five", "a hundred and twenty". */
import { numberWords } from "../number-words.ts";

const VALUES: ReadonlyMap<string, number> = new Map([
  ...Array.from({ length: 20 }, (_, n): [string, number] => [numberWords(n), n]),
  ...[20, 30, 40, 50, 60, 70, 80, 90].map((n): [string, number] => [numberWords(n), n]),
  ["hundred", 100],
]);
const DOZENS: ReadonlyMap<string, number> = new Map([
  ["a dozen", 12],
  ["half a dozen", 6],
  ["two dozen", 24],
  ["a couple of", 2],
  ["a couple", 2],
]);
const wordsFor = (from: number, to: number, step = 1): string =>
  [...VALUES]
    .filter(([, n]) => n >= from && n <= to && n % step === 0)
    .map(([word]) => word)
    .join("|");
const BELOW_100 = `(?:(?:${wordsFor(20, 90, 10)})(?: (?:${wordsFor(1, 9)}))?|${wordsFor(0, 19)})`;

/** A pattern without groups of its own names. */
export const SPOKEN_NUMBER = `(?:\\d{1,3}|${[...DOZENS.keys()].join("|")}|(?:a |one )?hundred(?: (?:and )?${BELOW_100})?|${BELOW_100})`;

/** The value of what `SPOKEN_NUMBER` matched. */
export function spokenNumberOf(words: string | undefined): number {
  if (words === undefined) return 0;
  if (/^\d/.test(words)) return Number(words);
  const dozens = DOZENS.get(words);
  if (dozens !== undefined) return dozens;
  const parts = words.split(" ");
  // "One hundred" is not 101.
  const counted = parts.includes("hundred") ? parts.slice(parts.indexOf("hundred")) : parts;
  return counted.reduce((sum, word) => sum + (VALUES.get(word) ?? 0), 0);
}

const NTH = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];
export const ORDINAL = `(?:${NTH.join("|")})`;
export const ordinalOf = (word: string | undefined): number => NTH.indexOf(word ?? "") + 1;

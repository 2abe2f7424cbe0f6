/**
 * How many syllables a text has. English only. A word is looked up in the dictionary (`dictionary.ts`) and counted from its
 * letters (`count-syllables.ts`) where that has nothing to say. Words in capitals are read as words, not spelt.
 */
import { countSyllables } from "./count-syllables.ts";
import { DIFFERENT } from "./dictionary.ts";
import { numberWords, sayNumbers } from "./number-words.ts";

/** A short word run into the one before it, and heard: "couldn't", "that'll", "should've", "it'd". */
const HEARD_SHORT = /[^aeiouy](?:n't|'ve|'ll)$|[dt]'d$/;
/** After these the s of "the class's" is a syllable. */
const HISSING = /(?:[sxz]|ch|sh|[cszg]e)$/;

/** Syllables of one word, at least 1 for anything with a letter in it, 0 for none. */
export function syllablesOfWord(word: string): number {
  const plain = word.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replaceAll("’", "'");
  const stem = plain.endsWith("'s") ? plain.slice(0, -2) : plain;
  const letters = stem.replace(/[^a-z]/g, "");
  if (letters === "") return 0;
  const more = (stem !== plain && HISSING.test(stem)) || HEARD_SHORT.test(plain) ? 1 : 0;
  return (DIFFERENT.get(letters) ?? countSyllables(letters)) + more;
}

/** What was counted lately: the lines of a plan are counted at every key press, and hardly one of them has changed. */
const counted = new Map<string, number>();
const MOST_COUNTED = 4000;
const LONGEST_KEPT = 2000;

/** Syllables of a text, numbers said as words. */
export function syllablesOfText(text: string): number {
  const known = counted.get(text);
  if (known !== undefined) return known;
  const sum = sayNumbers(text)
    .split(/[^\p{L}\p{M}'’]+/u)
    .reduce((syllables, word) => syllables + wordSyllables(word), 0);
  if (counted.size >= MOST_COUNTED) counted.clear();
  if (text.length <= LONGEST_KEPT) counted.set(text, sum);
  return sum;
}

/** Words met lately: a class says most of its words many times. */
const words = new Map<string, number>();
const MOST_WORDS = 5000;
const LONGEST_WORD = 40;

function wordSyllables(word: string): number {
  const known = words.get(word);
  if (known !== undefined) return known;
  const syllables = syllablesOfWord(word);
  if (words.size >= MOST_WORDS) words.clear();
  if (word.length <= LONGEST_WORD) words.set(word, syllables);
  return syllables;
}

const ofNumbers: number[] = [];

/** Syllables of a whole number from 0 on, as it is said. */
export function syllablesOfNumber(n: number): number {
  if (n >= 14_400) return syllablesOfText(numberWords(n));
  ofNumbers[n] ??= syllablesOfText(numberWords(n));
  return ofNumbers[n] ?? 0;
}

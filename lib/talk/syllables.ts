/**
 * How many syllables a text has. English only. A word is looked up in `dictionary.ts`, else counted from its letters by
 * `count-syllables.ts`. Words in capitals are read as words, not spelt out.
 */
import { countSyllables } from "./count-syllables.ts";
import { DIFFERENT } from "./dictionary.ts";
import { sayNumbers } from "./number-words.ts";

/** Contractions that add a syllable: "couldn't", "that'll", "should've", "it'd". */
const HEARD_SHORT = /[^aeiouy](?:n't|'ve|'ll)$|[dt]'d$/;
/** After these endings 's adds a syllable, as in "the class's". */
const HISSING = /(?:[sxz]|ch|sh|[cszg]e)$/;

/** Syllables of one word: at least 1 if it has a letter, else 0. */
export function syllablesOfWord(word: string): number {
  const plain = word.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replaceAll("’", "'");
  const stem = plain.endsWith("'s") ? plain.slice(0, -2) : plain;
  const letters = stem.replace(/[^a-z]/g, "");
  if (letters === "") return 0;
  const more = (stem !== plain && HISSING.test(stem)) || HEARD_SHORT.test(plain) ? 1 : 0;
  return (DIFFERENT.get(letters) ?? countSyllables(letters)) + more;
}

/** Syllables of a text, with numbers read as words. */
export function syllablesOfText(text: string, ofWord: (word: string) => number = syllablesOfWord): number {
  return sayNumbers(text)
    .split(/[^\p{L}\p{M}'’]+/u)
    .reduce((syllables, word) => syllables + ofWord(word), 0);
}

const MOST_WORDS = 5000;
const LONGEST_WORD = 40;
const MOST_TEXTS = 2000;
const LONGEST_TEXT = 500;

/** Counts and remembers: a class repeats most of its words, and a plan is counted at every key press. */
export class SyllableCounter {
  private readonly words = new Map<string, number>();
  private readonly texts = new Map<string, number>();

  /** Syllables of a text. Both the talk counter and the cue track ask for each line, and mostly it has not changed. */
  readonly ofText = (text: string): number => {
    const known = this.texts.get(text);
    if (known !== undefined) return known;
    const syllables = syllablesOfText(text, this.ofWord);
    if (this.texts.size >= MOST_TEXTS) this.texts.clear();
    if (text.length <= LONGEST_TEXT) this.texts.set(text, syllables);
    return syllables;
  };

  private readonly ofWord = (word: string): number => {
    const known = this.words.get(word);
    if (known !== undefined) return known;
    const syllables = syllablesOfWord(word);
    if (this.words.size >= MOST_WORDS) this.words.clear();
    if (word.length <= LONGEST_WORD) this.words.set(word, syllables);
    return syllables;
  };
}

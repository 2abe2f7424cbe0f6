/** What a name may mean once its short forms are written out: each reading is one list of words to look for. */
import { foldedWords } from "./fold.ts";
import { type AskedWord, fitCompounds, isDistinctive, type NameIndex, tellingWords } from "./name-index.ts";
import { meaningsOf } from "./trade-words.ts";

export interface NameReading {
  readonly words: readonly AskedWord[];
  /** No short form was written out. */
  readonly literal: boolean;
  /** How many small words were passed over that may have begun a word of the library: "for" of "forearm". */
  readonly passed: number;
}

/** More readings than this are not looked at; names have one or two short forms. */
const MOST_READINGS = 24;
const MOST_WORDS = 16;

/** The readings of a name, as typed first. `typing`: the search, where a word may not be typed to its end. */
export function readingsOf(text: string, index: NameIndex, typing: boolean): NameReading[] {
  const words = foldedWords(text);
  const telling = words.filter((w) => isDistinctive(w.fold) || (typing && begins(w, index)));
  const asked = (telling.length > 0 ? telling : words).slice(0, MOST_WORDS);
  const readings: NameReading[] = [];
  const follow = (at: number, so: NameReading) => {
    if (readings.length >= MOST_READINGS) return;
    const word = asked[at];
    if (!word) {
      const words = so.literal ? so.words : withoutRepeats(so.words);
      if (words.length > 0) readings.push({ ...so, words: fitCompounds(words, index) });
      return;
    }
    for (const step of stepsAt(asked, at, { index, typing })) {
      const { words: more, literal, passed, length } = step;
      const next = { words: [...so.words, ...more], literal: so.literal && literal, passed: so.passed + passed };
      follow(at + length, next);
    }
  };
  follow(0, { words: [], literal: true, passed: 0 });
  return readings;
}

/** "SL leg press" is a single-leg press: a word that a short form already holds is not said twice. */
const withoutRepeats = (words: readonly AskedWord[]): AskedWord[] =>
  words.filter((word, at) => word.fold !== words[at - 1]?.fold);

/** A small word that the library has, or that begins one of its words, as "for" begins "forearm". */
function begins(word: AskedWord, index: NameIndex): boolean {
  if (word.bare.length < 3) return false;
  return [...index.like(word, true).values()].some(({ how }) => how !== "typo");
}

interface Step extends NameReading {
  /** How many words as typed it stands for. */
  readonly length: 1 | 2;
}

/** What the words from here on may stand for: as typed, then what one or two of them are short for. */
function stepsAt(
  asked: readonly AskedWord[],
  at: number,
  { index, typing }: { readonly index: NameIndex; readonly typing: boolean },
): Step[] {
  const word = asked[at] ?? { fold: "", bare: "" };
  const next = asked[at + 1];
  const both = next ? meaningsOf(`${word.fold} ${next.fold}`) : [];
  const short = [...meaningsOf(word.bare), ...(word.bare === word.fold ? [] : meaningsOf(word.fold))];
  const known = short.length + both.length === 0 || index.like(word, typing).size > 0;
  const asTyped: Step[] = known ? [{ words: [word], literal: true, passed: 0, length: 1 }] : [];
  const passed: Step[] =
    isDistinctive(word.fold) || asked.length < 2 ? [] : [{ words: [], literal: true, passed: 1, length: 1 }];
  const written = (meant: string, length: 1 | 2): Step => ({
    words: tellingWords(foldedWords(meant)).filter((w) => isDistinctive(w.fold)),
    literal: false,
    passed: 0,
    length,
  });
  return [...asTyped, ...passed, ...both.map((one) => written(one, 2)), ...short.map((one) => written(one, 1))];
}

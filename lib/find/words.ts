/**
 * The words that are looked for and the words of a text, compared alike wherever the program finds something: case, accents,
 * spelling and plural as in the library's search (`lib/library/fold.ts`), and the beginning of a word is enough.
 */
import { foldedWords } from "#lib/library/fold.ts";

/** A word of a text. Offsets in UTF-16 units; `to` is the first one after. */
export interface TextWord {
  /** In small letters, without accents. */
  readonly bare: string;
  /** The same in one spelling and without a plural's ending. */
  readonly fold: string;
  readonly from: number;
  readonly to: number;
}

/** A word that is looked for. */
export type SoughtWord = Pick<TextWord, "bare" | "fold">;

/** Compatibility forms ("⑴") come apart into signs, which no index of words keeps. */
const plain = (word: string): string => word.replace(/[^\p{L}\p{N}]/gu, "");

export function textWords(text: string): TextWord[] {
  return foldedWords(text).flatMap(({ bare, fold, from, to }) => {
    const word = { bare: plain(bare), fold: plain(fold), from, to };
    return word.bare === "" || word.fold === "" ? [] : [word];
  });
}

/** What is asked for at most: letters of the field, and words of it that count. */
export const MOST_ASKED_LETTERS = 80;
const MOST_SOUGHT_WORDS = 8;
/** One letter begins too many words to be worth an answer. */
const FEWEST_LETTERS = 2;

/** The words to look for; none while too little is typed. A single letter beside other words counts as a whole word does. */
export function soughtWords(text: string): SoughtWord[] {
  const words = textWords(text.slice(0, MOST_ASKED_LETTERS)).slice(0, MOST_SOUGHT_WORDS);
  const enough = words.some(({ bare }) => bare.length >= FEWEST_LETTERS);
  return enough ? words.map(({ bare, fold }) => ({ bare, fold })) : [];
}

/** Whether a word of a text begins with a word that is looked for, in either spelling of both. */
const begins = (word: SoughtWord, asked: SoughtWord): boolean =>
  [word.bare, word.fold].some((one) => one.startsWith(asked.bare) || one.startsWith(asked.fold));

export const hasAll = (words: readonly SoughtWord[], asked: readonly SoughtWord[]): boolean =>
  asked.every((one) => words.some((word) => begins(word, one)));

/** How well a title answers, the smaller the better. */
export const TITLE_RANKS = { exact: 0, begins: 1, all: 2, some: 3, none: 4 } as const;
export type TitleRank = (typeof TITLE_RANKS)[keyof typeof TITLE_RANKS];

/** The words and no others; a title that begins with them; one with all of them, with some, with none. */
export function titleRank(title: readonly SoughtWord[], asked: readonly SoughtWord[]): TitleRank {
  if (title.length === asked.length && asked.every(({ bare }, i) => title[i]?.bare === bare)) return TITLE_RANKS.exact;
  const inOrder = (one: SoughtWord, i: number) => {
    const word = title[i];
    return word !== undefined && begins(word, one);
  };
  if (asked.every(inOrder)) return TITLE_RANKS.begins;
  if (hasAll(title, asked)) return TITLE_RANKS.all;
  return asked.some((one) => title.some((word) => begins(word, one))) ? TITLE_RANKS.some : TITLE_RANKS.none;
}

/** A stretch of a text; `found` where a word that is looked for stands. */
export interface MarkedPart {
  readonly text: string;
  readonly found: boolean;
}

/** The text in stretches, in order; together they are the text. */
export function markedParts(text: string, asked: readonly SoughtWord[]): MarkedPart[] {
  const parts: MarkedPart[] = [];
  let done = 0;
  for (const word of textWords(text)) {
    if (!asked.some((one) => begins(word, one))) continue;
    if (word.from > done) parts.push({ text: text.slice(done, word.from), found: false });
    parts.push({ text: text.slice(word.from, word.to), found: true });
    done = word.to;
  }
  if (done < text.length) parts.push({ text: text.slice(done), found: false });
  return parts;
}

/** A line's worth. */
const EXCERPT_LETTERS = 110;
const BEFORE_LETTERS = 36;

/** One line of the text around the first word that is looked for, cut between words. */
export function excerptAround(text: string, asked: readonly SoughtWord[]): string {
  const line = text.replace(/\s+/g, " ").trim();
  if (line.length <= EXCERPT_LETTERS) return line;
  const first = textWords(line).find((word) => asked.some((one) => begins(word, one)));
  const wished = Math.max(0, (first?.from ?? 0) - BEFORE_LETTERS);
  const from = wished === 0 ? 0 : line.indexOf(" ", wished) + 1;
  const cut = line.slice(from, from + EXCERPT_LETTERS);
  const whole = from + EXCERPT_LETTERS >= line.length ? cut : cut.slice(0, Math.max(cut.lastIndexOf(" "), 1));
  return `${from > 0 ? "… " : ""}${whole}${from + whole.length < line.length ? " …" : ""}`;
}

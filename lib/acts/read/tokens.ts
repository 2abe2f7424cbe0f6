/** Splits a line into words, live fields and the punctuation between them, with character places in the original text. */

import { SAME_WORDS } from "./vocabulary.ts";

export interface Token {
  /** Lower case, without accents, apostrophes as '; a live field keeps its braces. */
  readonly word: string;
  /** Characters of the original text, `to` not included. */
  readonly from: number;
  readonly to: number;
  /** The punctuation before it: 0 none, 1 a comma or the like, 2 the end of a sentence. */
  readonly gap: 0 | 1 | 2;
}

const PIECE =
  /\{[a-z-]+\}|un-\p{L}+|(?:left|right)-hand|[\p{L}\p{N}][\p{L}\p{M}\p{N}]*(?:['’][\p{L}]+)?|\.\d|[.!?…\n]|→|[-=]>|\+|(?<=^|\s)[-−](?=[\p{L}\d])|[,;:()"“”|/]|\s[-–—]+\s|—/gu;
/** "+1 light", "strong→middle". */
const SIGNS: ReadonlyMap<string, string> = new Map([
  ["+", "plus"],
  ["-", "minus"],
  ["−", "minus"],
  ...["→", "->", "=>"].map((sign) => [sign, "to"] as const),
]);
const ASCII = /^[\x20-\x7e]*$/;
/** Longer lines are cut, so that a file made to be slow is not. */
const LONGEST = 2000;

/** `added`: words of a studio, each with the word that it is read as. */
export function tokensOf(text: string, added?: ReadonlyMap<string, string>): Token[] {
  const tokens: Token[] = [];
  let gap: Token["gap"] = 2;
  for (const found of text.slice(0, LONGEST).matchAll(PIECE)) {
    const [piece] = found;
    const from = found.index;
    const sign = SIGNS.get(piece);
    if (sign !== undefined || /[\p{L}\p{N}{]/u.test(piece)) {
      const word = sign ?? wordOf(piece);
      tokens.push({ word: added?.get(word) ?? SAME_WORDS.get(word) ?? word, from, to: from + piece.length, gap });
      gap = 0;
    } else if (/[.!?…\n]/.test(piece)) gap = 2;
    else if (gap === 0 && !isBeforeAmount(piece, tokens)) gap = 1;
  }
  return tokens.map((token, at) => sided(token, tokens[at + 1]));
}

/** "L leg", "R side". */
const sided = (token: Token, next: Token | undefined): Token =>
  (token.word === "l" || token.word === "r") &&
  next?.gap === 0 &&
  /^(?:legs?|arms?|foot|hand|knee|side)$/.test(next.word)
    ? { ...token, word: token.word === "l" ? "left" : "right" }
    : token;

/** "Springs: two", "now on: one light". */
const isBeforeAmount = (piece: string, tokens: readonly Token[]): boolean =>
  piece === ":" && ["springs", "spring", "on"].includes(tokens.at(-1)?.word ?? "");

function wordOf(piece: string): string {
  const small = piece.toLowerCase().replace(/^un-/, "un");
  if (ASCII.test(small)) return small;
  return small
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .replaceAll("’", "'");
}

/** The words of a name, for comparing with those of a line. */
export const wordsOfName = (name: string): string[] => tokensOf(name).map(({ word }) => word);

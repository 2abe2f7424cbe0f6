/**
 * Makes pasted text harmless without moving a character: every offset of the clean text is one of the pasted text.
 * Words are folded for comparing: case, accents, invisible characters, British or American spelling, plural.
 */
import type { TextSpan } from "./types.ts";

/** Line ends become "\n" ("\r\n" stays two characters); control characters and lone surrogates become spaces. */
export function cleanText(text: string): string {
  return text
    .replace(/\r\n/g, " \n")
    .replace(/[\r\v\f\u0085\u2028\u2029]/g, "\n")
    .replace(/[^\P{Cc}\n\t]|\p{Cs}/gu, " ")
    .replace(/[\p{Zs}\uFEFF\u200B\uFDD0]/gu, " ");
}

/** Characters that change the direction of reading: their effect would spill over into the text beside them. */
const TURNING = /[\u200E\u200F\u061C\u202A-\u202E\u2066-\u2069]/g;

/** Words of a person as a plan may hold them: one line, no direction marks, at most `max` UTF-16 units. */
export function cleanWords(text: string, max: number): string {
  const line = text.replace(TURNING, "").replace(/\s+/g, " ").trim();
  if (line.length <= max) return line;
  return line
    .slice(0, max)
    .replace(/[\uD800-\uDBFF]$/, "")
    .trimEnd();
}

export interface Word extends TextSpan {
  readonly fold: string;
}

const WORD = /[\p{L}\p{N}][\p{L}\p{N}\p{M}\p{Cf}'’]*/gu;

/** The words of a text, folded; a hyphen separates two words. */
export function foldedWords(text: string): Word[] {
  return [...text.matchAll(WORD)].flatMap((m) => {
    const fold = foldWord(m[0]);
    return fold === "" ? [] : [{ fold, from: m.index, to: m.index + m[0].length }];
  });
}

/** The words of a text as one string for comparing: "Kneeling Rows" and "kneeling row" are the same. */
export const foldText = (text: string): string =>
  foldedWords(text)
    .map((w) => w.fold)
    .join(" ");

function foldWord(word: string): string {
  const bare = word
    .normalize("NFKD")
    .replace(/[\p{M}\p{Cf}'’]/gu, "")
    .toLowerCase();
  return singular(american(bare));
}

const KEEPS_OUR = new Set(["four", "hour", "your", "our", "pour", "tour"]);

function american(word: string): string {
  if (/.our(s|ed|ing)?$/.test(word) && !KEEPS_OUR.has(word.replace(/s$/, "")))
    return word.replace(/our(?=(s|ed|ing)?$)/, "or");
  return word
    .replace(/^(cent|met|fib|lit)re(s?)$/, "$1er$2")
    .replace(/is(e[sdr]?|ers|ing|ation|ations)$/, (end, tail: string) =>
      word.length > end.length + 3 ? `iz${tail}` : end,
    )
    .replace(/ll(ed|ing)$/, "l$1")
    .replace(/^grey/, "gray");
}

/**
 * English plurals used in this trade, by their endings. Both sides of a comparison go through it, so a wrong stem does
 * no harm.
 */
function singular(word: string): string {
  if (word === "ups") return "up";
  if (word.length < 4) return word;
  if (word.endsWith("lves")) return `${word.slice(0, -3)}f`;
  if (word.endsWith("ies")) return `${word.slice(0, -3)}y`;
  if (/(ss|sh|ch|x)es$/.test(word)) return word.slice(0, -2);
  if (/(ss|us|is)$/.test(word)) return word;
  return word.replace(/s$/, "");
}

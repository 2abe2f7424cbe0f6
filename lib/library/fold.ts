/**
 * Folds words for comparing: case, accents, invisible characters, British or American spelling, plural. The search of
 * moves and the reading of a pasted list compare the same folded words.
 */

/** Offsets in UTF-16 units; `to` is the first one after. */
export interface FoldedWord {
  readonly fold: string;
  /** As typed, but for case, accents and invisible characters: what a word still being typed begins. */
  readonly bare: string;
  readonly from: number;
  readonly to: number;
}

/** Two letters joined by a slash are one abbreviation: "S/A", "p/d", and "w/" is "with". */
const WORD = /(?<![\p{L}\p{N}])(?:\p{L}\/\p{L}(?![\p{L}\p{N}])|w\/)|[\p{L}\p{N}][\p{L}\p{N}\p{M}\p{Cf}'’]*/giu;

/** The words of a text, folded; a hyphen separates two words. */
export function foldedWords(text: string): FoldedWord[] {
  return [...text.matchAll(WORD)].flatMap((m) => {
    const bare = /^w\/$/i.test(m[0]) ? "with" : bareWord(m[0]);
    return bare === "" ? [] : [{ fold: foldWord(bare), bare, from: m.index, to: m.index + m[0].length }];
  });
}

/** The words of a text as one string for comparing: "Kneeling Rows" and "kneeling row" are the same. */
export const foldText = (text: string): string =>
  foldedWords(text)
    .map((w) => w.fold)
    .join(" ");

const bareWord = (word: string): string =>
  word
    .normalize("NFKD")
    .replace(/[\p{M}\p{Cf}'’/]/gu, "")
    .toLowerCase();

/** Folds a word without accents and in small letters. */
const foldWord = (bare: string): string => singular(american(bare));

const KEEPS_OUR = new Set(["four", "hour", "your", "our", "pour", "tour"]);

function american(word: string): string {
  if (/.our(s|ed|ing)?$/.test(word) && !KEEPS_OUR.has(word.replace(/s$/, "")))
    return word.replace(/our(?=(s|ed|ing)?$)/, "or");
  return word
    .replace(
      /^(cent|met|fib|lit)r(e|es|ed|ing)$/,
      (_, stem: string, end: string) => `${stem}er${end.slice(end[0] === "e" ? 1 : 0)}`,
    )
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

/** Numbers as people write them in a list: digits, decimal commas, halves, words up to ninety-nine. */

const ONES =
  "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(
    " ",
  );
const TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split(" ");

const WORDS: ReadonlyMap<string, number> = new Map([
  ...ONES.map((word, i): [string, number] => [word, i + 1]),
  ...TENS.map((word, i): [string, number] => [word, (i + 2) * 10]),
]);

/** Pattern source for a number word, "forty-five" included. */
export const NUMBER_WORD = `(?:(?:${TENS.join("|")})[\\s-](?:${ONES.slice(0, 9).join("|")})|${[...TENS, ...[...ONES].reverse()].join("|")})`;

/** Pattern source for digits: "60", "1.5", "1,5", ".5", "½", "1½". */
export const FIGURES = "(?:\\d{1,5}(?:[.,]\\d{1,2})?½?|\\.\\d{1,2}|½)";

/** The number that a match of either pattern means; NaN for anything else. */
export function readNumber(text: string): number {
  const plain = text.trim().toLowerCase();
  if (/^\d*½$/.test(plain)) return Number(plain.slice(0, -1) || 0) + 0.5;
  if (/^\d*([.,]\d+)?$/.test(plain)) return Number(plain.replace(",", "."));
  const parts = plain.split(/[\s-]+/).map((word) => WORDS.get(word) ?? Number.NaN);
  return parts.reduce((sum, n) => sum + n, 0);
}

/** Numbers as words, so that their syllables can be counted: 45 is "forty five". */

const ONES =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(
    " ",
  );
const TENS = "_ _ twenty thirty forty fifty sixty seventy eighty ninety".split(" ");

/** A whole number from 0 to 999999 in words; a larger one digit by digit. */
export function numberWords(n: number): string {
  if (n < 20) return ONES[n] ?? "";
  if (n < 100) return joined(TENS[Math.floor(n / 10)] ?? "", n % 10);
  if (n < 1000) return joined(`${numberWords(Math.floor(n / 100))} hundred`, n % 100);
  if (n < 1_000_000) return joined(`${numberWords(Math.floor(n / 1000))} thousand`, n % 1000);
  return [...String(n)].map((digit) => ONES[Number(digit)] ?? "").join(" ");
}

const joined = (head: string, rest: number): string => (rest === 0 ? head : `${head} ${numberWords(rest)}`);

/** "2:30" is "two thirty", "1.5" is "one point five", "3" is "three". */
export function sayNumbers(text: string): string {
  return text
    .replace(/(?<!\d)(\d+):(\d\d)/g, (_m, a: string, b: string) => `${spoken(a)} ${spoken(b)}`)
    .replace(
      /(?<!\d)(\d+)[.,](\d+)/g,
      (_m, a: string, b: string) => `${spoken(a)} point ${[...b].map(spoken).join(" ")}`,
    )
    .replace(/\d+/g, (digits) => ` ${spoken(digits)} `);
}

const spoken = (digits: string): string =>
  digits.length > 6 ? [...digits].map((d) => numberWords(Number(d))).join(" ") : numberWords(Number(digits));

/** Puts a finding's values into its message. */
import { countWord, listWords, percent, plainNumber, secondsWords, sentenceCase } from "#lib/plan/format.ts";

/**
 * Fills the `{holes}` of a message. The ending of a name says how its number is worded: `...Seconds` as a length of time,
 * `...Share` (0..1) as a percentage, `countInWords` as the value `count` in words ("no", "one", "two"), others as a plain
 * number. Lists are joined with commas and "and". A hole without a value stays, so that the tests of all rules find it.
 * The first letter becomes a capital.
 */
export function fillMessage(template: string, values: Readonly<Record<string, unknown>>): string {
  const filled = template.replace(/\{([a-zA-Z]+)\}/g, (hole, name: string) =>
    Object.hasOwn(values, name.replace(IN_WORDS, "")) ? wordsOf(name, values[name.replace(IN_WORDS, "")]) : hole,
  );
  return sentenceCase(filled.replace(/\s+/gu, " ").trim());
}

const IN_WORDS = /InWords$/;

function wordsOf(name: string, value: unknown): string {
  if (Array.isArray(value)) return listWords(value.map(String));
  if (typeof value !== "number") return String(value);
  if (IN_WORDS.test(name)) return countWord(value);
  if (/seconds$/i.test(name)) return secondsWords(value);
  if (/share$/i.test(name)) return percent(value);
  return plainNumber(value);
}

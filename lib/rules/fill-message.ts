/** Puts a finding's values into its message. */
import { percent, plainNumber, secondsWords } from "#lib/plan/format.ts";

/**
 * Fills the `{holes}` of a message. A number is worded by the ending of its name: `...Seconds` as a length of time,
 * `...Share` (0..1) as a percentage, anything else as a number. Lists are joined with commas and "and". A hole with no
 * value stays as it is, so that the laws over all rules find it.
 */
export function fillMessage(template: string, values: Readonly<Record<string, unknown>>): string {
  return template.replace(/\{([a-zA-Z]+)\}/g, (hole, name: string) =>
    Object.hasOwn(values, name) ? wordsOf(name, values[name]) : hole,
  );
}

function wordsOf(name: string, value: unknown): string {
  if (Array.isArray(value)) return listWords(value.map(String));
  if (typeof value !== "number") return String(value);
  if (/seconds$/i.test(name)) return secondsWords(value);
  if (/share$/i.test(name)) return percent(value);
  return plainNumber(value);
}

export function listWords(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

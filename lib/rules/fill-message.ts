/** Puts a finding's values into its message. */
import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { percentsApart } from "#lib/formats/percent.ts";
import { distanceWords, forceNumber, forceWords, massWords, offsetsIn, smallLength } from "#lib/formats/units.ts";
import { countWord, listWords, plainNumber, secondsWords, sentenceCase } from "#lib/plan/format.ts";

/**
 * Fills the `{holes}` of a message. The ending of a name says how its number is worded: `...Seconds` as a length of time,
 * `...Share` (0..1) as a percentage, `countInWords` as the value `count` in words ("no", "one", "two"), others as a plain
 * number. After a colon stands the unit that the value is in, for a reader who has others: `N`, `cm`, `mm` and `kg` with the
 * unit behind, `force` without, `place` for words about where people start. Lists are joined with commas and "and". A hole without a value stays, so that the tests of all rules find it.
 * The first letter becomes a capital.
 */
export function fillMessage(
  template: string,
  values: Readonly<Record<string, unknown>>,
  f: Pick<Formats, "force" | "length"> = STANDARD_FORMATS,
): string {
  const shares = sharesOf(template, values);
  const filled = template.replace(MESSAGE_HOLE, (hole, name: string, unit: string | undefined) => {
    const key = name.replace(IN_WORDS, "");
    if (!Object.hasOwn(values, key)) return hole;
    return unit === undefined ? (shares.get(name) ?? wordsOf(name, values[key])) : inUnit(values[key], unit, f);
  });
  return sentenceCase(filled.replace(/\s+/gu, " ").trim());
}

/** Worded together: one that falls short of another must not read the same. */
function sharesOf(template: string, values: Readonly<Record<string, unknown>>): ReadonlyMap<string, string> {
  const found = [...template.matchAll(MESSAGE_HOLE)].flatMap(([, name = "", unit]): [string, number][] => {
    const value = Object.hasOwn(values, name) ? values[name] : undefined;
    return unit === undefined && /share$/i.test(name) && typeof value === "number" ? [[name, value]] : [];
  });
  const words = percentsApart(found.map(([, value]) => value));
  return new Map(found.map(([name], i) => [name, words[i] ?? ""]));
}

/** A hole's name and unit. */
export const MESSAGE_HOLE = /\{([a-zA-Z]+)(?::([a-zA-Z]+))?\}/g;

/** Numbers that an older check kept as texts are read as numbers. */
function inUnit(value: unknown, unit: string, f: Pick<Formats, "force" | "length">): string {
  if (unit === "place") return offsetsIn(String(value), f);
  const n = Number(value);
  switch (unit) {
    case "N":
      return forceWords(n, f, true);
    case "force":
      return String(forceNumber(n, f, true));
    case "cm":
      return distanceWords(n * 10, f);
    case "mm":
      return smallLength(n, f);
    default:
      return massWords(n, f);
  }
}

const IN_WORDS = /InWords$/;

function wordsOf(name: string, value: unknown): string {
  if (Array.isArray(value)) return listWords(value.map(String));
  if (typeof value !== "number") return String(value);
  if (IN_WORDS.test(name)) return countWord(value);
  if (/seconds$/i.test(name)) return secondsWords(value);
  return plainNumber(value);
}

/** How many springs there are: "two springs on", "one heavy". */
import { numberOf, SPOKEN_NUMBER } from "./number-phrases.ts";
import type { Clause } from "./sentences.ts";
import type { Reading } from "./types.ts";

/** Springs are added or taken off, so the number is not how many there are. */
const CHANGES =
  /\b(?:add|adding|take|taking|drop|dropping|remove|lose|swap|change|put|another|more|extra|less|fewer|off|down|up|per|each|if|or|maybe|try|for the)\b/;
const ALL_SPRINGS = new RegExp(
  `\\b(?:(?<n>${SPOKEN_NUMBER})|(?<none>no)) (?<label>(?:[a-z]+ ){0,2})springs?\\b(?! (?:less|more|off|lighter|heavier|from|back|clean))`,
);
const BARE = new RegExp(
  `^(?:you have got |you have |we have |it is |just |and |on |with )*(?<n>${SPOKEN_NUMBER}) (?<label>[a-z]+(?: [a-z]+)?)(?<on> on)?$`,
);

export function springsIn({ words, at }: Clause): Reading[] {
  if (CHANGES.test(words)) return [];
  const named = ALL_SPRINGS.exec(words);
  if (named) {
    const { n, label = "" } = named.groups ?? {};
    const fact = { says: "springs", count: n === undefined ? 0 : numberOf(n), label: label.trim() } as const;
    return [{ fact, at: at + named.index, length: named[0].length }];
  }
  const { n, label } = BARE.exec(words)?.groups ?? {};
  if (n === undefined || label === undefined) return [];
  const fact = { says: "springs", count: numberOf(n), label: label.replace(/ on$/, "") } as const;
  return [{ fact, at, length: words.length, sure: false }];
}

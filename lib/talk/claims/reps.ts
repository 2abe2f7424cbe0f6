/** Counts of repetitions: "ten reps", "eight of these", "four more". */
import { isTakenBack } from "./not-told.ts";
import { numberOf, SPOKEN_NUMBER } from "./number-phrases.ts";
import type { Clause } from "./sentences.ts";
import type { Reading, RepsClaim } from "./types.ts";

const HOW = "(?:slow |good |clean |full |strong |smooth |controlled |big |even |steady )*";
/** Per side, per round or per breath it is another count. */
const NOT_EACH = "(?! (?:each|per|every|apart|a side|on each|on every|to each|at a time|in a row|or|behind)\\b)";
const NOT_IN =
  "(?<!\\b(?:sets|rounds|blocks|every|each|after|per|than|for|in|until|to|between|of|first|or|up to|at least|at most) (?:the |your |our |these )?(?:last |final )?)";
const LEAD =
  "^(?:and |just |only |give me |lets do |lets go |lets have |do |okay |ok |now |we do |we have |you have |you got |still |another |about |it is |that is |come on )*";

interface Phrase {
  readonly which: RepsClaim["which"];
  readonly pattern: RegExp;
  readonly sure?: false;
}
const PHRASES: readonly Phrase[] = [
  {
    which: "more",
    pattern: new RegExp(
      `${NOT_IN}\\b(?:(?<n>${SPOKEN_NUMBER}) (?:last |final )?(?:more )?${HOW}(?:reps?|repetitions?|of (?:these|those|them)) (?:left|to go|more|remaining|to come)|(?<more>${SPOKEN_NUMBER}) more ${HOW}(?:reps?|repetitions?|of (?:these|those|them))|(?:last|final) (?<last>${SPOKEN_NUMBER}) (?:reps|repetitions|of these|of them))\\b${NOT_EACH}`,
    ),
  },
  {
    which: "any",
    pattern: new RegExp(
      `${NOT_IN}\\b(?<n>${SPOKEN_NUMBER}) ${HOW}(?:reps?|repetitions?|of (?:these|those|them))\\b${NOT_EACH}`,
    ),
  },
  {
    which: "more",
    pattern: new RegExp(
      `${LEAD}(?<n>${SPOKEN_NUMBER}) more(?: (?:like that|please|good ones|slow ones|ones|now|go|everyone))?$`,
    ),
  },
  { which: "more", pattern: new RegExp(`${LEAD}(?:the |your )?(?:last|final) (?<n>${SPOKEN_NUMBER})$`) },
  { which: "more", pattern: new RegExp(`${LEAD}(?<n>${SPOKEN_NUMBER}) (?:to go|left)$`), sure: false },
  { which: "any", pattern: new RegExp(`\\b(?:do|repeat) (?:this|that|it) (?<n>${SPOKEN_NUMBER}) times$`), sure: false },
];

export function repsIn({ words, at }: Clause): Reading[] {
  for (const { which, pattern, sure } of PHRASES) {
    const found = pattern.exec(words);
    if (!found) continue;
    const { n, more, last } = found.groups ?? {};
    const count = numberOf(n ?? more ?? last);
    // "One more" is the last one or the last but one; nobody counts from zero.
    if (count < 2 || isTakenBack(words.slice(0, found.index), words)) return [];
    const where = { at: at + found.index, length: found[0].length };
    return [{ fact: { says: "reps", count, which }, ...where, ...(sure === false ? { sure } : {}) }];
  }
  return [];
}

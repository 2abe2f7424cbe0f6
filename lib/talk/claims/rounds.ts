/** "Three rounds", "round two", "two more sets". */
import { isTakenBack } from "./not-told.ts";
import { numberOf, ORDINAL, ordinalOf, SPOKEN_NUMBER } from "./number-phrases.ts";
import type { Clause } from "./sentences.ts";
import type { Reading, RoundsClaim } from "./types.ts";

const NOT_OURS = "(?! (?:of (?:breath|breathing|applause)|a week|ago|each day|springs?)\\b)";
interface Phrase {
  readonly which: RoundsClaim["which"];
  readonly pattern: RegExp;
}
const PHRASES: readonly Phrase[] = [
  {
    which: "more",
    words: `\\b(?<n>${SPOKEN_NUMBER}|another) (?:more )?(?:rounds?|sets?) (?:left|to go|more|remaining|to come)\\b`,
  },
  { which: "more", words: `\\b(?<n>${SPOKEN_NUMBER}) more (?:rounds?|sets?)\\b${NOT_OURS}` },
  { which: "more", words: `\\b(?<n>another) (?:round|set)\\b${NOT_OURS}` },
  {
    which: "nth",
    words: `\\b(?:round|set) (?:number )?(?<n>${SPOKEN_NUMBER})\\b(?=$| of\\b(?! springs)| now\\b| here\\b| starts?\\b| for (?:you|us|me|everyone)\\b| already\\b| everyone\\b| please\\b| then\\b)`,
  },
  {
    which: "nth",
    words: `\\b(?<nth>${ORDINAL}) (?:round|set)(?=$| of (?:it|this|these|\\w+ (?:rounds|sets))| now\\b| here\\b| everyone\\b| please\\b)`,
  },
  { which: "nth", words: `\\b(?<nth>${ORDINAL}) (?:time|go|pass|lap) (?:round|around|through)\\b` },
  { which: "nth", words: `^(?:this is |that is |and |so |the |your )*(?<nth>${ORDINAL}) of (?:${SPOKEN_NUMBER})$` },
  {
    which: "done",
    words: `\\b(?<n>${SPOKEN_NUMBER}) (?:rounds?|sets?) (?:down|done|behind (?:you|us)|in the bag|over|finished)\\b`,
  },
  { which: "done", words: `\\b(?:we|you) have (?:done|had|finished) (?<n>${SPOKEN_NUMBER}) (?:rounds?|sets?)\\b` },
  { which: "all", words: `\\b(?<n>${SPOKEN_NUMBER}) (?:rounds|sets)\\b${NOT_OURS}` },
].map(({ which, words }) => ({ which: which as RoundsClaim["which"], pattern: new RegExp(words) }));

/** "Ready for round two?" is asked before it. */
const NOT_YET = /\b(?:ready for|next|coming up|then|into|in|for|by|from|to) (?:the |your |our )?$/;

export function roundsIn({ words, at }: Clause): Reading[] {
  for (const { which, pattern } of PHRASES) {
    const found = pattern.exec(words);
    if (!found) continue;
    const { n, nth } = found.groups ?? {};
    if (which === "nth" && NOT_YET.test(words.slice(0, found.index))) return [];
    // "First round" is read with the other firsts.
    if (nth === "first" || isTakenBack(words.slice(0, found.index), words)) return [];
    const count = n === "another" ? 1 : n === undefined ? ordinalOf(nth) : numberOf(n);
    const afterThis = /^ after (?:this|that)\b/.test(words.slice(found.index + found[0].length));
    return [
      {
        fact: { says: "rounds", count, which, ...(afterThis ? { afterThis } : {}) },
        at: at + found.index,
        length: found[0].length,
      },
    ];
  }
  return [];
}

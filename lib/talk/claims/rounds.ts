/** "Three rounds", "round two", "two more sets". */
import { isTakenBack } from "./not-told.ts";
import { ORDINAL, ordinalOf, SPOKEN_NUMBER, spokenNumberOf } from "./number-phrases.ts";
import type { SpokenClause } from "./sentences.ts";
import { type PatternOfWords, spoken } from "./spoken-pattern.ts";
import type { ClaimReading, RoundsClaim } from "./types.ts";

const NOT_OURS = "(?! (?:of (?:breath|breathing|applause)|a week|ago|each day|springs?)\\b)";
/** What one go through a move or a circuit is called. */
const ROUND = "(?:round|set|lap|circuit)";
const GO = "(?:time|go|pass|turn) (?:round|around|through|at (?:it|this))";
const BACK_TO_IT =
  "(?:(?:come|be) back here|(?:(?:come|coming|be) back to|return to|returning to|see|meet|visit) (?:this|it|these)(?: one| move)?(?: again)?)";
const TIMES: Readonly<Record<string, number>> = { another: 1, only: 1, once: 1, twice: 2 };

interface Phrase {
  readonly which: RoundsClaim["which"];
  readonly pattern: PatternOfWords;
}
const PHRASES: readonly Phrase[] = [
  { which: "nth", words: `\\b(?:we|you) are back (?:for|at|on|in) ${ROUND} (?:number )?(?<n>${SPOKEN_NUMBER})\\b` },
  {
    which: "more",
    words: `\\b(?<n>${SPOKEN_NUMBER}|another) (?:more )?${ROUND}s? (?:left|to go|more|remaining|to come|after this|to follow|still)\\b`,
  },
  { which: "more", words: `\\b(?<n>${SPOKEN_NUMBER}) more ${ROUND}s?\\b${NOT_OURS}` },
  {
    which: "more",
    words: `\\b${ROUND}s? (?:[a-z]+ ){0,3}(?:and|with|but) (?<n>${SPOKEN_NUMBER}) (?:more |still )*(?:to (?:go|come)|left|more|remaining)\\b`,
  },
  { which: "more", words: `\\b(?<n>another) ${ROUND}\\b${NOT_OURS}` },
  {
    which: "nth",
    words: `\\b${ROUND} (?:number )?(?<n>${SPOKEN_NUMBER})\\b(?=$| (?:out )?of\\b(?! springs)| now\\b| here\\b| starts?\\b| for (?:you|us|me|everyone)\\b| already\\b| everyone\\b| please\\b| then\\b)`,
  },
  {
    which: "nth",
    words: `\\b(?<nth>${ORDINAL}) ${ROUND}(?=$| of (?:it|this|these|\\w+ ${ROUND}s)| now\\b| here\\b| everyone\\b| please\\b)`,
  },
  { which: "nth", words: `\\b(?<bare>${ORDINAL}) ${GO}\\b` },
  { which: "nth", words: `^(?:this is |that is |and |so |the |your )*(?<bare>first) lap$` },
  {
    which: "nth",
    words: `(?:^|\\b(?:the |your ))(?<bare>${ORDINAL})(?= of (?:the |our )?${SPOKEN_NUMBER} ${ROUND}s\\b)`,
  },
  {
    which: "more",
    words: `\\b(?<n>${SPOKEN_NUMBER}|another) (?:more )?(?:times?|go) ?(?:round\\b|around\\b|(?=after (?:this|that)\\b))`,
  },
  { which: "all", words: `\\b(?:our|the|your|my) (?<n>only) ${ROUND}\\b` },
  { which: "done", words: `\\b${ROUND} (?<n>${SPOKEN_NUMBER}) (?:is )?(?:done|over|finished|down)\\b` },
  { which: "more", words: "\\b(?<n>once|twice) more (?:round|around|through)\\b" },
  { which: "more", words: `\\b${BACK_TO_IT} (?<n>once|twice|${SPOKEN_NUMBER}) more(?: times?)?$` },
  {
    which: "all",
    words: `\\b(?<n>${SPOKEN_NUMBER}) (?:goes|turns|passes|times) (?:at|through|round) (?:it|this|these)\\b`,
  },
  { which: "nth", words: `^(?:this is |that is |and |so |the |your )*(?<bare>${ORDINAL}) of (?:${SPOKEN_NUMBER})$` },
  {
    which: "done",
    words: `\\b(?<n>${SPOKEN_NUMBER}) ${ROUND}s? (?:down|done|behind (?:you|us)|in the bag|over|finished)\\b`,
  },
  { which: "done", words: `\\b(?:we|you) have (?:done|had|finished) (?<n>${SPOKEN_NUMBER}) ${ROUND}s?\\b` },
  { which: "all", words: `\\b(?<n>${SPOKEN_NUMBER}) ${ROUND}s\\b${NOT_OURS}` },
].map(({ which, words }) => ({ which: which as RoundsClaim["which"], pattern: spoken(words) }));

const OF_ALL = new RegExp(`^ (?:out )?of (?:the )?(?<n>${SPOKEN_NUMBER})(?: ${ROUND}s)?$`);
/** "Round two of four": how many there are; 0 where that is not said. */
const ofAll = (after: string): { all: number; length: number } => {
  const found = OF_ALL.exec(after);
  return { all: spokenNumberOf(found?.groups?.n), length: found?.[0].length ?? 0 };
};

/** "Ready for round two?" is asked before it. */
const NOT_YET =
  /\b(?:ready for|next|coming up|then|into|in|(?<!\bnow )for|by|from|(?<!\bwelcome )to) (?:the |your |our )?$/;

export function roundsIn({ words, at }: SpokenClause): ClaimReading[] {
  for (const { which, pattern } of PHRASES) {
    const found = pattern.exec(words);
    if (!found) continue;
    const { n, bare, nth = bare } = found.groups ?? {};
    if (which === "nth" && NOT_YET.test(words.slice(0, found.index))) return [];
    // "First round" is read with the other firsts.
    if ((nth === "first" && bare === undefined) || isTakenBack(words.slice(0, found.index), words)) return [];
    const count = n === undefined ? ordinalOf(nth) : (TIMES[n] ?? spokenNumberOf(n));
    const after = words.slice(found.index + found[0].length);
    const where = { at: at + found.index, length: found[0].length };
    const { all, length } = ofAll(after);
    const afterThis = /^ ?after (?:this|that)\b/.test(after);
    return [
      { fact: { says: "rounds", count, which, ...(afterThis ? { afterThis } : {}) }, ...where },
      ...(which === "nth" && all > 0
        ? [{ fact: { says: "rounds", count: all, which: "all" } as const, ...where, length: where.length + length }]
        : []),
    ];
  }
  return [];
}

/** How much is still to come: "two more exercises after this", "nothing comes after this", "the last but one". */
import { isTakenBack } from "./not-told.ts";
import { SPOKEN_NUMBER, spokenNumberOf } from "./number-phrases.ts";
import type { SpokenClause } from "./sentences.ts";
import { type PatternOfWords, spoken } from "./spoken-pattern.ts";
import type { ClaimReading } from "./types.ts";

const MOVES = "(?:moves?|movements?|exercises?|things)";
const N = `(?<n>${SPOKEN_NUMBER}|no|another)`;
const AFTER_THIS = "after (?:this|that)(?: one| move)?";
/** What nothing follows may be the second side as well. */
const AFTER_ALL = "after (?:this|that)(?: one| move| exercise| hold| side| leg| arm)?";
const WINDING_DOWN =
  "(?:(?:the |a |to |some )*(?:stretch(?:es|ing)?|cool(?:ing)? down|rest(?:ing)?|relax(?:ing)?|shower))";
interface Phrase {
  readonly pattern: PatternOfWords;
  readonly withThis: boolean;
  /** Where the words have no number. */
  readonly count?: number;
}
const phrase = (words: string, withThis: boolean, count?: number): Phrase => ({
  ...{ pattern: spoken(words), withThis },
  ...(count === undefined ? {} : { count }),
});
const PHRASES: readonly Phrase[] = [
  phrase(`^(?:and )?then (?:there is |it is |we have |just |only )*${N} (?:more |last |final )+${MOVES}$`, false),
  phrase(
    `\\b(?:we|you)(?: are| will| be| can| all)* (?:done|finished|through|free)(?: for (?:today|the day))? ${AFTER_ALL}$`,
    false,
    0,
  ),
  phrase(
    `\\b${AFTER_ALL} (?:there is |there are |we have |you have |comes? |is |are |it is |only |just |still )+${N}(?: more)?(?: ${MOVES}| one| ones)?(?: to (?:go|come|do)| left| remaining)?$`,
    false,
  ),
  phrase(
    `\\b${N} (?:more |other |further )?${MOVES} (?:to come |to go |left |still )*(?:${AFTER_THIS}|to follow)`,
    false,
  ),
  phrase(
    `\\b${N} (?:more |other )?${MOVES} (?:still )?(?:to go|to come|left|remaining|until the end|before the end)\\b`,
    true,
  ),
  phrase(`\\b${N} more ${MOVES}(?:$| and (?:then )?(?:we|you) are (?:all )?(?:done|finished|free|home)\\b)`, true),
  phrase(
    `\\b(?:nothing|nothing else|nothing more|no more)(?: comes| follows| is| to do| left)* (?:${AFTER_THIS}|follows)`,
    false,
    0,
  ),
  phrase(`\\b${AFTER_ALL} (?:there is |we have |comes |you have )?(?:nothing|no more)\\b`, false, 0),
  phrase(
    `\\bnothing (?:is )?(?:left |more |else |to do )*(?:but|except|apart from|other than) ${WINDING_DOWN}`,
    false,
    0,
  ),
  phrase(
    `\\b${AFTER_ALL} (?:we|you)(?: are| can| will| only| just| all)* (?:(?:done|finished|through)(?: for (?:today|the day)| with (?:the )?class| here)?$|stretch|cool down|go home|free$)`,
    false,
    0,
  ),
  phrase(`\\b(?:not )(?:[a-z]+ ){0,4}anything (?:else |more )?(?:to do )?${AFTER_THIS}`, false, 0),
  phrase(
    `^(?:and )?(?:(?:${AFTER_THIS}|then) )(?:it is |there is |comes )?(?:just |only )(?:the |a |to )?(?:[a-z]+ )?(?:stretch|cool down|shower)$`,
    false,
    0,
  ),
  phrase(`\\b(?:just|only) the (?:stretch|cool down) (?:is left|is left to do|comes) ${AFTER_THIS}`, false, 0),
  phrase(`^(?:and )?(?:then|${AFTER_THIS}) (?:the )?(?:class|session) is (?:over|done|finished)$`, false, 0),
  phrase("\\bthis is all that is left(?: of (?:the |our )?(?:class|session))?$", false, 0),
  phrase(
    `^(?:and |so |now |just |only |still |there is |we have )*${N} more ${AFTER_THIS}(?:$| and (?:then )?(?:we|you) are)`,
    false,
  ),
  phrase(
    `\\b${N} more (?:and|then) (?:then )?(?:we|you) are (?:all )?(?:done|finished|through) for (?:today|the day)\\b`,
    true,
  ),
  phrase(`\\b${N} (?:to go|left|to come) ${AFTER_THIS}`, false),
  phrase(`^(?:and |so |now |just |there is )*another (?:one )?${AFTER_THIS}$`, false, 1),
  phrase(`^(?:and |just )*once more ${AFTER_THIS}$`, false, 1),
  phrase(
    `\\b(?:second to last|next to last|last but one|penultimate|second last)(?: (?:${MOVES}|one)\\b|$)|\\b(?:${MOVES}|one) but one$`,
    false,
    1,
  ),
];

/** Else the rest of the block may be meant. */
const OF_CLASS = /\b(?:class|session|today|the (?:end|day|workout)|(?:we|you) are (?:all )?done)\b/;

/** "After this, we're done for the day." */
const AFTER_THIS_COMMA = /^(?:and |so )?after (?:this|that)(?: one| move)?$/;

export function followingIn(clause: SpokenClause): ClaimReading[] {
  const all = clause.sentence.words;
  if (!AFTER_THIS_COMMA.test(clause.words)) return followingAt(clause.words, clause.at);
  const read = followingAt(all.replaceAll(" ,", "").slice(clause.at), clause.at);
  return read.map((one) => ({ ...one, at: clause.at, length: all.length - clause.at }));
}

function followingAt(words: string, at: number): ClaimReading[] {
  for (const { pattern, withThis, count } of PHRASES) {
    const found = pattern.exec(words);
    if (!found) continue;
    if (isTakenBack(words.slice(0, found.index), words)) return [];
    const n = found.groups?.n;
    const said = count ?? (n === "no" ? 0 : n === "another" ? 1 : spokenNumberOf(n));
    const of = OF_CLASS.test(words) ? ({ of: "class" } as const) : {};
    return [
      { fact: { says: "following", count: said, withThis, ...of }, at: at + found.index, length: found[0].length },
    ];
  }
  return [];
}

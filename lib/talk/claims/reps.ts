/** Counts of repetitions: "ten reps", "eight of these", "four more". */
import { isTakenBack } from "./not-told.ts";
import { SPOKEN_NUMBER, spokenNumberOf } from "./number-phrases.ts";
import type { SpokenClause } from "./sentences.ts";
import { spokenEach } from "./spoken-pattern.ts";
import type { ClaimReading, RepsClaim } from "./types.ts";

const HOW = "(?:slow |good |clean |further |extra |additional |full |strong |smooth |controlled |big |even |steady )*";
/** Per side, per round or per breath it is another count. */
const NOT_EACH =
  "(?! (?:rounds|sets|laps|springs|minutes|moves|exercises|blocks|sides)\\b)(?! (?:each|per|every|apart|a side|on each|on every|to each|at a time|in a row|or|behind)\\b)";
const NOT_IN =
  "(?<!\\b(?:sets|rounds|blocks|every|each|after|per|than|for|in|until|to|between|of|first|or|up to|at least|at most) (?:the |your |our |these )?(?:last |final )?)";
const LEAD =
  "^(?:and |so |we will |we are going to |i want |make it |aim for |all |there are |there is |count |take |(?:crank|knock|bang|pump) out |with |just |only |give me |lets do |lets go |lets have |do |another |yet |i would like |(?:i am )?(?:only )?asking for |you owe me |you (?:will )?do |(?:we|you) are doing |(?:we are |lets )?go(?:ing)? for |i need |(?:there is |we have |you have )?(?:time|room) for |a set of |number |okay |ok |now |we do |we have |you have |you got |still |another |about |it is |that is |come on )*";

/** "Last ten" and "ten to go" are said of seconds as often; "ten more" mostly of repetitions. */
const LOOSE = 6;
const NEAR = 3;

interface Phrase {
  readonly which: RepsClaim["which"];
  readonly pattern: RegExp;
  readonly sure?: false;
  /** A bare number, which may be of seconds too, within so many. */
  readonly orSeconds?: number;
}
/** The move by its name, which whoever knows it compares: "twenty curls", "three more leg presses". */
/** Counted, but never repetitions. */
const NOT_REPS =
  "(?!(?:[a-z]+ ){0,2}(?:seconds|minutes|hours|breaths|beats|counts|rounds?|sets?|laps?|goes|circuits|blocks|springs|moves|movements|exercises|times|sides|inches|centimetres|fingers|hands|legs|arms|knees|feet|years|weeks|days|things)\\b)";
const WHAT = `${NOT_REPS}(?<what>(?:[a-z]+ ){0,2}(?:[a-z]+s|(?:push|sit|curl|pull|roll) (?:ups|downs)))`;
const END =
  "(?: (?:today|only|exactly|please|now|everyone|slowly|here|from (?:you|everyone|all of you|each of you)|of the same|altogether|in total|in you|in us|each time|in all|and (?:(?:we|you|then)(?: [a-z]+)*|move on|change|switch|swap|rest|out)|nice and slow|like that))?$";
const THIS_SIDE = "(?:on|with) (?:this|the (?:left|right|first|second|other|last)) (?:side|leg|arm)";
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
      `${NOT_IN}\\b(?<n>${SPOKEN_NUMBER}) ${HOW}(?:reps?|repetitions?|of (?:these|those|them)|(?<=(?:slow|good|clean|strong|smooth|controlled|big|even|steady) )ones)\\b${NOT_EACH}`,
    ),
  },
  {
    which: "more",
    pattern: new RegExp(
      `${LEAD}(?<n>${SPOKEN_NUMBER}) (?:more|further)(?: (?:like that|please|of the same|from (?:you|everyone|all of you)|for me|good ones|slow ones|ones|now|go|everyone|to do|to come|to go|and (?:we|you) are done))?$`,
    ),
    orSeconds: NEAR,
  },
  {
    which: "more",
    pattern: new RegExp(`${LEAD}(?:the |your )?(?:last|final) (?<n>${SPOKEN_NUMBER})$`),
    orSeconds: LOOSE,
  },
  {
    which: "more",
    pattern: new RegExp(
      `${LEAD}(?<n>${SPOKEN_NUMBER}) (?:to go|left|to do|to come)(?: (?:in you|in us|(?:on|in|of) (?:this|it)(?: one)?))?$`,
    ),
    sure: false,
    orSeconds: LOOSE,
  },
  {
    which: "more",
    pattern: new RegExp(
      `${LEAD}(?<n>${SPOKEN_NUMBER}) more (?:and|then|before|until) (?:we|you|then|rest|change|switch|stop|done|out|the)\\b`,
    ),
  },
  {
    which: "more",
    pattern:
      /^(?:and |so |now )*(?:just|only) (?:the |this )?one more (?<what>(?:rep|repetition|pull|push|press|lift|of (?:these|them)))$/,
  },
  {
    which: "any",
    pattern: new RegExp(`${LEAD}(?<n>${SPOKEN_NUMBER}) (?:in all|in total|altogether|of each|repeats)$`),
  },
  { which: "more", pattern: new RegExp(`${LEAD}(?<n>${SPOKEN_NUMBER}) more ${HOW}${WHAT}${END}`) },
  {
    which: "more",
    pattern: new RegExp(`${LEAD}(?:the |your )?(?:last|final) (?<n>${SPOKEN_NUMBER}) ${HOW}${WHAT}${END}`),
  },
  {
    which: "more",
    pattern: new RegExp(`${LEAD}(?<n>${SPOKEN_NUMBER}) ${HOW}${WHAT} (?:left|to go|more|remaining|to come)$`),
  },
  { which: "any", pattern: new RegExp(`${LEAD}(?<n>${SPOKEN_NUMBER}) ${HOW}${WHAT}${END}`) },
  { which: "any", pattern: new RegExp(`${LEAD}(?<n>${SPOKEN_NUMBER}) ${THIS_SIDE}$`) },
  { which: "more", pattern: new RegExp(`${LEAD}(?<n>${SPOKEN_NUMBER}) more ${THIS_SIDE}$`) },
  {
    which: "more",
    pattern: new RegExp(
      `^(?:and |so |okay )*(?:the |your |this is (?:the |your )|that is (?:the |your ))?(?:last|final|one more|one last|one final) ${NOT_REPS}(?<what>(?!one$|rep$|(?:time|go|thing|but|bit|push(?! up)|little|effort|few|breath|second|minute)\\b)[a-z]+(?: [a-z]+)?)$`,
    ),
  },
  {
    which: "any",
    pattern: new RegExp(
      `^(?:and |so |now )?(?:lets get through|i want to see|show me|can i have|can we do|we need|lets do|lets go for|we do|we will do|we are doing|we are going for|you do|you will do|i want|i need|give me|make it|aim for|a set of|(?:i am |we are )?(?:looking|aiming|hoping|asking|shooting|going) for|(?:i am |we are )after|we want|lets (?:get|see|make it)) (?<n>${SPOKEN_NUMBER})${END}`,
    ),
    sure: false,
  },
  { which: "more", pattern: new RegExp(`${LEAD}another (?<n>${SPOKEN_NUMBER})$`), orSeconds: LOOSE, sure: false },
  {
    which: "any",
    pattern: new RegExp(
      `(?:\\b(?:number|rep) |^(?:and |so |now |that is )*(?!(?:one|two|three|four|five) ))${SPOKEN_NUMBER} (?:out )?of (?<n>${SPOKEN_NUMBER})(?: reps)?(?: (?:done|down|now))?$`,
    ),
    sure: false,
  },
  {
    which: "any",
    pattern: new RegExp(
      `^(?<n>${SPOKEN_NUMBER}) is (?:the|your|our) (?:target|goal|aim|(?:magic )?number)(?: today| here)?$`,
    ),
    sure: false,
  },
  {
    which: "any",
    pattern: new RegExp(`\\b(?:the|your|our) (?:target|goal|aim|magic number) is (?<n>${SPOKEN_NUMBER})$`),
    sure: false,
  },
  {
    which: "any",
    pattern: new RegExp(`^(?:and |so |we |you |are |will |lets )*(?<what>[a-z]+) (?<n>${SPOKEN_NUMBER}) times$`),
    sure: false,
  },
  { which: "any", pattern: new RegExp(`\\b(?:do|repeat) (?:this|that|it) (?<n>${SPOKEN_NUMBER}) times$`), sure: false },
];

const SPOKEN_PHRASES = spokenEach(PHRASES);

/** What any repetition may be called. */
const A_REPETITION = /^(?:reps?|repetition|of (?:these|them)|press|pulls?|lifts?|pushes|drops?|reach(?:es)?|goes)$/;
/** "One round done, two to go." */
const COUNTED_BEFORE = /\b(?:rounds?|sets?|laps?|sides?|moves?|exercises?|minutes?|blocks?)\b/;

export function repsIn({ words, at, sentence }: SpokenClause): ClaimReading[] {
  for (const { which, pattern, sure, orSeconds } of SPOKEN_PHRASES) {
    const found = pattern.exec(words);
    if (!found) continue;
    const { n, more, last, what } = found.groups ?? {};
    const counted = n ?? more ?? last;
    const count = counted === undefined ? 1 : spokenNumberOf(counted);
    // "One more" is the last one or the last but one; nobody counts from zero.
    if (orSeconds && COUNTED_BEFORE.test(sentence.words.slice(0, at))) return [];
    if ((count < 2 && (what === undefined || which === "any")) || isTakenBack(words.slice(0, found.index), words))
      return [];
    const where = { at: at + found.index, length: found[0].length };
    const fact: RepsClaim = {
      ...{ says: "reps", count, which },
      ...(what === undefined || A_REPETITION.test(what) ? {} : { what }),
      ...(orSeconds ? { orSeconds } : {}),
    };
    return [{ fact, ...where, ...(sure === false ? { sure } : {}) }];
  }
  return [];
}

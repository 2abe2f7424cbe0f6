/** The phrases that tell a time, as a table. */
import { SPOKEN_NUMBER } from "./number-phrases.ts";
import { type PatternOfWords, spoken } from "./spoken-pattern.ts";
import type { TimeClaim } from "./types.ts";

const UNIT = "(?:seconds?|s|minutes?|m)\\b";
const KIND = "(?:more |further |full |long |good |short |solid |whole |little )*";
const PART = "(?:and a half|and a quarter|and three quarters)";
/** How people say a length of time; its words are the group `time`. */
const TIME =
  `(?<time>\\d+:\\d\\d|${SPOKEN_NUMBER}(?: ${PART})? ${KIND}${UNIT}(?: ${PART})?(?: (?:and )?${SPOKEN_NUMBER}(?: seconds?)?(?! of\\b))?|` +
  `(?:half a|half|a half|three quarters of a|(?:(?:a|one) )?quarter of a) minute|(?:(?:an?|one) )?minute (?:and )?${SPOKEN_NUMBER}(?: seconds?)?(?= (?:left|more|remaining|to (?:go|come|work)|(?:of|in|on|for) (?:this|these|it|here)|here|now)\\b|$)|(?:(?:a |another )?half an?|(?:a |another )?half|three quarters of an|(?:(?:a|one) )?quarter of an|(?:a )?quarter) hour|(?:an|one|another|a whole|a full|two) hours?(?: ${PART})?|(?:an?|another) ${KIND}minute(?: ${PART})?|` +
  `(?:a )?couple (?:of )?(?:more )?minutes)(?! (?:ago|later|early|late)\\b)`;
const OF_WHAT =
  "(?: (?:in|of|on|for) (?:the |this |our |todays |your )?(?<of>class|session|day|workout|block|section|series|move|one|set|exercise|hold|plank|side|leg|arm|these|those|them))?";
/** Followed by these it is the time of something else, as of a breath or a hold, or it comes again and again. */
const NOT_OF =
  "(?! (?:on|at|in|with|for|of|each|per|every|apart|up|down|than|out|back)\\b(?! (?:the clock|the class|class|this|this move|the move|us|you)\\b))";
/** "Stay up for the last ten seconds" is said beforehand. */
const NOT_FOR =
  "(?<!\\b(?:for|in|until|by|through|throughout|during|over|(?<!welcome )to|from|on) (?:the |your |our |these |those )?)";

const NOW = "(?: (?:now|everyone|everybody|folks|please|of it|only|exactly))?";
/** What may be the name of the move: "of bridging", "of leg presses". */
const WHAT = "(?:[a-z]+ ){0,2}[a-z]+";
const STOPS =
  "(?:stops?|stopping|finishes|ends|rests?|resting|changes?|changing|done|over|finish(?:ed)?|finishing|through|switch|swap|moves? on|moving on|lets? (?:you |us )?go|come down|end|close|free|out(?: of here)?|gone|off|home|go home)\\b";

/** "You have thirty seconds to get down there" is a pause. */
const TO_GET_READY =
  "(?:get|change|set|grab|find|turn|move|swap|come|rest|drink|breathe|recover|shake|switch|stand|sit|lie|kneel|walk)\\b";

type Which = TimeClaim["which"];
interface Phrase {
  readonly which: Which;
  readonly pattern: PatternOfWords;
  /** Fewer seconds, as in "hold two more seconds", are about one repetition. */
  readonly least?: number;
  /** Must be among the words that matched. */
  readonly needs?: RegExp;
  readonly sure?: false;
  readonly of?: TimeClaim["of"];
  /** Must be somewhere in the sentence. */
  readonly around?: RegExp;
}
const phrase = (which: Which, words: string, more: Omit<Phrase, "which" | "pattern"> = {}): Phrase => ({
  which,
  pattern: spoken(words),
  ...more,
});

/** A time without a phrase around it that says of what: "forty-five seconds to open the hips". */
export const ANY_TIME = spoken(`\\b${TIME}`);

/** The first one that a clause contains decides. */
export const TIME_PHRASES: readonly Phrase[] = [
  phrase(
    "left",
    `\\b${TIME} of (?:the |this |our )?(?<of>class|session|workout) (?:is |are )?(?:still )?(?:left|remains?|remaining|to go)$`,
  ),
  phrase("left", `\\b(?:just|only) (?<time>${SPOKEN_NUMBER}) more seconds$`, { least: 3 }),
  phrase(
    "left",
    `\\b${TIME}(?: left| to go)? (?:until|till|before|to) (?:the |we |our )(?:stretch(?:es)?|cool down)\\b`,
    {
      least: 30,
      of: "class",
    },
  ),
  phrase(
    "left",
    `\\b${TIME}(?: more)?(?: is| are)?(?: still)? (?:left|to go|to come|remaining|to the (?:end|finish|close)|until (?:the end|we are done|you are done|the finish))\\b${OF_WHAT}`,
  ),
  phrase("left", `${NOT_FOR}\\b(?:last|final) (?:about )?${TIME}${NOT_OF}${OF_WHAT}`, { least: 5 }),
  phrase("left", `${NOT_FOR}\\b(?:last|final) (?<half>half )?minute\\b${NOT_OF}${OF_WHAT}`),
  phrase("left", `\\b${TIME} (?:more )?of (?:this|it|these|those|that)\\b`, {
    least: 4,
    needs: /\bmore\b|\banother\b/,
    of: "move",
  }),
  phrase(
    "left",
    `\\b(?:into|in|this is|inside) (?:the |our |your )(?:last|final|closing) ${TIME}(?: now| of (?:the |our )?(?<of>class|session|move))?$`,
    { least: 5 },
  ),
  phrase("left", `\\b(?:another )?${TIME} of (?!breathing|resting|rest)[a-z]+ing$`, {
    least: 6,
    needs: /\bmore\b|\banother\b/,
    of: "move",
  }),
  phrase("left", `\\b(?:last|final) (?<time>${SPOKEN_NUMBER}) (?:starts?|begins?)(?: here| now)?$`, {
    least: 10,
    sure: false,
  }),
  phrase("left", `\\b(?:another |a further )?${TIME}${NOT_OF}${OF_WHAT}`, {
    least: 6,
    needs: /\b(?:more|another|further)\b/,
  }),
  phrase("left", `\\b${TIME} (?:warning|countdown|call)$`, { least: 3 }),
  phrase("left", `\\bwhat is left is (?:only |just )*${TIME}$`, { least: 3 }),
  phrase("left", "\\ba (?<time>few seconds) (?:more|left|to go)$"),
  phrase("left", `\\b${TIME} more${NOT_OF}${OF_WHAT}`, { least: 6 }),
  phrase(
    "left",
    `\\b(?:there is|there are|we have|you have|you got|only|just) (?:got |only |just |still |another |about |around |nearly |roughly )*${TIME}${NOW}$`,
    { least: 5 },
  ),
  phrase("left", `\\b${TIME} (?:stands? |lies? |is |are )?between (?:you|us|me) and\\b`, { least: 5 }),
  phrase("left", `\\b${TIME} (?:is|are) (?:all|what) (?:that|there|we|you|it|i)\\b`, { least: 5 }),
  phrase(
    "left",
    `\\b(?:remains?|rests?|down to) (?:(?:only|just|still|about|the|your|our|last|final) )*${TIME}(?: (?:only|now))?$`,
    { least: 5 },
  ),
  phrase("left", `\\bdown to (?:the |our |your )?(?:last|final) (?<time>${SPOKEN_NUMBER})$`, { least: 5, sure: false }),
  phrase(
    "left",
    `\\b(?:we|you) (?:can |will |get to )*(?:stop|rest|finish|change|are (?:done|out)) in (?<time>${SPOKEN_NUMBER})$`,
    { least: 5 },
  ),
  phrase(
    "left",
    `\\b(?:stay|keep going|hang on|hold on)(?: with (?:me|it|this)| there| in there)* for (?:just |only |another )*(?<time>${SPOKEN_NUMBER})(?: more)?$`,
    { least: 10, sure: false },
  ),
  phrase("left", `\\bclass (?:ends|finishes|is over|is done|stops) in (?:about |just |only )*${TIME}`, {
    least: 60,
    of: "class",
  }),
  phrase(
    "left",
    `\\b${TIME} (?:and|then|and then) (?:i|we|you) (?:will |can |get to )*(?:let (?:you |us )(?:all )?go|go home|send you home)\\b`,
    { least: 30 },
  ),
  phrase("left", `^(?:and |just |only )*${TIME}$`, {
    least: 3,
    around: /\b(?:out of time|(?:nearly|almost) (?:there|done|over|finished|home|through)|not long|so close)\b/,
  }),
  phrase("done", "\\b(?:the |your |our )?first minute (?:is )?(?:done|gone|over|down|behind (?:us|you))$"),
  phrase("done", `\\b${TIME} in the (?:bank|bag)\\b`, { least: 10 }),
  phrase("whole", `\\b${TIME} (?:effort|hold|set|interval|burn|push|burst|blast|sprint|job)$`, {
    least: 20,
    of: "move",
  }),
  phrase("left", "\\b(?:last|final) (?<time>few seconds)$", { least: 3 }),
  phrase("whole", `\\b${TIME} (?:here )?on (?:the|your) (?:left|right)(?: (?:leg|side|arm))?$`, {
    least: 20,
    of: "move",
  }),
  phrase("whole", `^(?:it|this|that) (?:takes|lasts|goes on for|runs for) (?:about |only |just )*${TIME}$`, {
    least: 20,
    of: "move",
  }),
  phrase(
    "left",
    `\\b${TIME} of (?:the |our |this |your |todays )?(?<of>class|session|workout) (?:still )?(?:left|to go|to come|remaining)\\b`,
  ),
  phrase(
    "done",
    `\\b(?:you have|we have) (?:done|had|been (?:here|going|at it|working|at this|in it|in this)(?: for)?|held(?: it| this)?(?: for)?|worked(?: for)?) (?:about |already )*${TIME}$`,
    { least: 10 },
  ),
  phrase(
    "left",
    `\\b${TIME} (?:and|then) (?:then )?(?:we|you|it|that|this)(?: are| is| can| will| get to| all)* ${STOPS}`,
  ),
  phrase(
    "left",
    `\\b${TIME} (?:until|till|til|before|to) (?:the |our |we |you )(?:are )?(?:all )?(?:next |end |${STOPS})`,
  ),
  phrase(
    "left",
    `^(?:and )?in (?:about |just |only )?${TIME} (?:time )?(?:we|you|it|that|this)(?: are| is| can| will| get to| all)* ${STOPS}`,
  ),
  phrase(
    "left",
    `\\b(?:we|you|it|this|that|this one|the set|the move)(?: are| is| will| can| be)* ${STOPS}(?: all)? in (?:about |just |only )?${TIME}$`,
  ),
  phrase(
    "left",
    `\\b${TIME} (?:still|longer|yet|ahead(?: of (?:you|us))?|remains?|from the (?:end|finish)|from now|away)\\b`,
    { least: 6 },
  ),
  phrase("whole", `\\b(?:for|over) the next ${TIME}`, { least: 10 }),
  phrase("whole", `\\bthe next ${TIME} (?:is|are|belongs?)\\b`, { least: 10 }),
  phrase(
    "whole",
    `\\b(?:you|we) (?:have|get|got|have got) (?:about |just |only |a good )*${TIME} (?:here|now|today|with this|for this|on this|in this)\\b`,
    {
      least: 10,
      of: "move",
    },
  ),
  phrase(
    "whole",
    `\\b${TIME} (?:in all|in total|altogether|to (?:work|hold|play with|fill|get through|settle in))\\b`,
    { least: 10 },
  ),
  phrase("whole", `\\b${TIME} (?:class|session|workout)\\b`, { least: 300, of: "class" }),
  phrase("whole", `\\b${TIME} (?:of class|together|with me|today)\\b`, { least: 300, of: "class" }),
  phrase("each-side", `\\b${TIME} (?:(?:on )?each (?:side|leg|arm|way)|per (?:side|leg|arm)|a side)\\b`, {
    least: 10,
  }),
  phrase(
    "whole",
    `\\b${TIME} (?:of (?:hard |good |solid |steady )?(?:work|pulling|pushing|pressing|moving|effort)|of this|of it|of these|of them|in this|in it|on this|on it|on these|on them|for this|for these|with these|in here|on the clock)(?: (?:one|move|exercise|set|hold|side|leg|arm))?(?= |$)`,
    { least: 10, of: "move" },
  ),
  phrase(
    "whole",
    `\\bthis (?:one|move|exercise|hold|side) (?:is|takes|lasts|goes on for|goes for|runs for|runs|gets|has) (?:about |only |just )*${TIME}`,
    {
      least: 10,
      of: "move",
    },
  ),
  phrase(
    "whole",
    `\\b(?:work|go|going|keep going|working|keep moving|do|doing) (?:this |these |it |here )?for (?:about |only |just )*${TIME}$`,
    { least: 10 },
  ),
  phrase(
    "whole",
    `\\b(?:hold|holding) (?:this |it |here |there |(?:your|the) [a-z]+ )?for (?:about |only |just )*${TIME}$`,
    { least: 15, sure: false, of: "move" },
  ),
  phrase("whole", `\\b(?:stay|here|staying) (?:this |it |here |there )?for (?:about |only |just )*${TIME}$`, {
    least: 15,
    sure: false,
  }),
  phrase(
    "whole",
    `^(?:and |so |now |about |just |around |only |a (?:quick|short|good|full|solid|steady) )*${TIME}${NOW}$`,
    { least: 10, sure: false },
  ),
  phrase(
    "whole",
    `^(?:and |so |just |only )*(?:(?<time>${SPOKEN_NUMBER}) on the clock|(?:the )?clock (?:says|reads|shows) (?<clock>${SPOKEN_NUMBER}))$`,
    { least: 10 },
  ),
  phrase(
    "done",
    `\\b${TIME} (?:is |are |have )?(?:in|done|down|gone|over|behind us|behind you|already|passed)(?: already| now)?$`,
    {
      least: 10,
    },
  ),
  phrase("left", `\\b${TIME} of (?<what>${WHAT}) (?:left|to go|remaining|to come)$`, { least: 5 }),
  phrase("whole", `\\b${TIME} (?:in|on|for) (?:the |a |your |this |those )?(?<what>${WHAT})$`, { least: 20 }),
  phrase("whole", `\\b(?:you|we) have (?:got |only |just )*${TIME} to (?!${TO_GET_READY})[a-z]+`, {
    least: 20,
    of: "move",
    sure: false,
  }),
  phrase(
    "whole",
    `\\b${TIME} of (?<what>[a-z]+(?: [a-z]+)?) (?:ahead|coming up|in front of (?:us|you)|for (?:us|you))(?: of (?:us|you))?$`,
    { least: 10 },
  ),
  phrase("whole", `\\b${TIME} of (?<what>[a-z]+(?: [a-z]+)?) to [a-z]+(?: [a-z]+){0,3}$`, { least: 10 }),
  phrase(
    "whole",
    `^(?:and |so |now )*(?:i am giving you|i will give you|i want|give me|lets do|lets have|time for|you get) (?:a |about )*${TIME}(?: of work)?$`,
    { least: 20, of: "move", sure: false },
  ),
  phrase("whole", `^(?:and |so |now )*for (?:about |only |just )*${TIME} (?:we|you) [a-z]+$`, {
    least: 20,
    of: "move",
    sure: false,
  }),
  phrase("whole", `\\b(?:clock|timer) (?:is )?(?:set |running )?(?:for|to|at|on) ${TIME}$`, { least: 10 }),
  phrase("whole", `\\b${TIME} of (?<what>${WHAT})$`, { least: 10 }),
  phrase(
    "whole",
    `\\b(?:we|you|lets) (?!rest|pause|stop|drop|wait)(?:[a-z]+ ){1,3}for (?:about |just |only )*${TIME}$`,
    { least: 20, sure: false },
  ),
];

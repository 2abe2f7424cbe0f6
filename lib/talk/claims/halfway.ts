/** "You're halfway." Not "bend half way", which is a depth. */
import { isTakenBack } from "./not-told.ts";
import type { SpokenClause } from "./sentences.ts";
import { spoken } from "./spoken-pattern.ts";
import type { ClaimReading } from "./types.ts";

const TAIL = "(?: (?:already|now|there|through|then|everyone|everybody|folks|friends))*";
const OF = `(?: (?:of|through|in|into|on|up) (?:the |this |our |your )?(?<of>class|session|hour|move|one|set|hold|block|minute|interval|exercise|leg|side|arm))?${TAIL}`;
/** "These curls", which whoever knows the move compares. */
const THESE = "(?:the |these |your |those |this )?(?<what>(?:[a-z]+ ){0,2}(?:[a-z]+[^s ]s|plank|hold))";
const HERE =
  "(?:we are|you are|that is|this is|it is|we have (?:reached|passed|got to)|you have (?:reached|passed|got to))";
const OF_IT =
  "(?:(?: of)? (?:it|this|them|this one|(?:the|your) (?:work|way|time|job|reps|repetitions|seconds|minute)|(?:the|this) (?<of>class|session|hour|move|set|hold)|(?:this|the|your) (?:leg|side|arm)))?";
const DONE = "(?:done|gone|over|finished|down|behind (?:us|you)|in the (?:bag|bank))";
/** More than half is told too, and stays true to the end. */
const PAST = /\b(?:past|over|passed|more than|well|second half|first half|home side)\b/;
const PHRASES = [
  `\\b(?:we are|you are|that is|this is|now) (?:about |nearly |almost |already |just |only |still |exactly |roughly )*(?:past |over |at )?(?:the )?half ?way(?: (?:there|through|done|mark|point|home|point))?${OF}$`,
  `\\bhalf ?way (?:there|done|mark|point)\\b${OF}`,
  `^(?:and |so |now |but )*half ?way(?: through)?${OF}$`,
  `^(?:and |so |now |okay )*(?:${HERE} )?(?:at )?half ?time(?: already| now)?$`,
  "^(?:and |so |now |but )*(?:just |already |well |more than |just over |over |past |about )+half ?way(?: there| through| now| already)?$",
  "^(?:and )?(?:half ?way|half)(?: already| now| done| gone)$",
  "\\b(?:that is|we have done|you have done|this is) half(?: of (?:it|this|the (?<of>class|session)))?(?: done| gone)?$",
  "\\bthe (?<of>class|session|hour|move|hold|set) is half (?:done|over|gone)\\b",
  "\\bhalf (?:of )?(?:it|this|the (?<of>class|session|time|hold|set|move)) (?:is |lies )?(?:done|over|gone|behind (?:us|you))\\b",
  "\\bhalf of (?:it|the time|the (?<of>class)) is (?:done|gone|over)\\b",
  `^(?:and |so |okay |now |just |about |already )*(?:${HERE} )?(?:at |past |over |on )?(?:the )?(?:mid ?point|midway(?: point| mark)?|half(?! way)(?: mark)?|half ?way (?:line|mark|point)|half through)${OF}$`,
  `^(?:and |so |now |already )*${HERE} (?:already |now )?(?:in|past|at) the middle (?:already|now)$`,
  `^(?:and |so |now )*${HERE} (?:in |past |at )?the middle (?:of (?:it|this)(?: one| move)?|of the (?<of>class|session|move|set|hold))(?: now)?$`,
  `\\b(?:one |the first |your first )?(?:half|fifty per ?cent)${OF_IT} (?:is |are )?(?:already |now |all )?${DONE}(?: now| already)?$`,
  `\\bhalf${OF_IT} (?:is )?(?:still )?(?:left|to go|to come|remains|remaining|ahead(?: of us)?)$`,
  "^(?:and )?(?:then )?(?:as much|(?:the )?same)(?: again)? (?:still )?(?:to go|to come|and (?:then )?(?:we|you) are (?:all )?(?:done|finished|there|through|home))$",
  `^(?:and |now |so |${HERE} |into |in |starting |here is |for )*(?:the |our |your )?second half(?: now| we go| already)?${OF}$`,
  "\\b(?:over the hump|(?:on the )?home side of half ?way)\\b",
  `\\bhalf ?way (?:through|into) ${THESE}(?: already| now)?$`,
  `^(?:and |so |now )*(?:${HERE} |we have done |you have done )?half (?:of )?${THESE} (?:is |are )?(?:still )?(?:${DONE}|to go|to come|left)$`,
  `\\b(?:that is|we have done|you have done|this is) half (?:of )?${THESE}$`,
].map(spoken);

const words = (list: string): ReadonlySet<string> => new Set(list.split(" "));
const HALF_WORDS = words("half halfway halftime midway midpoint");
/** A clause of these words alone is about the time, in whatever order they stand. */
const AROUND_HALF = words(
  "and so now okay well right just already about nearly almost roughly exactly bang dead smack spot on at in by we you us are is it that this the have " +
    "has made reached crossed hit come got to passed past over way mid point mark line time there through done gone home behind left remaining still only more of one " +
    "move exercise set work everyone folks team people friends stage here yes then going",
);

/** "You have made already the half", "bang on half time". */
function isAllOfHalf(clause: string): boolean {
  const said = clause.split(" ");
  return (
    said.length > 1 &&
    said.some((word) => HALF_WORDS.has(word)) &&
    said.every((word) => HALF_WORDS.has(word) || AROUND_HALF.has(word))
  );
}

/** "Halfway down" and "slide halfway" are no such clause, but "halfway" by itself could be either. */
export function halfwayIn({ words, at }: SpokenClause): ClaimReading[] {
  for (const pattern of PHRASES) {
    const found = pattern.exec(words);
    if (!found || isTakenBack(words.slice(0, found.index).replace(/\bmore than $/, ""), words)) continue;
    const of = found.groups?.of;
    const within =
      of === undefined || of === "block" ? {} : ({ of: /class|session|hour/.test(of) ? "class" : "move" } as const);
    const sure = !/^(?:and )?half ?way$/.test(words);
    return [
      {
        fact: {
          says: "halfway",
          ...within,
          ...(PAST.test(found[0]) ? { past: true } : {}),
          ...(found.groups?.what ? { what: found.groups.what } : {}),
        },
        at: at + found.index,
        length: found[0].length,
        sure,
      },
    ];
  }
  if (!isAllOfHalf(words) || isTakenBack("", words)) return [];
  return [{ fact: { says: "halfway", ...(PAST.test(words) ? { past: true } : {}) }, at, length: words.length }];
}

/**
 * "Next up, the side plank and reach", "the plank is next". A name may hold commas and "and", so the words are read to the end
 * of the sentence; which name they begin or end with is for whoever knows the names.
 */
import { isDenied } from "./not-told.ts";
import { LIVE, type Sentence } from "./sentences.ts";
import { namesAnExercise } from "./spoken-names.ts";
import { type PatternOfWords, spoken, spokenEach } from "./spoken-pattern.ts";
import type { ClaimReading, NextClaim } from "./types.ts";

const LEAD =
  "(?:and |then |so |we |we will |i will |because |since |okay |ok |now |right |up |from here |from there |can you guess |guess |you know |do you know |straight |directly |immediately |from (?:the |our |these )?[a-z]+ (?=(?:we|it|you|on|into)\\b)|, )*";
const GO = "(?:go|going|move|moving|head|heading|flow|flowing|roll|change|changing|turn|carry on|continue|slide)";
const AFTERWARDS =
  "(?:what is next ,|what comes next ,|next up|up next|coming up next|coming next|coming up|your next move|our next move|the next move|next move|next exercise|the next exercise|our next exercise|the next one|next|after this one|after this|after that|after these|after it|the next thing(?: we do)?|following this|next on (?:the|our|todays) (?:list|menu|agenda|programme|program|plan)|followed by|moving on to|moving to|on to|(?:your|our|the) next [a-z]+ is|now (?:on )?to|(?:in a (?:moment|minute|second|bit)|shortly|soon) ,|after (?:the|these|our|those) [a-z]+(?: [a-z]+)? (?:comes?|we (?:do|go to|go into|have|move to)|we|it is)|get (?:yourself |yourselves )?ready (?:for|to)|prepare (?:yourself |yourselves |your [a-z]+ )?for|preparing for|getting ready for|get set for|next stop|(?:from here|and|then)? ?straight(?: from (?:this|here))? (?:into|to|on to)|from here(?: (?:into|to|on to)| ,)|after the [a-z]+(?: [a-z]+)? ,|this (?:takes|leads|brings) (?:us|you) (?:straight )?(?:into|to|on to)|follow (?:this|that|it)(?: up)? with|following (?:this|that|it)(?: up)? with|(?:soon|shortly|afterwards|in a (?:minute|moment|bit))(?: ,)? (?:(?:we|you|it) (?:will |are going to )?(?:do|make|have|are (?:in|on|doing)|go to|go into|change to|move to|move on to)|comes)|then straight into|then on to|ready for|straight into|" +
  `(?:(?:we|you|we are|we are about to|we will|lets|it is|this) )?${GO}(?: (?:straight|right|directly|on|over|from here|from this|now|next))*(?: (?:into|on to|to)))`;
const FILL =
  "(?: (?:,|is|are|we have|we do|we go to|we move to|we go into|we are going to|it is|there is|comes|will be|you have|up|with|into|to|for|a|an|the|your|our|another|one|that is|some|it will be|straight|we finish with))*";
/** "Next time", "next to", "next breath". */
const NOT_NEXT =
  "(?! (?:stop ,|time|week|weeks|month|year|to|breath|exhale|inhale|rep|reps|repetition|round|set|level|door|few|class|lesson|session|side|step|half|on|phase)(?:\\b|(?<=,))(?! (?:press|plank|bend|lunge)))";
const STARTS = new RegExp(`(?:^|, )${LEAD}(?<lead>${AFTERWARDS})${NOT_NEXT}${FILL} (?<name>[a-z0-9 ,]{3,90})$`);
const THEN =
  /^(?:and |so )?then (?<lead>(?:it is |we have |we will have |you have |we do |we will do |comes |on with |onto |on to |into |back to |straight to |(?:we|you) (?:finish|end|close|round off) with |(?:we|you)(?: are| go| move| will go| will be) (?:into |on to |onto |to |on |going to |going into |doing ))?(?:the |a |an |your |our )?)(?<name>[a-z0-9 ,]{3,90})$/;
/** "When we are done here, it is the plank." */
const ONCE_DONE =
  /^(?:and |so )?(?:when|once|as soon as|after) (?:[a-z]+ ){0,3}(?:done|over|finished|through)(?: [a-z]+){0,3} , (?<lead>(?:then )?(?:it is |we have |we do |you have |we go to |we go into |comes )(?:the |a |an |your |our )?)(?<name>[a-z0-9 ,]{3,90})$/;
const COMES =
  "(?:(?:that |what |which |come |is |are |comes |coming |is coming |up |will be |waits |is waiting |waiting |for (?:you|us) )+?(?:up )?next|(?:is |are )?coming up|(?:are (?:coming|waiting)|is waiting)(?: for (?:you|us))?|(?:is |are |comes |come |up |right |straight )*after (?:this|that|these)(?: one| move)?|(?:when|once|as soon as) (?:this|that|we|you|it)(?: one| is| are| have)* (?:over|done|finished|through)|follows(?: on| straight on| straight away| directly| this| from this| from here)?|to follow|is up)";
const ENDS = new RegExp(
  `(?:^|, |\\bfor (?=(?:the|your|our) ))(?:and |then |so |because |since |as |for |we will do |we do |we will |we are doing |the |a |an |it is |we have )*(?<name>[a-z0-9 ]{3,60}?) ${COMES}(?:$| ,)|(?:^|, )(?:and |then |so |the |a |an )*(?<apart>[a-z0-9 ]{3,40}?) , (?:that|this|it) is (?:what is |what comes |up )?next$|(?:^|, )(?:and |then |so |the |a |an )*(?<bare>[a-z0-9 ]{3,60}?) next(?:$| ,)`,
);
const NO_NAME = new RegExp(
  `^(?:can|guess|not|no|never|next|what|who|when|where|how|you|your|i|it|that|time|breath|week|nothing|something|${LIVE}|(?:left|right|other|second) side|on the|in the)\\b`,
);
/** "The push-ups in a moment". */
const SOON =
  /(?: (?:after (?:this|that)(?: one)?|in a (?:moment|minute|second|bit)|from here|time|now|soon|next|please|everyone|everybody|today|then|again))+$/;
/** "Then push-ups": several are a move, where "then press" is what is done in one. */
const SEVERAL = /^(?!(?:we|they|she|he|the)\b)(?:[a-z]+ ){0,2}[a-z]+s$/;
/** Said of moves and of nothing else. */
const PLAIN =
  /next (?:move|exercise|up|on|stop)|what is next|what comes next|(?:in a (?:moment|minute|bit)|soon|shortly|afterwards)(?: ,)? |from here ,|up next|coming|after|next$|next one|following|followed|straight into|moving|on to$|get ready|ready for|(?:^| )(?:it is|we do|comes|the|an?) $/;

interface Asked {
  readonly pattern: RegExp;
  readonly at: NextClaim["at"];
}
const STARTED = spoken(STARTS);
const ASKED: readonly { readonly pattern: PatternOfWords; readonly at: NextClaim["at"] }[] = [
  { pattern: STARTED, at: "within" },
  ...spokenEach<Asked>([
    { pattern: THEN, at: "start" },
    { pattern: ONCE_DONE, at: "within" },
    { pattern: ENDS, at: "end" },
  ]),
];

/** Any word that something follows; then only the full name of a move of the plan counts. */
const FOLLOWS = spoken(
  /\b(?:next|after (?:this|that|these|it)|following|follows|coming|comes|upcoming|mov(?:e|ing) on|on to|onto|heading (?:for|to|into|towards)|in a (?:moment|minute|second)|shortly|soon|from here|up ahead|we have .* to come)\b/,
);
const NOT_FOLLOWING =
  /\b(?:next (?:time|rep|breath|one|week|class|to|set|round)|last|did|was|were|before|than|like|not|no|never)\b/;

function perhapsNext({ words }: Sentence): ClaimReading[] {
  const found = FOLLOWS.exec(words);
  if (!found || NOT_FOLLOWING.test(words) || words.includes(LIVE) || isDenied(words.slice(0, found.index), words))
    return [];
  const name = words.replace(/ ?,/g, "");
  if (!namesAnExercise(name)) return [];
  return [{ fact: { says: "next", name, at: "within", plain: false }, at: 0, length: words.length, sure: false }];
}

/** Read in two ways, it is as plain as the plainer of them. */
export const nextIn = (sentence: Sentence): ClaimReading[] => {
  const read = readingsIn(sentence);
  if (read.length === 0) return perhapsNext(sentence);
  const plain = read.some(({ fact }) => fact.plain);
  return read.map((one) => ({ ...one, fact: { ...one.fact, plain } }));
};

const readingsIn = ({ words }: Sentence): (ClaimReading & { readonly fact: NextClaim })[] =>
  ASKED.flatMap(({ pattern, at }): (ClaimReading & { readonly fact: NextClaim })[] => {
    const found = pattern.exec(words);
    const name = (found?.groups?.name ?? found?.groups?.apart ?? found?.groups?.bare)
      ?.replace(/ ?,/g, "")
      .replace(SOON, "")
      .trim();
    if (!found || name === undefined || name.length < 3 || NO_NAME.test(name) || name.includes(LIVE)) return [];
    // What is denied before a comma is something else.
    if (isDenied(found[0].startsWith(",") ? "" : words.slice(0, found.index), found[0])) return [];
    const plain =
      at === "end" ||
      pattern === STARTED ||
      (at === "start" && SEVERAL.test(name)) ||
      PLAIN.test(found.groups?.lead ?? "") ||
      /into$/.test(found.groups?.lead ?? "");
    const [head = ""] = (found.groups?.name ?? "").split(" ,");
    const length = found[0].replace(/^[, ]+/, "").length;
    const where = { at: found.index + found[0].length - length, length };
    return [
      {
        fact: {
          says: "next",
          name,
          at,
          plain,
          ...(plain && at !== "end" && head.length < name.length ? { head } : {}),
        },
        ...where,
      },
    ];
  });

/**
 * "Next up, the side plank and reach", "the plank is next". A name may hold commas and "and", so the words are read to the end
 * of the sentence; which name they begin or end with is for whoever knows the names.
 */
import { isDenied } from "./not-told.ts";
import { LIVE, type Sentence } from "./sentences.ts";
import type { ClaimReading, NextClaim } from "./types.ts";

const LEAD = "(?:and |then |so |okay |ok |now |right |up |from here |from there |, )*";
const GO = "(?:go|going|move|moving|head|heading|flow|flowing|roll|change|changing|turn|carry on|continue|slide)";
const AFTERWARDS =
  "(?:next up|up next|coming up next|coming next|coming up|your next move|our next move|the next move|next move|next exercise|the next exercise|the next one|next|after this one|after this|after that|following this|followed by|moving on to|moving to|on to|get ready for|getting ready for|get set for|next stop|then straight into|then on to|ready for|straight into|" +
  `(?:(?:we|you|we are|we will|lets|it is|this) )?${GO}(?: (?:straight|right|directly|on|over|from here|from this|now|next))*(?: (?:into|on to|to)))`;
const FILL =
  "(?: (?:,|is|are|we have|we do|we go to|we move to|we go into|we are going to|it is|there is|comes|will be|you have|up|with|into|to|for|a|an|the|your|our|another|one|that is|some|it will be|straight|we finish with))*";
/** "Next time", "next to", "next breath". */
const NOT_NEXT =
  "(?! (?:time|week|weeks|month|year|to|breath|exhale|inhale|rep|reps|repetition|round|set|level|door|few|class|lesson|session|side|step|half|on|phase)\\b(?! (?:press|plank|bend|lunge)))";
const STARTS = new RegExp(`(?:^|, )${LEAD}(?<lead>${AFTERWARDS})${NOT_NEXT}${FILL} (?<name>[a-z0-9 ,]{3,90})$`);
const THEN =
  /^(?:and |so )?then (?<lead>(?:it is |we have |we do |comes |on with |into )?(?:the |a |an |your |our )?)(?<name>[a-z0-9 ,]{3,90})$/;
const COMES =
  "(?:(?:is |are |comes |coming |is coming |up |will be |waits |is waiting )+?(?:up )?next|(?:is |are )?coming up|(?:is |are |comes |come )?(?:right |straight )?after (?:this|that)(?: one| move)?|follows|to follow|is up)";
const ENDS = new RegExp(
  `(?:^|, )(?:and |then |so |the |a |an |it is |we have )*(?<name>[a-z0-9 ]{3,60}?) ${COMES}$|(?:^|, )(?:and |then |so |the |a |an )*(?<bare>[a-z0-9 ]{3,60}?) next$`,
);
const NO_NAME = new RegExp(
  `^(?:not|no|never|next|what|who|when|where|how|you|your|i|it|that|time|breath|week|nothing|something|${LIVE}|(?:left|right|other|second) side|on the|in the)\\b`,
);
/** "The push-ups in a moment". */
const SOON = /(?: (?:in a (?:moment|minute|second|bit)|now|soon|next|please|everyone|everybody|today|then|again))+$/;
/** Said of moves and of nothing else. */
const PLAIN =
  /next (?:move|exercise|up)|up next|coming|after|next$|next one|following|followed|straight into|moving|get ready|ready for|(?:^| )(?:it is|we do|comes|the|an?) $/;

interface Asked {
  readonly pattern: RegExp;
  readonly at: NextClaim["at"];
}
const ASKED: readonly Asked[] = [
  { pattern: STARTS, at: "within" },
  { pattern: THEN, at: "start" },
  { pattern: ENDS, at: "end" },
];

export const nextIn = ({ words }: Sentence): ClaimReading[] =>
  ASKED.flatMap(({ pattern, at }): ClaimReading[] => {
    const found = pattern.exec(words);
    const name = (found?.groups?.name ?? found?.groups?.bare)?.replace(/ ?,/g, "").replace(SOON, "").trim();
    if (!found || name === undefined || name.length < 3 || NO_NAME.test(name) || name.includes(LIVE)) return [];
    if (isDenied(words.slice(0, found.index), found[0])) return [];
    const plain = at === "end" || PLAIN.test(found.groups?.lead ?? "") || /into$/.test(found.groups?.lead ?? "");
    const length = found[0].replace(/^[, ]+/, "").length;
    const where = { at: found.index + found[0].length - length, length };
    return [{ fact: { says: "next", name, at, plain }, ...where }];
  });

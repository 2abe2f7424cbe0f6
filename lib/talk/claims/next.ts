/**
 * "Next up, the side plank and reach", "the plank is next". A name may hold commas and "and", so the words are read to the end
 * of the sentence; which name they begin or end with is for whoever knows the names.
 */
import { isDenied } from "./not-told.ts";
import { LIVE, type Sentence } from "./sentences.ts";
import type { Reading } from "./types.ts";

const LEAD = "(?:and |then |so |okay |ok |now |right |up |, )*";
const AFTERWARDS =
  "(?:next up|up next|coming up next|coming next|coming up|your next move|our next move|the next move|next move|next exercise|the next one|next|after this one|after this|following this|moving on to|moving to|on to|get ready for|getting ready for|ready for)";
const FILL =
  "(?: (?:,|is|are|we have|we do|we go to|we move to|we go into|we are going to|it is|there is|comes|will be|you have|up|with|into|to|for|a|an|the|your|our|another|one|that is|some))*";
/** "Next time", "next to", "next breath". */
const NOT_NEXT =
  "(?! (?:time|week|weeks|month|year|to|breath|exhale|inhale|rep|reps|repetition|round|set|level|door|few|class|lesson|session|side|step|half|on|phase)\\b(?! (?:press|plank|bend|lunge)))";
const STARTS = new RegExp(`(?:^|, )${LEAD}${AFTERWARDS}${NOT_NEXT}${FILL} (?<name>[a-z0-9 ,]{3,90})$`);
const ENDS =
  /(?:^|, )(?:and |then |so |the |a |an )*(?<name>[a-z0-9 ]{3,60}?) (?:is |are |comes |coming |is coming |up |will be )+?(?:up )?next$|(?:^|, )(?:and |then |so |the |a |an )*(?<bare>[a-z0-9 ]{3,60}?) (?:next|coming up)$/;
const NO_NAME = new RegExp(
  `^(?:not|no|never|next|what|who|when|where|how|you|your|i|it|that|time|breath|week|${LIVE}|(?:left|right|other|second) side|on the|in the)\\b`,
);

const ASKED = [
  { pattern: STARTS, at: "start" },
  { pattern: ENDS, at: "end" },
] as const;

export const nextIn = ({ words }: Sentence): Reading[] =>
  ASKED.flatMap(({ pattern, at }): Reading[] => {
    const found = pattern.exec(words);
    const name = (found?.groups?.name ?? found?.groups?.bare)?.replace(/ ?,/g, "").trim();
    if (!found || name === undefined || name.length < 3 || NO_NAME.test(name) || name.includes(LIVE)) return [];
    if (isDenied(words.slice(0, found.index), found[0])) return [];
    const length = found[0].replace(/^[, ]+/, "").length;
    return [{ fact: { says: "next", name, at }, at: found.index + found[0].length - length, length }];
  });

/** A clause that only names the side. "Reach to the other side" and "feel the left side" say where, not which side it is. */
import type { SpokenClause } from "./sentences.ts";
import { spoken } from "./spoken-pattern.ts";
import type { ClaimReading } from "./types.ts";

const SIDE = spoken(
  "^(?:okay |ok |and |so |now |we are |this is |that is |here is |it is |on |onto |to |over |back |switch |switching |change |changing |swap |" +
    "swapping |move |same |thing |again |repeat |it |all |start |starting |begin |with |for |time for |then |lets |do |go |coming up |next )*" +
    "(?:the |your |our )?(?:(?<side>left|right|other|second|opposite) side|(?<limb>other|second|opposite) (?:leg|arm))(?<then> (?:next|after this|after|coming up))?(?: (?:now|first|please|again|this time|here we go))?$",
);

const LIMB = "(?: (?:leg|arm|side))";
const SINGLE = [
  // "It's the left leg that works", "it is your left that is working".
  `\\b(?<side>left|right)${LIMB} (?:is the one that |that |is |does the )*(?:works?|working|turn)\\b`,
  `\\b(?<side>left|right) (?:is the one that |that |is |does the )+(?:works?|working|turn)\\b`,
  `\\b(?:works?|working|use|using) (?:on )?(?:the|your) (?<side>left|right)${LIMB}$`,
  `\\bturn of (?:the|your) (?<side>left|right)${LIMB}?$`,
  // "Same again on the right next."
  "^(?:and |so |now |we are |we |stay |staying |start |we start |begin |still |all |this is |you are |same |again |thing |repeat |it |then |next |the |we |do |all )*" +
    `on (?:the|your) (?<side>left|right)${LIMB}?(?<then> (?:next|after this|afterwards))?(?: now| again| then| this time| first)?$`,
  // "This leg's your left", "this is the right", "it is the left now".
  `^(?:and |so |okay |now )*(?:this|that|it)(?: one|${LIMB})? is (?:the|your) (?<side>left|right)(?: now| this time|${LIMB})?$`,
  // "Left leg first", "the left arm now".
  `^(?:and |so |okay |now )*(?:the |your )?(?<side>left|right)(?:${LIMB}| one) (?:first|now|this time|again)$`,
].map(spoken);
/** "We've done the left, now the right." */
const ONE_IS_DONE = spoken(
  /\b(?:(?:done|did|finished) (?:the|your) |(?=(?:left|right) (?:is |was )))(?<side>left|right)(?: (?:leg|arm|side))?(?: (?:is|was) (?:done|over|finished|first))?\b/,
);
const AND_NOW = spoken(
  /^(?:and |so |then )*(?:now|so|on to|over to) (?:it is )?(?:the |your )(?<side>left|right)(?: leg| arm| side)?$/,
);

function workingSide({ words, sentence }: SpokenClause): RegExpExecArray | undefined {
  for (const pattern of SINGLE) {
    const found = pattern.exec(words);
    if (found) return found;
  }
  const now = AND_NOW.exec(words);
  const done = ONE_IS_DONE.exec(sentence.words)?.groups?.side;
  return now && done !== undefined && done !== now.groups?.side ? now : undefined;
}

export function sidesIn(clause: SpokenClause): ClaimReading[] {
  const { words, at } = clause;
  const named = workingSide(clause);
  if (named?.groups) {
    const side = named.groups.side === "left" ? "left" : "right";
    const then = named.groups.then !== undefined || /\b(?:then|next)\b/.test(named[0]);
    return [{ fact: { says: "side", side, then }, at: at + named.index, length: named[0].length }];
  }
  const found = SIDE.exec(words);
  const said = found?.groups?.side ?? found?.groups?.limb;
  if (!found || said === undefined) return [];
  const side = said === "left" || said === "right" ? said : "other";
  const then = found.groups?.then !== undefined || /^(?:and )?(?:then|next|coming up)\b/.test(words);
  return [{ fact: { says: "side", side, then }, at, length: words.length }];
}

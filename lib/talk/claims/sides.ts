/** A clause that only names the side. "Reach to the other side" and "feel the left side" say where, not which side it is. */
import type { SpokenClause } from "./sentences.ts";
import type { ClaimReading } from "./types.ts";

const SIDE = new RegExp(
  "^(?:okay |ok |and |so |now |we are |this is |that is |here is |it is |on |onto |to |over |back |switch |switching |change |changing |swap |" +
    "swapping |move |same |thing |again |repeat |it |all |start |starting |begin |with |for |time for |then |lets |do |go |coming up |next )*" +
    "(?:the |your |our )?(?<side>left|right|other|second|opposite) side(?<then> (?:next|after this|after|coming up))?(?: (?:now|first|please|again|this time|here we go))?$",
);

/** "It's the left leg that works", "same again on the right next". */
const WORKING =
  /\b(?<side>left|right) (?:leg|arm|side) (?:is the one that |that |is |does the )?(?:works?|working|turn)\b/;
const ON_SIDE =
  /^(?:and |so |now |we are |still |all |this is |you are |same |again |thing |repeat |it |then |next |the |we |do |all )*on (?:the|your) (?<side>left|right)(?: leg| arm| side)?(?<then> (?:next|after this|afterwards))?(?: now| again| then)?$/;

export function sidesIn({ words, at }: SpokenClause): ClaimReading[] {
  const named = WORKING.exec(words) ?? ON_SIDE.exec(words);
  if (named?.groups) {
    const side = named.groups.side === "left" ? "left" : "right";
    const then = named.groups.then !== undefined || /\b(?:then|next)\b/.test(named[0]);
    return [{ fact: { says: "side", side, then }, at: at + named.index, length: named[0].length }];
  }
  const found = SIDE.exec(words);
  const said = found?.groups?.side;
  if (!found || said === undefined) return [];
  const side = said === "left" || said === "right" ? said : "other";
  const then = found.groups?.then !== undefined || /^(?:and )?(?:then|next|coming up)\b/.test(words);
  return [{ fact: { says: "side", side, then }, at, length: words.length }];
}

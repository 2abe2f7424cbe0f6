/** A clause that only names the side. "Reach to the other side" and "feel the left side" say where, not which side it is. */
import type { SpokenClause } from "./sentences.ts";
import { spoken } from "./spoken-pattern.ts";
import type { ClaimReading } from "./types.ts";

const SIDE = spoken(
  "^(?:okay |ok |and |so |now |we are |this is |that is |here is |it is |on |onto |to |over |back |switch |switching |change |changing |swap |" +
    "swapping |move |same |thing |again |repeat |it |all |start |starting |begin |with |for |time for |then |lets |do |go |coming up |next )*" +
    "(?:the |your |our )?(?:(?<side>left|right|other|second|opposite) side|(?<limb>other|second|opposite) (?:leg|arm))(?<then> (?:next|after this|after|coming up))?(?: (?:to (?:begin|start)|now|first|please|again|this time|here we go))?$",
);

const LIMB = "(?: (?:leg|arm|side))";
const MUSCLE = "(?:glute|hip|thigh|hamstring|quad|calf|shoulder|bicep|tricep|obliques?|waist)";
/** "Your working leg, the right". */
const WORKING_LIMB = /\b(?:working (?:leg|arm|side)|first up|to (?:start|begin)(?: with)?) , $/;
const THE_RIGHT = /^(?:the|your) (?<side>left|right)(?: one| leg| arm| side)?$/;
const SINGLE = [
  // "It's the left leg that works", "it is your left that is working".
  `\\b(?<side>left|right)${LIMB} (?:is the one that |that |is |does the )*(?:works?|working|turn)\\b`,
  `\\b(?<side>left|right) (?:is the one that |that |is |does the )+(?:works?|working|turn)\\b`,
  `\\b(?<side>left|right)${LIMB} is (?:the|your) working (?:leg|arm|side|one)\\b`,
  `^(?:and |so |it is |now )*(?<side>left|right)${LIMB} time$`,
  `^(?:and )?now (?:the|your) (?<side>left|right)${LIMB}?$`,
  // "The right leg is doing the work", "your left is the engine here".
  `^(?:and |so |okay |now |here |it is )*(?:the |your )?(?<side>left|right)(?: (?:leg|arm|side|foot|hand|hip))? (?:(?:is|does|do|are|has|gets|keeps|carries|drives|leads|takes|will|be|doing|the|all|most|of|your|a) )+(?:work|job|engine|driver|boss|worker|leading|lead|load|turn|go|you|one (?:that )?works)\\b`,
  `^(?:and |so |okay |now |here |it is )*(?:the |your )?(?<side>left|right)${LIMB}? (?:carries|drives|leads|works|begins|starts)\\b`,
  `\\b(?<side>left|right) (?:legs|arms|sides) (?:turn|go|time|job)\\b`,
  // "One more side to go."
  `\\b(?:one more|one|another) (?:side|leg|arm) (?<then>to (?:go|come|do)|left|after this|to follow)\\b`,
  // "Switch sides next."
  `^(?:and |so |then |we |will )*(?:switch|swap|change) (?:to the )?(?<other>sides|legs|arms|other side) (?<then>next|after this|in a moment)$`,
  `\\b(?:works?|working|use|using) (?:on )?(?:the|your) (?<side>left|right)${LIMB}$`,
  // "We're working the right glute here."
  `\\bworking (?:on )?(?:the|your) (?<side>left|right) ${MUSCLE}(?: here| now| today| first)?$`,
  `^(?:and |so |now )*(?:the|your) working ${LIMB.slice(4, -1)} is (?:the|your) (?<side>left|right)(?: one|${LIMB})?$`,
  // "We've still the other side to do."
  `\\b(?:(?:we|you) (?:still )?have|there is) (?:still |got |also )*(?:the|your) (?<other>other|second) (?:side|leg|arm) (?:still )?(?<then>to (?:do|go|come)|left)\\b`,
  `\\bturn of (?:the|your) (?<side>left|right)${LIMB}?$`,
  // "Same again on the right next."
  "^(?:and |so |now |we are |we |stay |staying |start |lets |we start |begin |still |all |this is |you are |same |again |thing |repeat |it |then |next |the |we |do |all )*" +
    `(?:on|with) (?:the|your) (?<side>left|right)${LIMB}?(?<then> (?:next|after this|afterwards))?(?: now| again| then| this time| first| here)?$`,
  // "The right leg goes first."
  `^(?:and |so |okay |now )*(?:the |your )?(?<side>left|right)${LIMB} (?:goes|comes|starts|begins)(?: first| us off)?$`,
  // "Left leg is next", "the other leg gets its turn next".
  `^(?:and |so |then )*(?:the |your )?(?:(?<side>left|right)${LIMB}|(?<other>other|second)${LIMB}) (?:is |comes |goes |will be |gets (?:it is|a|the) (?:turn|go) )?(?<then>next|after this|to follow|coming up)$`,
  // "Then we swap to the left."
  `^(?:and |so )?(?<then>then) (?:we |you |will |it is )*(?:swap|switch|change|go|move|come)(?: over)? (?:to|onto|on|over to) (?:the |your )?(?<side>left|right)${LIMB}?$`,
  // "This leg's your left", "this is the right", "it is the left now".
  `^(?:and |so |okay |now )*(?:this|that|it)(?: one|${LIMB})? is (?:the|your) (?<side>left|right)(?: now| this time|${LIMB})?$`,
  // "Left leg first", "the left arm now".
  `^(?:and |so |okay |now )*(?:the |your )?(?<side>left|right)(?:${LIMB}| one) (?:to (?:begin|start)(?: with)?|first|now|this time|again)$`,
].map(spoken);
/** "We've done the left, now the right." */
const ONE_IS_DONE = spoken(
  /\b(?:(?:done|did|finished) (?:the|your) |(?=(?:left|right) (?:is |was )))(?<side>left|right)(?: (?:leg|arm|side))?(?: (?:is|was) (?:done|over|finished|first))?\b/,
);
const AND_NOW = spoken(
  /^(?:and |so |then )*(?:now|so|on to|over to) (?:it is )?(?:the |your )(?<side>left|right)(?: leg| arm| side)?$/,
);

/** "Left leg, let's go." */
const SIDE_ALONE =
  /^(?:and |so |okay |now )*(?:the |your )?(?<side>left|right) (?:leg|arm)(?: , (?:lets go|go|here we go|off you go|please|everyone|everybody|folks|team|your turn))+$/;

function workingSide({ words, at, sentence }: SpokenClause): RegExpExecArray | undefined {
  const alone = at === 0 ? SIDE_ALONE.exec(sentence.words) : null;
  if (alone) return alone;
  for (const pattern of SINGLE) {
    const found = pattern.exec(words);
    if (found) return found;
  }
  if (WORKING_LIMB.test(sentence.words.slice(0, at))) {
    const named = THE_RIGHT.exec(words);
    if (named) return named;
  }
  const now = AND_NOW.exec(words);
  const done = ONE_IS_DONE.exec(sentence.words)?.groups?.side;
  return now && done !== undefined && done !== now.groups?.side ? now : undefined;
}

export function sidesIn(clause: SpokenClause): ClaimReading[] {
  const { words, at } = clause;
  const named = workingSide(clause);
  if (named?.groups) {
    const { side: word } = named.groups;
    const side = word === "left" || word === "right" ? word : "other";
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

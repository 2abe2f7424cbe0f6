/**
 * Whether words tell a change, in the words that coaches use. Looks for signs, not grammar: a line that names the thing at
 * all counts, since people lose trust over a false reminder sooner than over a missing one.
 */
import { moveName } from "#lib/plan/format.ts";
import type { CueKind, MoveItem, Plan } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";

/** Stand-ins for the live fields of springs and side, spelt as nobody would type them. */
export const SPRINGS_FIELD = "springsfield";
const SIDE_FIELD = "sidefield";

/**
 * Words in lower case, each with one space on either side: " carriage home two light ". Letters of any script and digits
 * stay, accents and punctuation go. Live fields for the move, its springs and its side are filled in.
 */
export function matchingWords(plan: Plan, item: MoveItem, text: string): string {
  const filled = text.includes("{")
    ? text
        .replaceAll("{springs}", ` ${SPRINGS_FIELD} `)
        .replaceAll("{side}", ` ${SIDE_FIELD} `)
        .replaceAll("{move}", () => ` ${moveName(plan, item)} `)
    : text;
  return ` ${bareWords(filled)} `;
}

const ASCII = /^[\x20-\x7e]*$/;

/** Lower case, without accents and punctuation, trimmed. */
export function bareWords(text: string): string {
  // Most lines are ASCII and need no normalising, which is slow; all lines are read at every key press.
  if (ASCII.test(text))
    return text
      .toLowerCase()
      .replaceAll("'", "")
      .replace(/[^a-z0-9]+/g, " ")
      .trim();
  return text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/\p{M}+|['’]/gu, "")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

/** An item's lines of these kinds, joined with "|" so that no phrase spans two lines; "" for none. */
export function saidIn(plan: Plan, item: MoveItem, kinds: readonly CueKind[]): string {
  const lines = (item.script ?? []).filter((line) => kinds.includes(line.kind) && line.text.trim() !== "");
  return lines.map((line) => matchingWords(plan, item, line.text)).join("|");
}

/** The words of the pauses before a move, since "Handles down, drink." is said in time. */
export const saidInPauses = (plan: Plan, { item, pauses }: SetupStep): string =>
  pauses.map((pause) => matchingWords(plan, item, pause.text ?? "")).join("|");

export const NUMBER = "(?:\\d+|an?|one|two|three|four|five|six|seven|eight|nine|ten|both|all|everything|another)";
const SPRINGS_TOLD = new RegExp(
  `${SPRINGS_FIELD}|\\b(?:springs?|coils?|tension|resistance|loads?|unload|reload|heav(?:y|ier)|lighter|strip|` +
    `(?:add|drop|lose|remove|change|swap|take off|put on|down to|up to) (?:the )?${NUMBER}|` +
    `(?:take|put|bring|leave|have|keep) (?:the )?${NUMBER} (?:\\w+ ){0,2}(?:on|off)|` +
    `${NUMBER} (?:more|less|fewer|on|off|extra))\\b`,
);

/** Springs are told by the studio's names for them, the live field, a number that goes on or off, or the word itself. */
export function tellsSprings(plan: Plan, words: string): boolean {
  if (SPRINGS_TOLD.test(words)) return true;
  return plan.equipment.springs.some(({ label }) => {
    const name = bareWords(label);
    return name !== "" && (words.includes(` ${name} `) || words.includes(` ${name}s `));
  });
}

/** "Back long" and "right hand" are about a body, "sit back" is a movement: none of them says which way to face. */
const NOT_OF_A_BODY =
  "(?! (?:hands?|arms?|foot|feet|legs?|knees?|heels?|toes?|forearms?|elbows?|hips?|shoulders?|palms?|fists?|thighs?|" +
  "platforms?|bars?|to the usual|side|straight|long|flat|tall|neutral|still|now|away|and forth|of (?:the|your)))";
const NOT_A_MOVEMENT =
  "(?<!\\b(?:your|on the|low|lower|upper|long|flat|straight|come|sit|lean|pull|press|push|step|hop|get|knees|heels) )";
const FACING_TOLD = new RegExp(
  `\\b(?:fac(?:e|es|ing)|turn(?:s|ed|ing)?|spin|swivel|pivot|rotate|around|sideways|side on|profile|mirrors?|walls?|` +
    `windows?|doors?|anchors?|(?:on|onto) (?:your|the|one|${SIDE_FIELD}) side|` +
    `${NOT_A_MOVEMENT}(?:front|back|left|right)${NOT_OF_A_BODY})\\b`,
);
const LYING_TOLD = /\b(?:lie|lies|lying|roll|rolls|head)\b/;
const LYING: readonly string[] = ["supine", "prone", "side-lying"];

const SIDE_TOLD = new RegExp(
  `${SIDE_FIELD}|\\b(?:left|right|other|second|first|opposite|switch|swap|change (?:side|hand|leg|arm)s?)\\b`,
);
export const tellsSide = (words: string): boolean => SIDE_TOLD.test(words);

/**
 * Which way to face. Lying down settles it too, since heads go where the rests are, and so does the side somebody lies on.
 */
export const tellsFacing = (words: string, { item, to }: SetupStep): boolean =>
  FACING_TOLD.test(words) ||
  (LYING.includes(to.position) && LYING_TOLD.test(words)) ||
  (to.position === "side-lying" && item.side !== "both" && tellsSide(words));

const HANDLES_TOLD =
  /\b(?:handles?|grips?|straps?|loops?|ropes?|cables?|cross(?:ed|ing)?|uncross(?:ed)?|grab|grasp|take hold|hold (?:of|on|the|both|one)|let go|release|pick (?:it |them )?up|put (?:it|them|one|both|everything) (?:down|away|back)|hang (?:it|them) up|one hand|hands (?:free|empty))\b/;
/** "Hands at the chest" does not put them on anything. */
const HANDS_PLACED = /\b(?:hands?|forearms?|palms?|fists?|elbows?)\b(?! (?:long|up|by|over|at) )/;

/** Handles taken, put down or crossed. Hands that are told to bear weight have let go. */
export const tellsHandles = (words: string, { letGo }: SetupStep): boolean =>
  HANDLES_TOLD.test(words) || (letGo.handles > 0 && HANDS_PLACED.test(words));

const STRAPS_TOLD =
  /\b(?:straps?|loops?|cuffs?|slings?|(?:foot|feet|ankles?|legs?) (?:in|out|into|off|free|through)|(?:step|slip) (?:in|out|off)|unhook|unclip|hook|clip)\b/;
const FEET_PLACED = /\b(?:foot|feet|toes|heels) (?:\w+ )?(?:on|onto|to|down)\b/;

/** A strap put on or taken off. Feet that are told to stand elsewhere are out of it. */
export const tellsStrap = (words: string, { letGo }: SetupStep): boolean =>
  STRAPS_TOLD.test(words) || (letGo.strap !== null && FEET_PLACED.test(words));

const PLACE_TOLD =
  /\b(?:further|farther|nearer|closer|scoot|shuffle|shift|cm|centimet(?:re|er)s?|inch(?:es)?|anchors?|usual (?:place|spot)|where you (?:were|started)|(?:a|one|two|three) (?:hands?|handwidths?|palms?|fists?|foot|feet|steps?) (?:back|forwards?|out|in|away|up|down)|(?:sit|kneel|stand|lie|move|slide|step|hop|come|go|start) (?:\w+ ){0,3}(?:back|forwards?|away|out))\b/;

/** Where people start on the carriage: a distance, a direction along it, or the usual place. */
export const tellsPlace = (words: string): boolean => PLACE_TOLD.test(words);

/** "Not quite home" and "just short of home" do not bring it home. */
const NOT_YET = "(?<!\\b(?:not|never|dont|short of|almost|nearly|just off|from|leave|leaving) (?:\\w+ ){0,2})";
const FILL =
  "(?:(?:all|the|your|way|right|fully|comes?|goes|is|stays?|back|gently|slowly|safely|now|must|should|be) )*";
/** "Carriage in", but not "in and out" or "in the middle". */
const IN =
  "in(?! (?:(?:and|then) out|(?:the|your|its) (?:middle|cent(?:er|re)|line|air|way|same)|front|place|between|line|motion)\\b)";
const PARKED = `(?:home|${IN}|closed|shut|parked|to the (?:front|stops?|stoppers?))`;
/** Names the carriage, so it counts in a line of any kind. */
export const CARRIAGE_HOME = new RegExp(
  `${NOT_YET}\\bcarriages? ${FILL}${PARKED}\\b|` +
    `${NOT_YET}\\b(?:close|park|shut|return|home) (?:the |your )?carriages?\\b|` +
    `${NOT_YET}\\b(?:bring|take|walk|guide|let|slide|draw|ease) (?:the |your )?carriages? ${FILL}${PARKED}\\b`,
);
/** In a set-up line "home" is enough, and so is bringing the carriage. */
export const BRINGS_HOME = new RegExp(
  `${NOT_YET}\\bhome\\b|\\bbring (?:the |your )?carriages?\\b(?! (?:\\w+ )?out)|` +
    `\\b(?:come|bring it|take it|slide|all the way) (?:all the way |back |right )*${IN}\\b`,
);

/** `before` holds the words of the set-up and of pauses, `other` those of start and safety lines. */
export const tellsCarriageHome = (before: string, other: string): boolean =>
  CARRIAGE_HOME.test(before) || BRINGS_HOME.test(before) || CARRIAGE_HOME.test(other);

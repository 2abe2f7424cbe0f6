/**
 * How people name the two halves of a repetition. Some words say it outright ("on the way back"); what "lower" or "reach" is
 * depends on the move, so that is left to whoever knows it.
 */
import type { BreathClaim } from "./types.ts";

type During = BreathClaim["during"];

const THING =
  "(?: (?:it|them|that|the|your|carriage|platform|handles|bars?|arms|legs|slowly|gently|all|way|us|yourself))*";
/** Limbs that come in or go out say nothing of the carriage. */
const LIMBS =
  /\b(?:they|knees?|legs?|heels|arms?|elbows?|feet|foot|hands?|hips?|ribs) (?:come|comes|go|goes|move|moves)\b(?! (?:long|up|down|high|low))/;
const PULLED =
  /\b(?:draw|pull|bring)(?:s|ing)? (?:the |your |both )?handles? (?:in|to|towards?|back)\b|\belbows? (?:(?:come|comes|go|goes|draw|slide|travel)s? )?(?:back|behind)\b|\bhandles? (?:come|comes|move|moves) (?:to|towards?) (?:you|your|the) ?|\b(?:blades|shoulders) (?:come|draw|squeeze|move|slide|go) (?:together|back)\b/;
const LEGS_BEND =
  /\bbring(?:ing)? (?:the |your )?(?:knees?|legs|heels) (?:back )?in\b|\bknees? (?:come|comes|go|goes) under\b|\b(?:knees?|legs|feet|heels) (?:come|comes|move|moves) (?:back )?in\b|\bknees? (?:in$|in\b(?! line)|to (?:the |your )?chest)/;
const LEGS_LONG =
  /\b(?:knees|legs) (?:long|straight)\b|\b(?:knees?|legs|feet|heels) (?:go|goes|move|moves) (?:back )?(?:out|away)\b/;

const OUTRIGHT: readonly (readonly [During, RegExp])[] = [
  [
    "back",
    new RegExp(
      `\\b(?:way (?:back|in|home)|return(?:s|ing)?|(?:com(?:e|es|ing)|bring(?:s|ing)?|let(?:s|ting)?|rolls?|rolling|carriage|go|goes|going|travels?|resist(?:s|ing)?|rid(?:e|es|ing)|move|moves|moving)${THING}(?: (?:rolls?|goes|comes?|slides?|glides?|go))?${THING} (?:back|home|in)\\b|` +
        `(?:slid|glid|pull|draw|resist)(?:e|es|s|ing)?${THING} (?:home|in|back in|back home)\\b|releas(?:e|es|ing)|clos(?:e|es|ing) the (?:carriage|gap)|carriage closes?|gather(?:s|ing)?|(?:back|return|turn) to (?:the )?(?:centre|center|start|middle|plank)|homeward|inward)\\b`,
    ),
  ],
  [
    "out",
    new RegExp(
      `\\b(?:way out|(?:push|press|step|slid|glid|reach|go|send|driv|pull|draw|extend|roll|mov|travel|com|carriage|stretch)(?:e|es|s|ing)?${THING}(?: (?:rolls?|goes|moves|slides?|glides?|travels?))?${THING} (?:out|away)|open(?:s|ing)? the carriage|outward|(?:carriage|platform) (?:opens|leaves))\\b`,
    ),
  ],
];

const verb = (stems: string): string => `(?:${stems})(?:es|s|e|ing|ting|ning|ping|ding)?`;
/** By the stem of the verb. */
const BY_MOVE: readonly (readonly [During, string])[] = [
  ["push", verb("push|press|driv|punch|kick")],
  ["pull", `${verb("pull|draw|drag|heav")}|row(?:s|ing)?`],
  [
    "work",
    `${verb("curl|squeez|tuck|pik|crunch|turn|twist|rotat|sweep|exert")}|effort|work|hard (?:part|bit|half)|(?:it is|it gets|gets) (?:hard|heavy|tough)|power|exertion`,
  ],
  [
    "ease",
    "stretch|easy (?:part|bit|half)|(?:it is|it gets|gets) (?:easy|light)|eccentric|negative|recovery|giv(?:e|ing)(?: (?:it|the|your|handles?|weight|carriage|springs?))* back",
  ],
  ["up", `${verb("lift|ris|rais|stand|climb")}|up|top`],
  ["down", `${verb("lower|sink|drop|squat|lung|descend|dip|settl")}|(?:sit|sits|sitting)(?! up)|down|descent`],
  ["open", verb("open|widen|spread")],
  ["close", `${verb("clos|meet|hug")}`],
  ["bend", verb("bend|fold|hing|flex")],
  ["long", `${verb("straighten|lengthen|extend|reach|unfold")}|(?:go|goes|going|get|getting|grow) long(?:er)?`],
];
const ANY = new RegExp(
  `\\b(?:${BY_MOVE.map(([name, words]) => `(?<${name}>${words})`).join("|")})\\b(?! (?:the ribs|your ribs|the belly|your belly))`,
);

/** The half that some words name; undefined when they name none, or both. */
export function motionIn(words: string): During | undefined {
  if (PULLED.test(words)) return "pull";
  if (LEGS_BEND.test(words)) return "bend";
  if (LIMBS.test(words) && !/\bcarriage\b/.test(words)) {
    if (LEGS_LONG.test(words)) return "long";
    const limb = words.replace(LIMBS, "").replace(/\b(?:in|out|away|back)\b/g, "");
    return byMove(limb);
  }
  const known = OUTRIGHT.filter(([, pattern]) => pattern.test(words));
  if (known.length > 1) return undefined;
  return known[0]?.[0] ?? byMove(words);
}

function byMove(words: string): During | undefined {
  const groups = ANY.exec(words)?.groups ?? {};
  return BY_MOVE.find(([name]) => groups[name] !== undefined)?.[0];
}

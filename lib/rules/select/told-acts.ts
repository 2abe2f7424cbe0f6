/** Which acts of a change are told before a move, and in which line. */
import type { SetupAct } from "#lib/acts/compose.ts";
import type { MoveItem, Plan, ScriptLine } from "#lib/plan/schema.ts";
import type { SetupStep } from "#lib/transitions/walk.ts";
import { namesPosture } from "./posture.ts";
import {
  matchingWords,
  saidInPauses,
  tellsCarriageHome,
  tellsFacing,
  tellsHandles,
  tellsPlace,
  tellsSide,
  tellsSprings,
  tellsStrap,
} from "./told.ts";

/** The set-up lines of an item that say anything, in their order. */
export const setupLinesOf = (item: MoveItem): ScriptLine[] =>
  (item.script ?? []).filter(({ kind, text }) => kind === "setup" && text.trim() !== "");

/** Words of the pauses before a move. */
export const IN_PAUSES = -1;

/**
 * For each act that is told, the index among `setupLinesOf` of the first line that tells it (one that names it plainly
 * first), or `IN_PAUSES`. Start and safety lines come too late to count. One sign of a thing tells all acts of it, except
 * where a change has two opposite acts, or both handles and straps.
 */
export function toldAt(plan: Plan, step: SetupStep, acts: readonly SetupAct[]): ReadonlyMap<SetupAct, number> {
  const lines = setupLinesOf(step.item).map(({ text }) => matchingWords(plan, step.item, text));
  const said = [saidInPauses(plan, step), ...lines];
  const told = new Map<SetupAct, number>();
  for (const act of acts) {
    const telling = said.map((words) => tells(plan, step, acts, act, words));
    const plainly = said.findIndex((words, i) => telling[i] && PLAIN[act.act]?.test(words));
    const at = plainly >= 0 ? plainly : telling.indexOf(true);
    if (at >= 0) told.set(act, at + IN_PAUSES);
  }
  return told;
}

/** "Face the left" also hints at the side; if another line names the side plainly, that line counts. */
const PLAIN: Readonly<Record<string, RegExp>> = {
  turn: /\b(?:fac(?:e|ing)|turn)\b/,
  side: /\bsidefield\b|\b(?:left|right|other|second) side\b/,
  place: /\bcm\b|\bthe usual place\b/,
};

function tells(plan: Plan, step: SetupStep, acts: readonly SetupAct[], act: SetupAct, words: string): boolean {
  switch (act.act) {
    case "carriage-home":
      return tellsCarriageHome(words, "");
    case "spring-off":
    case "spring-on":
      return tellsSprings(plan, words);
    case "strap-off":
    case "strap-on":
      return tellsStrap(words, step) && isThisWay(acts, act.act, words);
    case "handles-down":
    case "handles-up":
    case "handles-cross":
      return tellsTheseHandles(step, acts, words) && isThisWay(acts, act.act, words);
    case "turn":
      return tellsFacing(words, step);
    case "side":
      return tellsSide(words);
    case "place":
      return tellsPlace(words);
    default:
      return namesPosture(words, act);
  }
}

function tellsTheseHandles(step: SetupStep, acts: readonly SetupAct[], words: string): boolean {
  if (tellsOtherHand(words, step)) return true;
  const strapped = acts.some(({ act }) => act === "strap-off" || act === "strap-on");
  return tellsHandles(strapped ? words.replace(OF_A_STRAP, "") : words, step);
}

const OF_A_STRAP = /\b(?:cable )?(?:straps?|loops?)\b/g;

/** A handle that only changes hands is told by naming the side. */
const tellsOtherHand = (words: string, { before, to }: SetupStep): boolean =>
  before?.setup.hands === "one-handle" && to.hands === "one-handle" && tellsSide(words);

const LET_GO = /\b(?:down|away|out|off|release|let go|unhook|unclip|drop|free|empty|leave)\b/;
const TAKEN = /\b(?:take|grab|grasp|hold|pick|up|in|into|on|hook|clip|both|other)\b/;
const WAYS: Readonly<Record<string, { readonly other: readonly string[]; readonly sign: RegExp }>> = {
  "strap-off": { other: ["strap-on"], sign: LET_GO },
  "strap-on": { other: ["strap-off"], sign: TAKEN },
  "handles-down": { other: ["handles-up", "handles-cross"], sign: LET_GO },
  "handles-up": { other: ["handles-down", "handles-cross"], sign: TAKEN },
  "handles-cross": { other: ["handles-down", "handles-up"], sign: /\b(?:un)?cross/ },
};

/** Where a change has the opposite act too, a sign of one does not tell the other. */
function isThisWay(acts: readonly SetupAct[], act: string, words: string): boolean {
  const way = WAYS[act];
  return !way || !acts.some((one) => way.other.includes(one.act)) || way.sign.test(words);
}

/**
 * What people do to get from one move's set-up to the next, in words and in a safe order: the acts of the change as worded
 * by `lib/acts`, and where hands and feet go. Used for the plan's calls and wherever a change is shown.
 */

import { actWords, FEET_WORDS, HANDS_WORDS, startPlaceWords } from "#lib/acts/act-words.ts";
import { actsInto } from "#lib/acts/planned.ts";
import { sideWords, spokenSprings } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Equipment, MoveItem, Plan } from "#lib/plan/schema.ts";
import { handlesHeld, isStrap, type Setup, setupOf } from "#lib/transitions/transitions.ts";
import { type SpringCount, springCounts } from "./springs.ts";

export interface SetupChange {
  readonly kind: "carriage" | "spring-off" | "spring-on" | "stay" | "hands" | "feet" | "body" | "side" | "offset";
  /** An instruction, lower case: "take off two light". */
  readonly words: string;
  /** The springs, for a screen that draws them. */
  readonly springs?: readonly SpringCount[];
}

/** The acts that `lib/acts` words. Springs and the side are worded here, without live fields. */
const KINDS = {
  "carriage-home": "carriage",
  "strap-off": "feet",
  "handles-down": "hands",
  station: "body",
  turn: "body",
  position: "body",
  "handles-cross": "hands",
  "handles-up": "hands",
  "strap-on": "feet",
} as const;
type WordedAct = keyof typeof KINDS;

/** For the first move, without a set-up before it, everything that it needs is named. */
export function setupChanges(plan: Plan, before: MoveItem | undefined, after: MoveItem): SetupChange[] {
  const to = setupOf(plan, after);
  const from = before ? setupOf(plan, before) : null;
  if (!to) return [];
  const acts = actsInto(plan, from, to);
  const worded = (...names: readonly WordedAct[]): SetupChange[] =>
    names.flatMap((name) =>
      acts.filter(({ act }) => act === name).map((act) => ({ kind: KINDS[name], words: actWords(act, { from, to }) })),
    );
  return [
    ...worded("carriage-home", "strap-off", "handles-down"),
    ...springChanges(plan, from?.springs ?? {}, to.springs),
    ...worded("station", "turn", "position"),
    ...sideChange(before, after),
    ...placeChange(before, after),
    ...placings(from, to),
    ...worded("handles-cross", "handles-up", "strap-on"),
  ];
}

export const isSpringChange = ({ kind }: SetupChange): boolean => kind === "carriage" || kind.startsWith("spring");

/** The acts of a change as called and shown. If the springs stay, that is said first. */
export function calledActs(changes: readonly SetupChange[], springs: readonly SpringCount[]): readonly SetupChange[] {
  if (changes.some(isSpringChange)) return changes;
  return [{ kind: "stay", words: springs.length > 0 ? "springs stay" : "no springs", springs }, ...changes];
}

/**
 * The words of an act in two parts, for a screen that sets off what to do: "take off" and "one light". Carriage, side and
 * springs that stay are one part.
 */
export function actParts({ kind, words }: SetupChange): readonly [string, string] {
  if (kind === "carriage" || kind === "stay" || kind === "side") return [words, ""];
  const parts = words.split(" ");
  const verb = kind === "spring-off" || kind === "spring-on" ? 2 : 1;
  return [parts.slice(0, verb).join(" "), parts.slice(verb).join(" ")];
}

/** The springs that are on after a change, as called and shown: "now on: one light and one firm". */
export const nowOnWords = (equipment: Equipment, springs: Readonly<Record<string, number>>): string =>
  `now on: ${spokenSprings(equipment, springs)}`;

/**
 * A change as it is called: the acts and, if the springs changed, what is on now. "Carriage home, take off one heavy, face
 * the back. Now on: one light."
 */
export function changeCall(plan: Plan, before: MoveItem | undefined, after: MoveItem): { acts: string; on: string } {
  const changes = setupChanges(plan, before, after);
  const acts = calledActs(changes, springCounts(plan, after.springs)).map(({ words }) => words);
  const on = changes.some(isSpringChange) ? nowOnWords(plan.equipment, after.springs) : "";
  return { acts: sentence(acts.join(", ")), on: on && sentence(on) };
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

function springChanges(plan: Plan, was: Setup["springs"], are: Setup["springs"]): SetupChange[] {
  const ids = [...new Set([...Object.keys(was), ...Object.keys(are)])];
  const differ = (sign: 1 | -1) =>
    Object.fromEntries(ids.map((id) => [id, Math.max(0, sign * ((own(are, id) ?? 0) - (own(was, id) ?? 0)))]));
  const change = (kind: "spring-off" | "spring-on", verb: string, counts: Record<string, number>): SetupChange[] =>
    Object.values(counts).every((n) => n === 0)
      ? []
      : [{ kind, words: `${verb} ${spokenSprings(plan.equipment, counts)}`, springs: springCounts(plan, counts) }];
  return [...change("spring-off", "take off", differ(-1)), ...change("spring-on", "put on", differ(1))];
}

/** Where feet and hands go without taking or leaving anything. Not acts, but worth a word. */
function placings(from: Setup | null, to: Setup): SetupChange[] {
  const placings: SetupChange[] = [];
  if (from?.feet !== to.feet && to.feet !== "free" && !isStrap(to.feet))
    placings.push({ kind: "feet", words: FEET_WORDS[to.feet] });
  if (from?.hands !== to.hands && to.hands !== "free" && handlesHeld(to.hands) === 0)
    placings.push({ kind: "hands", words: HANDS_WORDS[to.hands] });
  return placings;
}

/** The side is also named when another move begins on the same side. */
function sideChange(before: MoveItem | undefined, after: MoveItem): SetupChange[] {
  const oneSided = after.side === "left" || after.side === "right";
  if (!oneSided || (before?.side === after.side && before.move === after.move)) return [];
  return [{ kind: "side", words: `${sideWords(after.side)} side` }];
}

function placeChange(before: MoveItem | undefined, after: MoveItem): SetupChange[] {
  const words = startPlaceWords(before, after);
  return words === null ? [] : [{ kind: "offset", words }];
}

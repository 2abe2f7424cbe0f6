/**
 * What a person must do to get from one move's set-up to the next, in words and in a safe order: carriage home, out of
 * straps and handles, springs off and on, then where people go, turn and settle, into handles and straps last. The one
 * source of these words: what the plan calls, and every screen and sheet that shows a change.
 */

import { offsetWords, sideWords, springWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { Equipment, MoveItem, Plan } from "#lib/plan/schema.ts";
import { type Setup, setupOf } from "#lib/transitions/transitions.ts";
import { type SpringCount, springCounts } from "./springs.ts";

export interface SetupChange {
  readonly kind: "carriage" | "spring-off" | "spring-on" | "stay" | "hands" | "feet" | "body" | "side" | "offset";
  /** An instruction, lower case: "take off two light". */
  readonly words: string;
  /** For springs: which, so that a screen can draw them. */
  readonly springs?: readonly SpringCount[];
}

const STATION = {
  front: "to the front platform",
  carriage: "onto the carriage",
  back: "to the back platform",
  floor: "onto the floor",
};
const POSITION = {
  plank: "come to a plank",
  quadruped: "hands and knees",
  kneeling: "kneel",
  seated: "sit",
  supine: "lie on your back",
  prone: "lie face down",
  "side-lying": "lie on your side",
  standing: "stand",
  inverted: "hips above the head",
};
const HANDS = {
  free: "hands free",
  "front-bars": "hands on the front bars",
  "back-bars": "hands on the back bars",
  "front-platform": "hands on the front platform",
  "back-platform": "hands on the back platform",
  carriage: "hands on the carriage",
  handles: "take both handles",
  "handles-crossed": "take both handles, crossed",
  "one-handle": "take one handle",
};
const FEET = {
  free: "feet free",
  carriage: "feet on the carriage",
  "front-platform": "feet on the front platform",
  "back-platform": "feet on the back platform",
  floor: "feet on the floor",
  "front-strap": "feet in the front strap",
  "back-strap": "feet in the back strap",
  "cable-strap": "foot in the cable strap",
};
const HANDLES: readonly string[] = ["handles", "handles-crossed", "one-handle"];
const holdsHandle = (setup: Setup) => HANDLES.includes(setup.hands);
const inStrap = (setup: Setup) => setup.feet.endsWith("strap");

/** The first move has no set-up before it: then everything that it needs is named. */
export function setupChanges(plan: Plan, before: MoveItem | undefined, after: MoveItem): SetupChange[] {
  const to = setupOf(plan, after);
  const from = before ? setupOf(plan, before) : null;
  if (!to) return [];
  const springs = springChanges(plan, before, after);
  const home: SetupChange[] = springs.length === 0 ? [] : [{ kind: "carriage", words: "carriage home" }];
  return [
    ...home,
    ...letGoChanges(from, to),
    ...springs,
    ...placeChanges(from, to),
    ...sideChange(before, after),
    ...takeChanges(from, to),
    ...offsetChange(before, after),
  ];
}

export const isSpringChange = ({ kind }: SetupChange): boolean => kind === "carriage" || kind.startsWith("spring");

/** The acts of a change as they are called and shown: that the springs stay is said first, never left to silence. */
export function calledActs(changes: readonly SetupChange[], springs: readonly SpringCount[]): readonly SetupChange[] {
  if (changes.some(isSpringChange)) return changes;
  return [{ kind: "stay", words: springs.length > 0 ? "springs stay" : "no springs", springs }, ...changes];
}

/** What is on after a change, as it is called and shown: "now on: one light, one firm". */
export const nowOnWords = (equipment: Equipment, springs: Readonly<Record<string, number>>): string =>
  `now on: ${springWords(equipment, springs)}`;

/**
 * A change as it is called: the acts, then what is on where the springs changed. "Carriage home, take off one heavy, face
 * the back. Now on: one light."
 */
export function changeCall(plan: Plan, before: MoveItem | undefined, after: MoveItem): { acts: string; on: string } {
  const changes = setupChanges(plan, before, after);
  const acts = calledActs(changes, springCounts(plan, after.springs)).map(({ words }) => words);
  const on = changes.some(isSpringChange) ? nowOnWords(plan.equipment, after.springs) : "";
  return { acts: sentence(acts.join(", ")), on: on && sentence(on) };
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

function springChanges(plan: Plan, before: MoveItem | undefined, after: MoveItem): SetupChange[] {
  const was = before?.springs ?? {};
  const ids = [...new Set([...Object.keys(was), ...Object.keys(after.springs)])];
  const differ = (sign: 1 | -1) =>
    Object.fromEntries(
      ids.map((id) => [id, Math.max(0, sign * ((own(after.springs, id) ?? 0) - (own(was, id) ?? 0)))]),
    );
  const change = (kind: "spring-off" | "spring-on", verb: string, counts: Record<string, number>): SetupChange[] =>
    Object.values(counts).every((n) => n === 0)
      ? []
      : [{ kind, words: `${verb} ${springWords(plan.equipment, counts)}`, springs: springCounts(plan, counts) }];
  return [...change("spring-off", "take off", differ(-1)), ...change("spring-on", "put on", differ(1))];
}

/** What must be free before anybody moves. */
function letGoChanges(from: Setup | null, to: Setup): SetupChange[] {
  const changes: SetupChange[] = [];
  if (from && inStrap(from) && from.feet !== to.feet) changes.push({ kind: "feet", words: "out of the strap" });
  if (from && holdsHandle(from) && !holdsHandle(to)) changes.push({ kind: "hands", words: "put the handles down" });
  return changes;
}

function placeChanges(from: Setup | null, to: Setup): SetupChange[] {
  const changes: SetupChange[] = [];
  const add = (words: string) => changes.push({ kind: "body", words });
  if (from?.station !== to.station) add(STATION[to.station]);
  if (from?.facing !== to.facing) add(`face the ${to.facing}`);
  if (from?.position !== to.position) add(POSITION[to.position]);
  return changes;
}

/** Where feet and hands go; a strap last of all: whoever is in it cannot step away. */
function takeChanges(from: Setup | null, to: Setup): SetupChange[] {
  const otherSide = from !== null && from.side !== to.side;
  const feet: SetupChange[] = [];
  const hands: SetupChange[] = [];
  if (from?.feet !== to.feet && to.feet !== "free") feet.push({ kind: "feet", words: FEET[to.feet] });
  else if (otherSide && to.feet === "cable-strap") feet.push({ kind: "feet", words: "other foot in the cable strap" });
  if (from?.hands !== to.hands && to.hands !== "free") hands.push({ kind: "hands", words: handWords(from, to) });
  else if (otherSide && to.hands === "one-handle") hands.push({ kind: "hands", words: "handle in the other hand" });
  return inStrap(to) ? [...hands, ...feet] : [...feet, ...hands];
}

function handWords(from: Setup | null, to: Setup): string {
  if (from?.hands === "handles" && to.hands === "handles-crossed") return "cross the handles";
  if (from?.hands === "handles-crossed" && to.hands === "handles") return "uncross the handles";
  if (from && holdsHandle(from) && from.hands !== "one-handle" && to.hands === "one-handle")
    return "put one handle down";
  return HANDS[to.hands];
}

function sideChange(before: MoveItem | undefined, after: MoveItem): SetupChange[] {
  const oneSided = after.side === "left" || after.side === "right";
  if (!oneSided || (before?.side === after.side && before.move === after.move)) return [];
  return [{ kind: "side", words: `${sideWords(after.side)} side` }];
}

/** How much further from the anchor people start than in the move before, in mm; nearer is below 0. */
export const movedMm = (before: MoveItem | undefined, after: MoveItem): number =>
  (after.offsetMm ?? 0) - (before?.offsetMm ?? 0);

function offsetChange(before: MoveItem | undefined, after: MoveItem): SetupChange[] {
  const by = movedMm(before, after);
  if (by === 0) return [];
  const back = (after.offsetMm ?? 0) === 0;
  return [{ kind: "offset", words: back ? "back to the usual place" : offsetWords(by) }];
}

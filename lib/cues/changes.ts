/**
 * What a person must do to get from one move's set-up to the next, in words and in a safe order: carriage home and
 * springs before anything else, out of straps and handles before turning, into them last.
 */

import { offsetWords, sideWords, springWords } from "#lib/plan/format.ts";
import { own } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { type Setup, setupOf } from "#lib/transitions/transitions.ts";
import { type SpringCount, springCounts } from "./springs.ts";

export interface SetupChange {
  readonly kind: "carriage" | "spring-off" | "spring-on" | "hands" | "feet" | "body" | "side" | "offset";
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
  return [
    ...springChanges(plan, before, after),
    ...bodyChanges(from, to),
    ...sideChange(before, after),
    ...offsetChange(before, after),
  ];
}

/** "carriage home, take off one heavy, turn to face the back"; when there is nothing to do, what can be said for sure: a plan knows springs and place, not how arms are bent. */
export const changeWords = (changes: readonly SetupChange[]): string =>
  changes.length === 0 ? "same springs" : changes.map((change) => change.words).join(", ");

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
  const changes = [...change("spring-off", "take off", differ(-1)), ...change("spring-on", "put on", differ(1))];
  return changes.length === 0 ? [] : [{ kind: "carriage", words: "carriage home" }, ...changes];
}

function bodyChanges(from: Setup | null, to: Setup): SetupChange[] {
  const changes: SetupChange[] = [];
  const add = (kind: SetupChange["kind"], words: string) => changes.push({ kind, words });
  const otherSide = from !== null && from.side !== to.side;
  if (from && inStrap(from) && from.feet !== to.feet) add("feet", "out of the strap");
  if (from && holdsHandle(from) && !holdsHandle(to)) add("hands", "put the handles down");
  if (from?.station !== to.station) add("body", STATION[to.station]);
  if (from?.facing !== to.facing) add("body", `face the ${to.facing}`);
  if (from?.position !== to.position) add("body", POSITION[to.position]);
  if (from?.feet !== to.feet && to.feet !== "free") add("feet", FEET[to.feet]);
  else if (otherSide && to.feet === "cable-strap") add("feet", "other foot in the cable strap");
  if (from?.hands !== to.hands && to.hands !== "free") add("hands", handWords(from, to));
  else if (otherSide && to.hands === "one-handle") add("hands", "handle in the other hand");
  return changes;
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

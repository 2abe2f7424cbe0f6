/**
 * Each act as a clause that a coach would say: lower case, no full stop. The only source of these words, for set-up lines
 * that are offered, heads-ups and the floor. Springs and sides are live fields, so they stay right when the plan changes.
 */
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { offsetWords } from "#lib/formats/units.ts";
import { countWord, sideWords, spokenSprings, springLabel } from "#lib/plan/format.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { handlesHeld, type Setup } from "#lib/transitions/transitions.ts";
import type { PlannedAct } from "./planned.ts";

/** The two ends of a change; `from` is null for the first move. */
export interface SetupEnds {
  readonly from: Setup | null;
  readonly to: Setup;
}

/** "Carriage home", "put one handle down", "now on {springs}", "face the back". */
export function actWords(act: PlannedAct, { from, to }: SetupEnds): string {
  switch (act.act) {
    case "carriage-home":
      return "carriage home";
    case "strap-off":
      return "out of the strap";
    case "handles-down":
      return downWords(act.count, handlesHeld(from?.hands ?? to.hands));
    case "spring-off":
    case "spring-on":
      return "now on {springs}";
    case "station":
      return STATION_WORDS[act.station];
    case "turn":
      return `face the ${act.facing}`;
    case "position":
      return POSITION_WORDS[act.position];
    case "side":
      return "{side} side";
    case "handles-cross":
      return to.hands === "handles-crossed" ? "cross the handles" : "uncross the handles";
    case "handles-up":
      return upWords(from, to);
    case "strap-on":
      return from?.feet === to.feet ? "other foot in the cable strap" : FEET_WORDS[to.feet];
  }
}

/** One act by itself, for a list of steps: "one middle off", "left side". Without live fields, lower case. */
export function stepWords(plan: Plan, act: PlannedAct, ends: SetupEnds): string {
  switch (act.act) {
    case "spring-off":
    case "spring-on":
      return `${countWord(act.count)} ${springLabel(plan.equipment, act.spring)} ${act.act === "spring-on" ? "on" : "off"}`;
    case "side":
      return `${sideWords(act.side)} side`;
    default:
      return actWords(act, ends);
  }
}

const STATION_WORDS = {
  front: "to the front platform",
  carriage: "onto the carriage",
  back: "to the back platform",
  floor: "onto the floor",
};
const POSITION_WORDS = {
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
export const HANDS_WORDS = {
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
export const FEET_WORDS = {
  free: "feet free",
  carriage: "feet on the carriage",
  "front-platform": "feet on the front platform",
  "back-platform": "feet on the back platform",
  floor: "feet on the floor",
  "front-strap": "feet in the front strap",
  "back-strap": "feet in the back strap",
  "cable-strap": "foot in the cable strap",
};

/** "Put one handle down" where the other hand keeps its handle. */
function downWords(count: number, held: number): string {
  if (count < held) return `put ${countWord(count)} handle down`;
  return `put the handle${count > 1 ? "s" : ""} down`;
}

function upWords(from: Setup | null, to: Setup): string {
  if (from?.hands !== "one-handle") return HANDS_WORDS[to.hands];
  if (to.hands === "one-handle") return "handle in the other hand";
  return `take the other handle too${to.hands === "handles-crossed" ? ", crossed" : ""}`;
}

/** How much further from the anchor people start than in the move before, mm; below 0 for nearer. */
export const movedMm = (before: MoveItem | undefined, after: MoveItem): number =>
  (after.offsetMm ?? 0) - (before?.offsetMm ?? 0);

/** Where people start, if that is not where they started before: "8 cm further from the anchor". */
export function startPlaceWords(before: MoveItem | undefined, after: MoveItem): string | null {
  const by = movedMm(before, after);
  if (!Number.isFinite(by) || by === 0) return null;
  return (after.offsetMm ?? 0) === 0 ? "back to the usual place" : offsetWords(by, STANDARD_FORMATS);
}

/** Words as they are read out in this item, with its springs and side filled in. */
export const readOut = (plan: Plan, item: MoveItem, words: string): string =>
  words
    .replaceAll("{springs}", () => spokenSprings(plan.equipment, item.springs))
    .replaceAll("{side}", sideWords(item.side));

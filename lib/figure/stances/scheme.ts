/** What a move's fields mean for the arms, the view and the pose that tells it apart. Rules by pattern, muscles and cautions. */
import type { Group } from "#lib/plan/schema.ts";
import type { ArmWord } from "./arm-words.ts";
import { type FigureMove, facesSide } from "./stage.ts";

export type ArmPair = readonly [start: ArmWord, end: ArmWord];
type Rule = readonly [when: (move: FigureMove) => boolean, arms: ArmPair];

const prime = (move: FigureMove, group: Group) => (move.muscles?.[group] ?? 0) >= 1;
const trains = (move: FigureMove, group: Group) => (move.muscles?.[group] ?? 0) > 0;
const spine = (move: FigureMove, direction: NonNullable<FigureMove["spine"]>[number]) =>
  (move.spine ?? []).includes(direction);
const cautioned = (move: FigureMove, caution: NonNullable<FigureMove["cautions"]>[number]) =>
  (move.cautions ?? []).includes(caution);

/** The first that holds decides. */
const PULLS: readonly Rule[] = [
  [(m) => m.position === "supine", ["long", "along-body"]],
  [(m) => m.hands === "handles-crossed", ["crossed", "wide"]],
  [(m) => facesSide(m.facing), ["turned-in", "turned-out"]],
  [(m) => m.position === "standing", ["upright-low", "upright-high"]],
  [(m) => prime(m, "biceps"), ["curl-low", "curl-high"]],
  [(m) => trains(m, "triceps") && !trains(m, "biceps"), ["long", "thighs"]],
  [(m) => cautioned(m, "overhead"), ["high", "pulled"]],
  [() => true, ["long", "ribs"]],
];
const PUSHES: readonly Rule[] = [
  [(m) => m.hands === "handles-crossed", ["crossed", "wide"]],
  [(m) => prime(m, "triceps") && m.facing === "back", ["kick-bent", "kick-long"]],
  [(m) => prime(m, "triceps"), ["triceps-bent", "triceps-long"]],
  [(m) => prime(m, "shoulders"), ["shoulder", "overhead"]],
  [(m) => prime(m, "chest") && !trains(m, "triceps"), ["wide", "together"]],
  [() => true, ["chest", "long"]],
];
const OTHERS: readonly Rule[] = [
  [(m) => m.pattern === "rotation" && spine(m, "extension"), ["both-low", "both-high"]],
  [(m) => m.pattern === "rotation", ["both", "both"]],
  [(m) => m.pattern === "lateral", ["down", "down"]],
  [(m) => m.position === "prone", ["overhead", "behind"]],
  [(m) => m.position === "standing" && m.pattern === "hinge", ["low", "long"]],
  [() => true, ["long", "long"]],
];

const firstOf = (rules: readonly Rule[], move: FigureMove): ArmPair =>
  rules.find(([when]) => when(move))?.[1] ?? ["down", "down"];

export const holdsCable = ({ hands }: FigureMove): boolean =>
  hands === "handles" || hands === "handles-crossed" || hands === "one-handle";

export function armsOf(move: FigureMove): ArmPair {
  if (!holdsCable(move)) return move.position === "standing" ? ["hip", "hip"] : ["down", "down"];
  if (move.pattern === "pull") return firstOf(PULLS, move);
  if (move.pattern === "push") return firstOf(PUSHES, move);
  return firstOf(OTHERS, move);
}

export const onForearms = (move: FigureMove): boolean =>
  (move.handsShare?.pose === "forearm-plank" && !move.hands.endsWith("bars")) ||
  (move.position === "side-lying" && move.hands.endsWith("platform"));

/** Calves that lead: the ankle presses, the knee stays straight. */
export const pressesCalves = (move: FigureMove): boolean => prime(move, "calves");
export const bendsBack = (move: FigureMove): boolean => spine(move, "extension");
export const lifts = (move: FigureMove): boolean => spine(move, "lateral");
/** Of moves that draw a plank together: hips above the head, or the knees under the trunk. */
export const pikes = (move: FigureMove): boolean => cautioned(move, "head-down") || move.position === "inverted";
/** A plank that is drawn together: it begins long and ends short. */
export const drawsIn = (move: FigureMove): boolean =>
  (move.position === "plank" && (move.pattern === "flexion" || move.pattern === "rotation")) ||
  move.position === "inverted";

/** Moves whose start says more than their end, where only one pose is drawn. */
export function tellingPhase(move: FigureMove): "start" | "end" {
  const [first] = armsOf(move);
  const lying =
    move.position === "supine" && ((move.pattern === "squat" && !pressesCalves(move)) || move.pattern === "pull");
  const strap = move.position === "side-lying" && move.feet === "cable-strap";
  return lying || strap || first === "wide" || first === "triceps-bent" || first === "chest" ? "start" : "end";
}

export type View = "side" | "front" | "open";
/** Arms that open wide and a turned tuck need depth; a person who faces the side is seen from in front or behind. */
export function figureView(move: FigureMove): View {
  if (facesSide(move.facing)) return "front";
  const wide = armsOf(move).some((word) => word === "wide" || word === "upright-high");
  return wide || (move.position === "plank" && move.pattern === "rotation") ? "open" : "side";
}

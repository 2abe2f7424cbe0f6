/**
 * A move as a body can take it: fields that contradict each other are settled here, and named. The back end of the machine is
 * the front end in a mirror, so that every stance is worked out at the front only.
 */
import type { Facing } from "#lib/plan/schema.ts";
import { MACHINE, MIRROR } from "../space/machine.ts";
import { drawsIn, pressesCalves } from "./scheme.ts";
import { type FigureMove, facesSide } from "./stage.ts";

/** A field that the figure could not follow. */
export type UnmetField = "facing" | "hands" | "feet";

export interface Settled {
  readonly move: FigureMove;
  /** Worked out at the front and turned round afterwards. */
  readonly mirrored: boolean;
  /** Carriage at the start and at the end, metres from home, in the mirror where `mirrored`. */
  readonly travels: readonly [start: number, end: number];
  readonly unmet: readonly UnmetField[];
}

/** Without a travel of its own a move is drawn over this much, millimetres. */
const USUAL_TRAVEL = [0, 400] as const;

/** How far an ankle presses the carriage with the knee almost straight, metres. */
const ANKLE_TRAVEL = 0.08;
/** How far the carriage is from the back platform at home. */
const BACK_GAP = MIRROR - MACHINE.carriage[1];

export function settledMove(move: FigureMove): Settled {
  const mirrored = isAtBack(move);
  const front = mirrored ? inMirror(move) : move;
  const unmet: UnmetField[] = [];
  const change = (field: UnmetField, next: FigureMove): FigureMove => {
    if (next !== now) unmet.push(field);
    return next;
  };
  let now = front;
  now = change("hands", reachableHands(now));
  now = change("feet", reachableFeet(now));
  now = change("facing", possibleFacing(now));
  return { move: now, mirrored, travels: travelsOf(move, mirrored), unmet };
}

const isBack = (field: string) => field === "back-platform" || field === "back-bars";

function isAtBack({ station, hands, feet }: FigureMove): boolean {
  if (station === "floor") return false;
  if (hands.startsWith("front")) return false;
  return isBack(hands) || (isBack(feet) && !feet.startsWith("front")) || station === "back";
}

const TURNED: Readonly<Record<Facing, Facing>> = { front: "back", back: "front", left: "left", right: "right" };

const swapped = (field: string) => {
  if (isBack(field)) return field.replace("back", "front");
  return field === "front-platform" || field === "front-bars" ? field.replace("front", "back") : field;
};

function inMirror(move: FigureMove): FigureMove {
  return {
    ...move,
    station: move.station === "back" ? "front" : move.station === "front" ? "back" : move.station,
    hands: swapped(move.hands) as FigureMove["hands"],
    feet: swapped(move.feet) as FigureMove["feet"],
    facing: TURNED[move.facing],
  };
}

/** Hands that a body in this position and at this station cannot have: the plain place takes over. */
function reachableHands(move: FigureMove): FigureMove {
  const { hands, position, station } = move;
  const rests = position === "plank" || position === "inverted" || position === "quadruped";
  const cable = hands === "handles" || hands === "handles-crossed" || hands === "one-handle";
  const far = isBack(hands) || (station === "floor" && hands !== "free" && !cable);
  if (rests && station === "floor")
    return { ...move, hands: "carriage", station: position === "quadruped" ? "floor" : "carriage" };
  if (position === "quadruped") return far || hands.endsWith("bars") ? { ...move, hands: "carriage" } : move;
  if (rests) return far || cable || hands === "free" ? { ...move, hands: "front-platform" } : move;
  if (position === "side-lying") return far || hands === "front-bars" ? { ...move, hands: "free" } : move;
  return far ? { ...move, hands: "free" } : move;
}

function reachableFeet(move: FigureMove): FigureMove {
  const { feet, position, station } = move;
  if (isBack(feet)) return { ...move, feet: position === "standing" ? "carriage" : "free" };
  if (station === "floor" && feet !== "floor" && feet !== "free") return { ...move, feet: "floor" };
  const onFloor = feet === "floor" && station !== "floor" && position !== "standing";
  return onFloor ? { ...move, feet: "free" } : move;
}

/** Planks and lying lie along the rails, a side position across them; hands on the front face the front. */
function possibleFacing(move: FigureMove): FigureMove {
  const { position, facing, hands, feet } = move;
  const side = facesSide(facing);
  if (position === "side-lying") return side ? move : { ...move, facing: "left" };
  const must = facingFor(move);
  if (must !== undefined) return facing === must ? move : { ...move, facing: must };
  const long = ["plank", "inverted", "supine", "prone"].includes(position);
  if (long && side) return { ...move, facing: hands === "handles" && position === "prone" ? "back" : "front" };
  const lunge = position === "standing" && feet === "carriage" && move.station === "front";
  return lunge && facing === "back" ? { ...move, facing: "front" } : move;
}

/** The only facing that hands or feet on the front leave; undefined where any does. */
function facingFor({ position, hands, feet }: FigureMove): Facing | undefined {
  const handsFront = hands === "front-platform" || hands === "front-bars";
  const rests = position === "plank" || position === "inverted" || position === "quadruped";
  if (rests && handsFront) return "front";
  if (rests && feet === "front-platform") return "back";
  if (position === "kneeling" && hands === "front-platform") return "front";
  return feet === "front-platform" && (position === "supine" || position === "seated") ? "front" : undefined;
}

/** Millimetres of a file as metres on this machine's rails, in the order of the motion. */
function travelsOf(move: FigureMove, mirrored: boolean): readonly [number, number] {
  const [near, far] = (move.travelMm ?? USUAL_TRAVEL).map((mm) => Math.min(MACHINE.travel, Math.max(0, mm / 1000)));
  const [from, to] = [near ?? 0, far ?? near ?? 0];
  const ends = mirrored ? [BACK_GAP - to, BACK_GAP - from] : [from, to];
  const [low, high] = [Math.max(0, ends[0] ?? 0), Math.max(0, ends[1] ?? 0)];
  // An ankle alone moves the carriage no further than this.
  if (pressesCalves(move) && move.position === "supine") return [Math.max(low, high - ANKLE_TRAVEL), high];
  return drawsIn(move) ? [high, low] : [low, high];
}

/**
 * The body as limbs with volume: tapered outlines round the bones, drawn from far to near, each parted from what lies behind
 * it by a line in the ground's tone. The far arm and leg are lighter and slimmer.
 */
import { at, type BodySide, type Joint, otherBodySide } from "../body/joints.ts";
import { BONES } from "../body/lengths.ts";
import type { FigurePose, MoveFigure } from "../figure.ts";
import { blend, minus, mixed, plus, scaled, unit, type Vec } from "../space/vector.ts";
import { headShapes } from "./head-shapes.ts";
import { atLeast, type Pen, painted } from "./pen.ts";
import { type Circle, capsule, hull, type Shape, type Tone } from "./shapes.ts";

/** Half widths, millimetres. Judged by eye. */
const GIRTH = {
  hip: 80,
  thigh: 74,
  knee: 47,
  calf: 50,
  ankle: 27,
  shoulder: 48,
  arm: 41,
  elbow: 31,
  forearm: 33,
  wrist: 21,
  fist: 36,
  fingers: 14,
  chest: 99,
  waist: 80,
  seat: 92,
} as const;
/** Of the far arm and leg. */
const SLIM = 0.86;

interface Part {
  readonly depth: number;
  readonly tone: Tone;
  readonly outlines: readonly string[];
}

export function bodyShapes(figure: MoveFigure, pose: FigurePose, pen: Pen): Shape[] {
  const parts = [
    trunkPart(pose, pen),
    ...(["left", "right"] as const).flatMap((side) => limbParts(figure, pose, pen, side)),
  ];
  const head = { depth: headDepth(pose), shapes: headShapes(pose, pen) };
  const drawn = [...parts.map((part) => ({ depth: part.depth, shapes: painted(part, pen) })), head];
  return drawn.sort((a, b) => a.depth - b.depth).flatMap(({ shapes }) => shapes);
}

const isAcross = (pose: FigurePose): boolean => Math.abs(pose.frames.pelvis.front[2]) > 0.5;
const middleDepth = (pose: FigurePose): number => (pose.joints.pelvis[2] + pose.joints.chest[2]) / 2;
const headDepth = (pose: FigurePose): number => Math.max(middleDepth(pose) + 0.001, pose.joints.head[2]);

/** Whether this arm and leg are the ones behind, where the body lies along the rails. */
function isFar(pose: FigurePose, side: BodySide): boolean {
  if (isAcross(pose)) return false;
  const own = pose.joints[at("shoulder", side)][2] + pose.joints[at("hip", side)][2];
  const other = pose.joints[at("shoulder", otherBodySide(side))][2] + pose.joints[at("hip", otherBodySide(side))][2];
  return own < other - 0.02;
}

function limbParts(figure: MoveFigure, pose: FigurePose, pen: Pen, side: BodySide): Part[] {
  const far = isFar(pose, side);
  const tone: Tone = far ? "far" : "near";
  const slim = far ? SLIM : 1;
  const { joints } = pose;
  const legDepth = (joints[at("hip", side)][2] + joints[at("knee", side)][2] * 2 + joints[at("ankle", side)][2]) / 4;
  const armDepth = (joints[at("elbow", side)][2] * 2 + joints[at("hand", side)][2]) / 3;
  return [
    {
      depth: isAcross(pose) ? legAcross(pose, side, legDepth) : legDepth,
      tone,
      outlines: legOutlines(pose, pen, side, slim),
    },
    {
      depth: isAcross(pose) ? armAcross(pose, side, armDepth) : armDepth,
      tone,
      outlines: armOutlines(figure, pose, pen, side, slim),
    },
  ];
}

/** Facing the side, thighs hang in front of the pelvis, and arms lie before or behind the trunk by where the hand is. */
function legAcross(pose: FigurePose, side: BodySide, depth: number): number {
  const { joints, frames } = pose;
  const upright = Math.abs(frames.pelvis.up[1]) > 0.5;
  const before = joints[at("knee", side)][2] >= joints[at("hip", side)][2] - 0.1;
  return upright && before ? middleDepth(pose) + 0.0005 : depth;
}

function armAcross(pose: FigurePose, side: BodySide, depth: number): number {
  const hand = pose.joints[at("hand", side)][2] - middleDepth(pose);
  return hand > 0.02 ? depth + 0.3 : hand < -0.02 ? depth - 0.3 : depth;
}

function circles(pose: FigurePose, pen: Pen, slim: number): (joint: Joint | Vec, mm: number, px?: number) => Circle {
  return (joint, mm, px = 0.8) => ({
    at: pen.projection.to(typeof joint === "string" ? pose.joints[joint] : joint),
    r: atLeast(pen, mm * slim, px * slim),
  });
}

function legOutlines(pose: FigurePose, pen: Pen, side: BodySide, slim: number): string[] {
  const { joints } = pose;
  const circle = circles(pose, pen, slim);
  const [hip, knee, ankle] = [joints[at("hip", side)], joints[at("knee", side)], joints[at("ankle", side)]];
  const back = backOfShank(pose, side);
  const calf = plus(mixed(knee, ankle, 0.3), back, 0.016);
  const thigh = plus(mixed(hip, knee, 0.3), back, -0.006);
  return [
    capsule(circle(hip, GIRTH.hip, 1.15), circle(thigh, GIRTH.thigh, 1.15)),
    capsule(circle(thigh, GIRTH.thigh, 1.15), circle(knee, GIRTH.knee, 0.95)),
    capsule(circle(knee, GIRTH.knee, 0.95), circle(calf, GIRTH.calf, 0.9)),
    capsule(circle(calf, GIRTH.calf, 0.9), circle(ankle, GIRTH.ankle, 0.7)),
    ...footOutlines(pose, side, circle),
  ];
}

/** The direction to the back of the shank: away from where the toes point. */
function backOfShank(pose: FigurePose, side: BodySide): Vec {
  const { joints } = pose;
  const shank = unit(minus(joints[at("ankle", side)], joints[at("knee", side)]));
  const toes = minus(joints[at("ball", side)], joints[at("heel", side)]);
  return blend([toes, -1], [shank, toes[0] * shank[0] + toes[1] * shank[1] + toes[2] * shank[2]]);
}

function footOutlines(pose: FigurePose, side: BodySide, circle: ReturnType<typeof circles>): string[] {
  const { joints } = pose;
  const [ankle, heel, ball, toe] = (["ankle", "heel", "ball", "toe"] as const).map(
    (name) => joints[at(name, side)],
  ) as [Vec, Vec, Vec, Vec];
  // The joints of the sole lie on the skin: the flesh is above it.
  const sole = unit(minus(ankle, mixed(heel, ball, 0.37)));
  const raised = (p: Vec, by: number) => plus(p, sole, by);
  const instep = raised(mixed(heel, ball, 0.72), 0.036);
  return [
    hull([
      circle(raised(heel, 0.026), 26, 0.5),
      circle(ankle, GIRTH.ankle, 0.7),
      circle(instep, 24, 0.5),
      circle(raised(ball, 0.02), 20, 0.6),
    ]),
    capsule(circle(raised(ball, 0.02), 20, 0.6), circle(raised(toe, 0.014), 14, 0.5)),
  ];
}

function armOutlines(figure: MoveFigure, pose: FigurePose, pen: Pen, side: BodySide, slim: number): string[] {
  const { joints } = pose;
  const circle = circles(pose, pen, slim);
  const [shoulder, elbow, wrist, hand] = (["shoulder", "elbow", "wrist", "hand"] as const).map(
    (name) => joints[at(name, side)],
  ) as [Vec, Vec, Vec, Vec];
  const upper = mixed(shoulder, elbow, 0.35);
  const fore = mixed(elbow, wrist, 0.25);
  return [
    capsule(circle(shoulder, GIRTH.shoulder), circle(upper, GIRTH.arm)),
    capsule(circle(upper, GIRTH.arm), circle(elbow, GIRTH.elbow, 0.75)),
    capsule(circle(elbow, GIRTH.elbow, 0.75), circle(fore, GIRTH.forearm, 0.75)),
    capsule(circle(fore, GIRTH.forearm, 0.75), circle(wrist, GIRTH.wrist, 0.65)),
    ...handOutlines(figure, pose, side, circle, wrist, hand),
  ];
}

/** A fist where something is held, an open hand where it lies flat or free. */
function handOutlines(
  figure: MoveFigure,
  pose: FigurePose,
  side: BodySide,
  circle: ReturnType<typeof circles>,
  wrist: Vec,
  hand: Vec,
): string[] {
  const flat = Math.hypot(...minus(hand, wrist)) > (BONES.fist + BONES.palm) / 2;
  if (flat) {
    const knuckles = mixed(wrist, hand, 0.5);
    return [
      capsule(circle(wrist, GIRTH.wrist, 0.65), circle(knuckles, 20, 0.6)),
      capsule(circle(knuckles, 20, 0.6), circle(hand, GIRTH.fingers, 0.5)),
    ];
  }
  const holds = pose.cables.some(({ joint }) => joint === at("hand", side)) || figure.move.hands.endsWith("bars");
  const middle = mixed(wrist, hand, holds ? 0.9 : 0.7);
  return [capsule(circle(wrist, GIRTH.wrist, 0.65), circle(middle, holds ? GIRTH.fist : 27, holds ? 1 : 0.7))];
}

function trunkPart(pose: FigurePose, pen: Pen): Part {
  const { joints, frames } = pose;
  const circle = circles(pose, pen, 1);
  const half = (by: number, side: BodySide, from: Joint, part: "pelvis" | "chest") =>
    plus(joints[from], scaled(frames[part].left, side === "left" ? 1 : -1), by);
  const shoulders = (["left", "right"] as const).map((side) => circle(half(0.105, side, "chest", "chest"), 60, 1));
  const hips = (["left", "right"] as const).map((side) => circle(half(0.062, side, "pelvis", "pelvis"), 78, 1.1));
  const ribs = circle(plus(mixed(joints.waist, joints.chest, 0.66), frames.chest.front, 0.012), GIRTH.chest, 1.4);
  const waist = circle(joints.waist, GIRTH.waist, 1.2);
  const seat = circle(plus(plus(joints.pelvis, frames.pelvis.front, -0.016), frames.pelvis.up, 0.03), GIRTH.seat, 1.3);
  return {
    depth: middleDepth(pose),
    tone: "trunk",
    outlines: [hull([...shoulders, ribs]), hull([ribs, waist]), hull([waist, ...hips, seat])],
  };
}

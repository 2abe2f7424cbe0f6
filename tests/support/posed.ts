/**
 * What a posed body is measured with, from its joints alone and independently of the code that posed it. Lengths in metres,
 * angles in degrees. The machine's surfaces are written again here, so that a slip in the program's table shows.
 */
import type { FigurePose } from "#lib/figure/figure.ts";

type Point = readonly [number, number, number];
type Name = keyof FigurePose["joints"];
export const SIDES = ["left", "right"] as const;

const less = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const size = (a: Point) => Math.sqrt(dot(a, a));
const one = (a: Point): Point => {
  const n = size(a);
  return [a[0] / n, a[1] / n, a[2] / n];
};
const degrees = (cos: number) => (Math.acos(Math.max(-1, Math.min(1, cos))) * 180) / Math.PI;

export const jointOf = (pose: FigurePose, name: Name): Point => pose.joints[name];
export const distance = (pose: FigurePose, a: Name, b: Name): number => size(less(jointOf(pose, a), jointOf(pose, b)));

/** Stature 1.65 m times the shares of Drillis & Contini 1966 (Winter, fig. 4.1); hand and foot as the program assumes them. */
export const LENGTHS: readonly (readonly [string, number, (side: (typeof SIDES)[number]) => readonly [Name, Name]])[] =
  [
    ["shank", 0.246, (side) => [`knee-${side}`, `ankle-${side}`]],
    ["thigh", 0.245, (side) => [`hip-${side}`, `knee-${side}`]],
    ["upper arm", 0.186, (side) => [`shoulder-${side}`, `elbow-${side}`]],
    ["forearm", 0.146, (side) => [`elbow-${side}`, `wrist-${side}`]],
    ["half trunk, below", 0.144, () => ["pelvis", "waist"]],
    ["half trunk, above", 0.144, () => ["waist", "chest"]],
    ["ankle to heel", Math.hypot(0.039, 0.045), (side) => [`ankle-${side}`, `heel-${side}`]],
    ["ankle to ball", Math.hypot(0.039, 0.075), (side) => [`ankle-${side}`, `ball-${side}`]],
    ["half hips", 0.052, (side) => ["pelvis", `hip-${side}`]],
    ["half shoulders", 0.108, (side) => ["chest", `shoulder-${side}`]],
  ];
export const STATURE_M = 1.65;

/** Angles whose plane the joints define. Straight limbs bend by 0; the hip is above 0 before the body. */
export function anglesAt(pose: FigurePose, side: (typeof SIDES)[number]): Record<string, number> {
  const j = (name: string) => jointOf(pose, name as Name);
  const [hip, knee, ankle] = [j(`hip-${side}`), j(`knee-${side}`), j(`ankle-${side}`)];
  const [shoulder, elbow, wrist] = [j(`shoulder-${side}`), j(`elbow-${side}`), j(`wrist-${side}`)];
  const up = one(less(j("waist"), j("pelvis")));
  const left = one(less(j("hip-left"), j("hip-right")));
  const front = cross(left, up);
  const chestUp = one(less(j("chest"), j("waist")));
  const chestLeft = one(less(j("shoulder-left"), j("shoulder-right")));
  const chestFront = cross(chestLeft, chestUp);
  const thigh = one(less(knee, hip));
  const upper = one(less(elbow, shoulder));
  const sole = one(less(j(`ball-${side}`), j(`heel-${side}`)));
  const shank = one(less(ankle, knee));
  const raised = (Math.atan2(dot(upper, chestFront), -dot(upper, chestUp)) * 180) / Math.PI;
  return {
    knee: degrees(dot(thigh, shank)),
    elbow: degrees(dot(upper, one(less(wrist, elbow)))),
    ankle: 90 - degrees(dot(sole, shank)),
    ...(Math.hypot(dot(thigh, front), dot(thigh, up)) > 0.5
      ? { hip: (Math.atan2(dot(thigh, front), -dot(thigh, up)) * 180) / Math.PI }
      : {}),
    ...(Math.hypot(dot(upper, chestFront), dot(upper, chestUp)) > 0.5
      ? { shoulder: raised < -90 ? raised + 360 : raised }
      : {}),
    spine: degrees(dot(up, chestUp)),
    neck: degrees(dot(chestUp, one(less(j("head"), j("chest"))))),
    ...(kneeSide(thigh, shank, front, up) ?? {}),
  };
}

/** A knee that bends in the body's own plane turns the shank to the back. */
function kneeSide(thigh: Point, shank: Point, front: Point, up: Point) {
  const flat = (d: Point) => Math.hypot(dot(d, front), dot(d, up));
  if (flat(thigh) < 0.75 || flat(shank) < 0.75) return undefined;
  const angle = (d: Point) => (Math.atan2(dot(d, front), -dot(d, up)) * 180) / Math.PI;
  const turn = ((angle(thigh) - angle(shank) + 540) % 360) - 180;
  return { kneeBackwards: turn };
}

/** The published ranges that the guide of `lib/figure` names, half a degree allowed for rounding. */
export const JOINT_RANGES: Readonly<Record<string, readonly [number, number]>> = {
  knee: [0, 140.5],
  kneeBackwards: [-5, 180],
  elbow: [0, 145.5],
  ankle: [-20.5, 50.5],
  hip: [-30.5, 125.5],
  shoulder: [-60.5, 180.5],
  spine: [0, 45],
  neck: [0, 45],
};

export const TOPS: Readonly<Record<string, number>> = {
  floor: 0,
  carriage: 0.37,
  "front-platform": 0.44,
  "back-platform": 0.44,
  "front-bars": 0.86,
  "back-bars": 0.86,
};

/** From where to where a surface reaches with the carriage so far from home. */
export function reachOf(surface: string, travel: number): readonly [number, number] {
  const spans: Readonly<Record<string, readonly [number, number]>> = {
    carriage: [travel, 1.3 + travel],
    "front-platform": [-0.52, -0.01],
    "back-platform": [2.22, 2.62],
    "front-bars": [-0.47, -0.08],
    "back-bars": [2.28, 2.57],
  };
  return spans[surface] ?? [-10, 10];
}

/** The flesh between a joint's middle and what it lies on. */
export function fleshOf(joint: string): number {
  if (joint.startsWith("knee")) return 0.0495;
  if (joint.startsWith("wrist")) return 0.033;
  if (joint.startsWith("elbow")) return 0.0363;
  return joint.startsWith("hand") ? 0.018 : 0;
}

/** The height of the deck or floor under a place. */
export function groundUnder([x, , z]: Point, travel: number): number {
  if (Math.abs(z) > 0.28) return 0;
  const deck = ["front-platform", "carriage", "back-platform"].find((surface) => {
    const [from, to] = reachOf(surface, travel);
    return x >= from && x <= to;
  });
  return deck === undefined ? 0 : (TOPS[deck] ?? 0);
}

/**
 * The share of the body's weight on the hands in a held plank (wrist load), by statics: the weights of the segments turn the
 * body about the toes or knees, and the hands hold against it. The model is a still body on firm ground; a moving carriage,
 * a lifted hand or speed change the load. It is not a measurement.
 */
import type { POSES } from "#lib/plan/schema.ts";
import { ALL_TABLES, type SegmentTable, WINTER } from "./segments.ts";
import { type BodyPoint, type Joints, jointsOf, type Stance } from "./stance.ts";

export type Pose = (typeof POSES)[number];

/** Shares of the body's weight, 0..1, on both hands or forearms together. */
export interface HandsShare {
  readonly share: number;
  /** Over where the hand presses, the published segment tables, and what a pose leaves open. */
  readonly low: number;
  readonly high: number;
}

/**
 * How far ahead of the wrist a flat hand presses, in statures (judgement: from the heel of the hand to its middle). For
 * forearms: ahead of the elbow, from the elbow itself to half-way to the wrist.
 */
const PRESSES = { hand: [0.03, 0.045, 0.06], forearms: [0, 0.0365, 0.073] } as const;

/**
 * 30.48 cm, the lower box of Ebben et al. 2011 (J Strength Cond Res 25(10):2891-2894), for a stature of 1.74 m.
 */
const RAISED = 0.3048 / 1.74;

const LEVEL: Stance = { on: "toes", arms: "straight", reach: "under", handsUp: 0, feetUp: 0, feet: "lifted" };

/** The stance of each pose. A second one is the other extreme of what the pose leaves open. */
const STANCES: Readonly<Record<Pose, readonly [Stance, ...Stance[]]>> = {
  "high-plank": [LEVEL],
  "forearm-plank": [{ ...LEVEL, arms: "forearms" }],
  knees: [
    { ...LEVEL, on: "knees" },
    { ...LEVEL, on: "knees", feet: "resting" },
  ],
  "hands-raised": [
    { ...LEVEL, handsUp: RAISED },
    { ...LEVEL, handsUp: RAISED, reach: "square" },
  ],
  "feet-raised": [{ ...LEVEL, feetUp: RAISED }],
  "push-up-low": [{ ...LEVEL, arms: "bent" }],
};

/**
 * The hands' share in a pose: one number from Winter's table with the hand pressing in the middle of its range, and a band
 * over everything that varies. Raised hands or feet are 30 cm up.
 */
export const handsShare = (pose: Pose): HandsShare => SHARES[pose];

/** The joints of a pose, for drawing it, and how far from the pivot the hands press, in statures. */
export function poseJoints(pose: Pose): Joints & { readonly pressX: number } {
  const stance = STANCES[pose][0];
  const joints = jointsOf(stance);
  return { ...joints, pressX: pressX(stance, joints, pressesOf(stance)[1]) };
}

function shareOf(pose: Pose): HandsShare {
  const stances = STANCES[pose];
  const presses = pressesOf(stances[0]);
  const all = stances.flatMap((stance) =>
    presses.flatMap((pressesAt) => ALL_TABLES.map((table) => staticShare(stance, { table, pressesAt }))),
  );
  const share = staticShare(stances[0], { table: WINTER, pressesAt: presses[1] });
  return { share, low: Math.min(...all), high: Math.max(...all) };
}

function pressesOf(stance: Stance) {
  return PRESSES[stance.arms === "forearms" ? "forearms" : "hand"];
}

function pressX(stance: Stance, joints: Joints, ahead: number): number {
  return (stance.arms === "forearms" ? joints.elbow.x : joints.wrist.x) + ahead;
}

/** Worked out once, since no plan changes them. */
const SHARES: Readonly<Record<Pose, HandsShare>> = {
  "high-plank": shareOf("high-plank"),
  "forearm-plank": shareOf("forearm-plank"),
  knees: shareOf("knees"),
  "hands-raised": shareOf("hands-raised"),
  "feet-raised": shareOf("feet-raised"),
  "push-up-low": shareOf("push-up-low"),
};

/**
 * Moments about the pivot: share x (hands - pivot) = sum of mass x (centre of mass - pivot). `pressesAt` in statures
 * ahead of the wrist, or of the elbow when the forearms are down. Shins that lie on the ground are carried by it.
 */
export function staticShare(stance: Stance, body: { table: SegmentTable; pressesAt: number }): number {
  const joints = jointsOf(stance);
  const arm = pressX(stance, joints, body.pressesAt) - joints.pivot.x;
  const grounded = stance.on === "knees" && stance.feet === "resting";
  const parts = massesOf(joints, body.table).filter((part) => !(grounded && part.belowKnee));
  return parts.reduce((sum, part) => sum + part.mass * (part.x - joints.pivot.x), 0) / arm;
}

/** Where every segment's mass acts; both limbs of a pair together. The masses add up to 1. */
export function massesOf(joints: Joints, t: SegmentTable) {
  const { ankle, toe, knee, hip, shoulder, elbow, wrist, knuckles, along } = joints;
  const part = (mass: number, x: number, belowKnee = false) => ({ mass, x, belowKnee });
  return [
    part(2 * t.foot.mass, between(ankle, toe, t.foot.com), true),
    part(2 * t.shank.mass, between(knee, ankle, t.shank.com), true),
    part(2 * t.thigh.mass, between(hip, knee, t.thigh.com)),
    part(t.trunk.mass, between(hip, shoulder, t.trunk.com)),
    part(t.head.mass, shoulder.x + along.x * t.head.com),
    part(2 * t.upperArm.mass, between(shoulder, elbow, t.upperArm.com)),
    part(2 * t.forearm.mass, between(elbow, wrist, t.forearm.com)),
    part(2 * t.hand.mass, between(wrist, knuckles, t.hand.com)),
  ];
}

/** Across, `part` of the way from one joint to the next. */
function between(a: BodyPoint, b: BodyPoint, part: number): number {
  return a.x + (b.x - a.x) * part;
}

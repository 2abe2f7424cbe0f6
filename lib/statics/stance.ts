/**
 * Where every joint is when hands and toes, or hands and knees, hold a person up, seen from the side. Lengths in statures,
 * x forward from the toes or knees, y up from the floor. The body is straight from its lower support to the head.
 */
import { SEGMENT_LENGTHS } from "./segments.ts";

export interface BodyPoint {
  readonly x: number;
  readonly y: number;
}

export interface Stance {
  readonly on: "toes" | "knees";
  /** straight: see `reach`; bent: elbows over the wrists, shoulders level with them; forearms: elbows down. */
  readonly arms: "straight" | "bent" | "forearms";
  /**
   * Where straight arms go. under: hands under the shoulders as they would be on level ground, the body keeping that
   * shape when hands or feet are raised. square: at right angles to the trunk, hands further from the feet.
   */
  readonly reach: "under" | "square";
  readonly handsUp: number;
  readonly feetUp: number;
  /** On the knees: shins held level off the ground, or lying on the ground, which then carries them. */
  readonly feet: "lifted" | "resting";
}

export interface Joints {
  /** What the body turns about: the balls of the feet or the knees. */
  readonly pivot: BodyPoint;
  readonly ankle: BodyPoint;
  readonly toe: BodyPoint;
  readonly knee: BodyPoint;
  readonly hip: BodyPoint;
  readonly shoulder: BodyPoint;
  readonly elbow: BodyPoint;
  readonly wrist: BodyPoint;
  readonly knuckles: BodyPoint;
  /** Direction of the body, from below to the head. */
  readonly along: BodyPoint;
}

/** The ankle stands this high over the balls of the feet (judgement). */
const ANKLE_OVER_TOES = 0.1;
/** Half the thickness of a knee (judgement). */
const KNEE_OVER_GROUND = 0.03;
/** The thickness of a hand or forearm under the joint (judgement). */
const HAND_THICKNESS = 0.02;

const ARM = SEGMENT_LENGTHS.upperArm + SEGMENT_LENGTHS.forearm;

export function jointsOf(stance: Stance): Joints {
  const lower = lowerSupport(stance);
  const { tilt, arm } = anglesOf(stance, lower);
  const along = { x: Math.cos(tilt), y: Math.sin(tilt) };
  const knee = stance.on === "knees" ? lower : move(lower, along, SEGMENT_LENGTHS.shank);
  const hip = move(knee, along, SEGMENT_LENGTHS.thigh);
  const shoulder = move(hip, along, SEGMENT_LENGTHS.trunk);
  const upper = armsOf(stance, shoulder, arm);
  const behind = move(knee, FORWARD, -SEGMENT_LENGTHS.shank);
  const feet =
    stance.on === "toes" ? { ankle: lower, toe: { x: 0, y: stance.feetUp } } : { ankle: behind, toe: behind };
  return {
    pivot: { x: 0, y: stance.feetUp },
    ...feet,
    knee,
    hip,
    shoulder,
    ...upper,
    knuckles: move(upper.wrist, FORWARD, SEGMENT_LENGTHS.handToKnuckles),
    along,
  };
}

const FORWARD: BodyPoint = { x: 1, y: 0 };

/** The joint where the straight body begins: the ankle over the toes, or the knee. */
const lowerSupport = ({ on, feetUp }: Stance): BodyPoint => ({
  x: 0,
  y: feetUp + (on === "toes" ? ANKLE_OVER_TOES : KNEE_OVER_GROUND),
});

const bodyLength = ({ on }: Stance): number =>
  (on === "toes" ? SEGMENT_LENGTHS.shank : 0) + SEGMENT_LENGTHS.thigh + SEGMENT_LENGTHS.trunk;

/** Radians: how far the body rises above the horizontal, and how far the arms lean forward from the vertical. */
function anglesOf(stance: Stance, lower: BodyPoint): { tilt: number; arm: number } {
  const rise = stance.handsUp + HAND_THICKNESS - lower.y;
  const body = bodyLength(stance);
  if (stance.arms === "bent") return { tilt: Math.asin((rise + SEGMENT_LENGTHS.forearm) / body), arm: 0 };
  if (stance.arms === "forearms") return { tilt: Math.asin((rise + SEGMENT_LENGTHS.upperArm) / body), arm: 0 };
  const shape = stance.reach === "square" ? 0 : tiltOnLevelGround(stance, lower);
  // body sin(tilt) - arm cos(tilt - shape) = rise, put as one sine
  const across = ARM * Math.cos(shape);
  const up = body - ARM * Math.sin(shape);
  const tilt = Math.atan2(across, up) + Math.asin(rise / Math.hypot(across, up));
  return { tilt, arm: tilt - shape };
}

/** The tilt with hands and feet on one level and the arms upright. */
function tiltOnLevelGround(stance: Stance, lower: BodyPoint): number {
  return Math.asin((ARM + HAND_THICKNESS - (lower.y - stance.feetUp)) / bodyLength(stance));
}

function armsOf(stance: Stance, shoulder: BodyPoint, lean: number): Pick<Joints, "elbow" | "wrist"> {
  const down = { x: Math.sin(lean), y: -Math.cos(lean) };
  if (stance.arms === "straight") {
    return { elbow: move(shoulder, down, SEGMENT_LENGTHS.upperArm), wrist: move(shoulder, down, ARM) };
  }
  if (stance.arms === "forearms") {
    const elbow = move(shoulder, down, SEGMENT_LENGTHS.upperArm);
    return { elbow, wrist: move(elbow, FORWARD, SEGMENT_LENGTHS.forearm) };
  }
  // Hands and feet stay where they are as the elbows bend, so the wrist is where straight arms put it.
  const { wrist } = jointsOf({ ...stance, arms: "straight" });
  return { elbow: { x: wrist.x, y: wrist.y + SEGMENT_LENGTHS.forearm }, wrist };
}

const move = (from: BodyPoint, direction: BodyPoint, by: number): BodyPoint => ({
  x: from.x + direction.x * by,
  y: from.y + direction.y * by,
});

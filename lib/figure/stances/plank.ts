/** Planks and push-ups, on the feet or on the knees: hands or forearms on one surface, feet or knees on another. */

import { type BodySide, frameFacing, spin } from "../body/joints.ts";
import { ARM, BONES, FIST_OVER_BAR, FLESH, LEG, REACH } from "../body/lengths.ts";
import type { ArmPlan, LegPlan, Trunk, TrunkPlan } from "../body/rig.ts";
import { chord, meeting } from "../space/ik.ts";
import { heightOf, type Surface } from "../space/machine.ts";
import { blend, cosOf, degreesOf, dotOf, minus, plus, scaled, sinOf, UP, unit, type Vec } from "../space/vector.ts";
import { fistOn, handSurface, palmOn } from "./holds.ts";
import { drawsIn, pikes } from "./scheme.ts";
import { ballOn, ballOnAny, outward, type PoseStage, type Posture } from "./stage.ts";

const HEEL_RISE = 68;
const BOW = 7;
/** The share of a bone chain that is used where it looks straight. */
const ALMOST = 0.9985;

interface Base {
  readonly hands: Surface;
  readonly feet: Surface;
  /** The wrist, elbow or fist, in the middle of the rails; and the arm above it. */
  readonly hand: Vec;
  readonly arm: number;
  /** Where the balls of the feet or the knees are. */
  readonly foot: Vec;
}

const usesBars = (base: Base) => base.hands.endsWith("bars");

/** How far the shoulder stands behind the hand, degrees, in the long pose. */
const leanOf = (stage: PoseStage, bars: boolean) => (stage.onForearms ? 2 : bars ? 28 : 2);

/** Hands and feet on their surfaces: far apart enough for a straight body in the long pose, the carriage's travel added. */
function baseOf(stage: PoseStage, onKnees: boolean): Base {
  const hands = handSurface(stage.move) ?? "carriage";
  const feet: Surface = stage.move.feet === "front-platform" && hands === "carriage" ? "front-platform" : "carriage";
  const bars = hands.endsWith("bars");
  const rest = stage.onForearms ? FLESH.elbow : bars ? FIST_OVER_BAR : FLESH.wrist;
  const arm = stage.onForearms ? BONES.upperArm : bars ? REACH * 0.985 : ARM * 0.997;
  const height = heightOf(hands) + rest;
  const [start, end] = stage.travels;
  const long = drawsIn(stage.move) ? Math.max(start, end) : Math.min(start, end);
  const apart = straightDistance(stage, arm, height, heightOf(feet), bars, onKnees);
  const moved = hands === feet ? 0 : stage.travel - long;
  const s = stage.front[0];
  const handX =
    hands === "carriage"
      ? handOnCarriage(stage, feet, apart + moved)
      : bars
        ? -0.3
        : stage.onForearms
          ? -0.155
          : -0.215;
  const hand: Vec = [handX, height, 0];
  return { hands, feet, hand, arm, foot: [handX - s * (apart + moved), heightOf(feet), 0] };
}

/** Feet on the platform fix the hands; both on the carriage lie about its middle. */
function handOnCarriage(stage: PoseStage, feet: Surface, apart: number): number {
  const s = stage.front[0];
  return feet === "front-platform" ? -0.26 + s * apart : stage.travel + 0.65 + stage.shift + (s * apart) / 2;
}

/** From the hand to the ball of the foot or the knee along the rails, the body straight. */
function straightDistance(
  stage: PoseStage,
  arm: number,
  hand: number,
  foot: number,
  bars: boolean,
  onKnees: boolean,
): number {
  const lean = leanOf(stage, bars);
  const shoulder = hand + arm * cosOf(lean);
  const ahead = -arm * sinOf(lean);
  if (onKnees) {
    const body = BONES.trunk + BONES.thigh * 0.999;
    return Math.sqrt(body ** 2 - (shoulder - foot - FLESH.knee) ** 2) - ahead;
  }
  const ankle = ankleFrom(stage, [0, foot, 0]);
  const body = chord(BONES.trunk, LEG, BOW) * ALMOST;
  return Math.sqrt(body ** 2 - (shoulder - ankle[1]) ** 2) - ahead + ankle[0] * stage.front[0];
}

function ankleFrom(stage: PoseStage, ball: Vec): Vec {
  const plan = ballOn(ball, HEEL_RISE, stage.front, UP, "carriage");
  return "ankle" in plan ? plan.ankle : ball;
}

const pitchOf = (stage: PoseStage, direction: Vec) =>
  degreesOf(Math.atan2(dotOf(direction, stage.front), direction[1]));

/** A trunk from hip to shoulder line, bowed by `bend` degrees. */
function trunkBetween(stage: PoseStage, hip: Vec, shoulder: Vec, bend: number, nod: number): TrunkPlan {
  const pitch = pitchOf(stage, unit(minus(shoulder, hip))) - bend / 2;
  return { from: "pelvis", at: hip, frame: frameFacing(stage.front, pitch), bend, nod };
}

export function plank(stage: PoseStage): Posture {
  const base = baseOf(stage, false);
  const ankle = ankleFrom(stage, base.foot);
  const moves = Math.abs(stage.travels[1] - stage.travels[0]) >= 0.05 && base.hands !== base.feet;
  const together = drawsIn(stage.move) && stage.end && moves;
  if (together) return pikes(stage.move) ? pike(stage, base, ankle) : tuck(stage, base);
  const body = chord(BONES.trunk, LEG, BOW) * ALMOST;
  const low = stage.move.pattern === "push" && stage.end && !stage.onForearms;
  const shoulder = low ? loweredTo(stage, base, ankle, body) : meeting(base.hand, base.arm, ankle, body);
  const hip = meeting(shoulder, BONES.trunk * cosOf(BOW / 2), ankle, LEG * ALMOST);
  return {
    trunk: trunkBetween(stage, hip, shoulder, BOW - 1, -14),
    legs: feetOn(stage, base, blend([stage.front, 1], [UP, -0.3])),
    arms: armsOn(stage, base, low),
  };
}

function loweredTo(stage: PoseStage, base: Base, lower: Vec, body: number): Vec {
  const y = heightOf(base.hands) + (usesBars(base) ? 0.195 : 0.2);
  return [lower[0] + stage.front[0] * Math.sqrt(Math.max(0, body ** 2 - (y - lower[1]) ** 2)), y, 0];
}

/** Hips high, arms and trunk in one line. */
function pike(stage: PoseStage, base: Base, ankle: Vec): Posture {
  const bend = 14;
  const trunk = BONES.trunk * cosOf(bend / 2);
  const hip = meeting(
    base.hand,
    chord(base.arm, trunk, (stage.onForearms ? 40 : 16) + stage.attempt * 9),
    ankle,
    LEG * ALMOST,
  );
  const shoulder = meeting(base.hand, base.arm, hip, trunk);
  return {
    trunk: trunkBetween(stage, hip, shoulder, bend, 14),
    legs: feetOn(stage, base, blend([stage.front, 1], [UP, 0.2])),
    arms: armsOn(stage, base, false),
  };
}

/** Knees drawn in under the trunk, the back rounded; to one side where the move turns. */
function tuck(stage: PoseStage, base: Base): Posture {
  const bend = 38;
  const s = stage.front[0];
  const hip: Vec = [
    base.foot[0] + s * (0.175 + stage.attempt * 0.06),
    heightOf(base.feet) + FLESH.knee + BONES.thigh * 0.86 + 0.06,
    0,
  ];
  const shoulder = meeting(base.hand, base.arm * 0.99, hip, BONES.trunk * cosOf(bend / 2));
  const level = trunkBetween(stage, hip, shoulder, bend, 10);
  const k = stage.move.pattern !== "rotation" ? 0 : stage.worked === "left" ? 1 : -1;
  const pole = blend([stage.front, 1], [UP, -0.18], [stage.left, k * 0.95]);
  return {
    trunk: { ...level, from: "chest", at: shoulder, frame: spin(level.frame, level.frame.up, 30 * k), turn: -30 * k },
    legs: (trunk, side) => {
      const z = outward(stage, side, k === 0 ? BONES.hipHalf : 0.055)[2] + stage.left[2] * k * 0.12;
      const ball: Vec = [base.foot[0], base.foot[1], z];
      return [...ballOnAny(ball, [70, 78, 86, 62, 54], stage.front, pole, base.feet), ...spareLegs(trunk, stage)];
    },
    arms: armsOn(stage, base, false),
  };
}

function feetOn(stage: PoseStage, base: Base, pole: Vec): Posture["legs"] {
  return (trunk, side) => {
    const ball = plus(base.foot, outward(stage, side, BONES.hipHalf));
    const onBalls = ballOnAny(ball, [HEEL_RISE, 74, 80, 60, 52, 86, 44], stage.front, pole, base.feet);
    return [...onBalls, ...spareLegs(trunk, stage)];
  };
}

const spareLegs = (trunk: Trunk, stage: PoseStage): LegPlan[] => {
  const down = scaled(trunk.pelvis.up, -1);
  return [{ thigh: down, shank: blend([down, 1], [stage.front, -0.3], [UP, 0.3]), foot: { point: 40 } }];
};

function armsOn(stage: PoseStage, base: Base, low: boolean): Posture["arms"] {
  const wide = low || stage.move.pattern === "push" ? 0.215 : BONES.shoulderHalf;
  return (trunk, side) => {
    if (stage.onForearms) return [forearmOn(stage, base, trunk, side)];
    if (usesBars(base)) {
      const pole = blend([stage.front, -1], [outward(stage, side, 1), low ? 1.3 : 1], [UP, low ? 0.5 : 0]);
      return [fistOn(side, stage, base.hand[0], base.hands, pole)];
    }
    const flat = palmOn(stage, side, base.hand[0], wide, base.hands);
    if (!low) return [flat];
    return [{ ...flat, pole: blend([stage.front, -1], [outward(stage, side, 1), 0.8], [UP, 0.5]) }, flat];
  };
}

function forearmOn(stage: PoseStage, base: Base, trunk: Trunk, side: BodySide): ArmPlan {
  const elbow = plus(base.hand, outward(stage, side, BONES.shoulderHalf));
  return {
    upper: minus(elbow, trunk.pairs[side].shoulder),
    fore: stage.front,
    touch: { joint: "elbow", surface: base.hands },
  };
}

/** On the knees, hands before them: a straight line from knee to head. */
export function kneelingPlank(stage: PoseStage): Posture {
  const base = baseOf(stage, true);
  const body = BONES.trunk + BONES.thigh * 0.999;
  const knee: Vec = plus(base.foot, UP, FLESH.knee);
  const low = stage.move.pattern === "push" && stage.end;
  const shoulder = low ? loweredTo(stage, base, knee, body) : meeting(base.hand, base.arm, knee, body);
  const along = unit(minus(shoulder, knee));
  const frame = frameFacing(stage.front, pitchOf(stage, along));
  return {
    trunk: { from: "pelvis", at: plus(knee, along, BONES.thigh), frame, nod: -12 },
    legs: () => [
      {
        thigh: scaled(along, -1),
        shank: blend([stage.front, -0.8], [UP, 0.6]),
        foot: { point: 30 },
        touch: { joint: "knee", surface: base.feet },
      },
    ],
    arms: armsOn(stage, base, low),
  };
}

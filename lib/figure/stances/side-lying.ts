/** On the side: the side plank on a forearm, and lying with a foot in the strap. The head is to the front or to the back. */
import { at, type BodyFrame, type BodySide, otherBodySide, spin } from "../body/joints.ts";
import { BONES, FLESH, LEG } from "../body/lengths.ts";
import type { ArmPlan, LegPlan, Trunk } from "../body/rig.ts";
import { chord, meeting } from "../space/ik.ts";
import { heightOf } from "../space/machine.ts";
import {
  across,
  blend,
  cosOf,
  crossOf,
  dotOf,
  minus,
  plus,
  scaled,
  sinOf,
  UP,
  unit,
  type Vec,
} from "../space/vector.ts";
import { deckOf } from "./deck.ts";
import { armAs, armsAs, handleCables, handSurface } from "./holds.ts";
import { lifts } from "./scheme.ts";
import type { PoseStage, Posture } from "./stage.ts";

export function sideLying(stage: PoseStage): Posture {
  return handSurface(stage.move) === "front-platform" ? sidePlank(stage) : lying(stage);
}

/** A frame with the head towards `up`, facing where the person faces. */
const lyingFrame = (stage: PoseStage, up: Vec): BodyFrame => ({
  up,
  front: stage.front,
  left: crossOf(up, stage.front),
});

/** Degrees between trunk and legs where the hips are lowered or lifted. */
const SIDE_BEND = 30;
/** Legs are not quite long, so that both reach their place in the stack. */
const SOFT = 0.955;

/** The elbow under its shoulder, feet stacked on the carriage, the body in one line or the hips lowered. */
function sidePlank(stage: PoseStage): Posture {
  const lower: BodySide = stage.facing === "left" ? "right" : "left";
  const sink = lifts(stage.move) && !stage.end;
  const elbow: Vec = [-0.17, heightOf("front-platform") + FLESH.elbow, 0];
  const ankleY = heightOf("carriage") + 0.078;
  const start = Math.min(...stage.travels);
  const out = stage.travel - start;
  const shoulder: Vec = [elbow[0] + 0.075 + out * 0.8, elbow[1] + BONES.upperArm + BONES.shoulderHalf * 0.88, 0];
  const bend = lifts(stage.move) ? SIDE_BEND : 4;
  const spine = bend / 2;
  const trunk = BONES.trunk * cosOf(spine / 2);
  const straight = chord(trunk, LEG * SOFT, bend) * 0.999;
  const far = elbow[0] + 0.075 + Math.sqrt(straight ** 2 - (shoulder[1] - ankleY) ** 2);
  const ankle: Vec = [far + (sink ? 0 : out), ankleY, 0];
  const hip = meeting(shoulder, trunk, ankle, LEG * SOFT, sink ? "lower" : "upper");
  const line = lyingFrame(stage, unit(minus(shoulder, hip)));
  // The spine takes half of the bend between trunk and legs, the hips the rest.
  const turn = dotOf(crossOf(line.up, minus(hip, ankle)), line.front) > 0 ? 1 : -1;
  const frame = spin(line, line.front, (turn * spine) / 2);
  const chestLeft = spin(line, line.front, (-turn * spine) / 2).left;
  const lowerShoulder = plus(shoulder, chestLeft, lower === "left" ? BONES.shoulderHalf : -BONES.shoulderHalf);
  const shift = minus(elbow, plus(lowerShoulder, unit(minus(elbow, lowerShoulder)), BONES.upperArm));
  const move: Vec = [shift[0], shift[1], 0];
  return {
    trunk: { from: "pelvis", at: plus(hip, move), frame, aside: -turn * spine },
    legs: (trunk, side) => [stacked(stage, trunk, side, lower, plus(ankle, move))],
    arms: (trunk, side) => (side === lower ? [forearmDown(stage, trunk, side, elbow)] : topArm(stage, trunk, side)),
  };
}

function forearmDown(stage: PoseStage, trunk: Trunk, side: BodySide, elbow: Vec): ArmPlan {
  return {
    upper: minus(elbow, trunk.pairs[side].shoulder),
    fore: blend([[-0.75, 0, 0], 1], [stage.front, 0.66]),
    touch: { joint: "elbow", surface: "front-platform" },
  };
}

function topArm(stage: PoseStage, trunk: Trunk, side: BodySide): ArmPlan[] {
  if (lifts(stage.move)) {
    const { hip } = trunk.pairs[side];
    const up = scaled(trunk.pelvis.left, side === "left" ? 1 : -1);
    return [{ fist: plus(plus(hip, trunk.pelvis.up, 0.07), up, 0.06), pole: up }, armAs(trunk, side, "hip")];
  }
  const straightUp = scaled(trunk.chest.left, side === "left" ? 1 : -1);
  const line = blend([straightUp, 1], [trunk.chest.up, 0.12]);
  return [{ upper: line, fore: line }, armAs(trunk, side, "hip")];
}

/** One foot on the other, on their edges: the lower one on the carriage. */
function stacked(stage: PoseStage, trunk: Trunk, side: BodySide, lower: BodySide, ankle: Vec): LegPlan {
  const over = side === lower ? 0 : 0.076;
  const goal: Vec = [ankle[0], heightOf("carriage") + 0.052 + over, stage.front[2] * (side === lower ? -0.024 : 0.024)];
  const line = unit(minus(goal, trunk.pairs[side].hip));
  const along = blend([stage.front, 1], [line, 0.35]);
  const up = unit(across(scaled(line, -1), along));
  const touch = side === lower ? ({ joint: "ankle", surface: "carriage" } as const) : undefined;
  return { ankle: goal, pole: stage.front, foot: { along, up }, touch };
}

/** Lying on one side with the head on the arm, the upper leg working. */
function lying(stage: PoseStage): Posture {
  const deck = deckOf(stage);
  const lower: BodySide = stage.facing === "left" ? "left" : "right";
  const upper = otherBodySide(lower);
  const frame = lyingFrame(stage, [1, 0, 0]);
  const k = lower === "left" ? 1 : -1;
  const hip: Vec = [deck.place(0.57), deck.top + BONES.hipHalf + FLESH.side, 0];
  const strap = stage.move.feet === "cable-strap";
  return {
    trunk: { from: "pelvis", at: hip, frame, aside: 20 * k, nodAside: -10 * k },
    legs: (trunk, side) => [side === lower ? bentLeg(trunk) : raisedLeg(stage, trunk, upper), bentLeg(trunk)],
    arms: (trunk, side) => (side === lower ? headArm(trunk, side) : supportArm(stage, trunk, side, deck.top)),
    rests: [{ joint: at("hip", lower), surface: deck.surface }],
    cables: [
      ...handleCables({ ...stage, worked: upper }),
      ...(strap ? [{ joint: at("ball", upper), kind: "strap" as const, pulley: "middle" as const }] : []),
    ],
  };
}

const bentLeg = (trunk: Trunk): LegPlan => ({
  thigh: blend([trunk.pelvis.front, 0.75], [trunk.pelvis.up, -0.66]),
  shank: blend([trunk.pelvis.front, -0.62], [trunk.pelvis.up, -0.78]),
  foot: { point: 20 },
});

function raisedLeg(stage: PoseStage, trunk: Trunk, side: BodySide): LegPlan {
  const raise =
    stage.move.pattern === "lateral" || stage.move.feet === "cable-strap" ? (stage.end ? 4 : 42) : stage.end ? 30 : 4;
  const out = scaled(trunk.pelvis.left, side === "left" ? 1 : -1);
  const line = plus(plus(scaled(trunk.pelvis.up, -cosOf(raise)), out, sinOf(raise)), trunk.pelvis.front, 0.08);
  return { thigh: line, shank: line, foot: { point: 35 } };
}

function headArm(trunk: Trunk, side: BodySide): ArmPlan[] {
  const { front, up, left } = trunk.chest;
  const down = scaled(left, side === "left" ? 1 : -1);
  const upper = blend([front, 0.72], [up, 0.68], [down, 0.02]);
  return [{ upper, fore: blend([front, -0.72], [up, 0.2], [down, -0.42]) }, ...armsAs("overhead")(trunk, side)];
}

function supportArm(stage: PoseStage, trunk: Trunk, side: BodySide, top: number): readonly ArmPlan[] {
  const { chest } = trunk.joints;
  const wrist: Vec = [chest[0] - 0.12, top + FLESH.wrist, stage.front[2] * 0.23];
  const surface = stage.move.station === "floor" ? ("floor" as const) : ("carriage" as const);
  const palm: ArmPlan = {
    wrist,
    pole: blend([UP, 1], [stage.front, 0.3]),
    fingers: [1, 0, 0],
    touch: { joint: "wrist", surface },
  };
  if (stage.move.hands !== "free" && stage.move.hands !== "carriage")
    return armsAs(stage.arms, "along-body")(trunk, side);
  return [palm, ...armsAs("along-body", "hip")(trunk, side)];
}

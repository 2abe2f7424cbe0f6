/** Standing: before the machine, with a foot on platform and carriage each, across the rails, or on the carriage. */
import { type BodySide, frameFacing, otherBodySide } from "../body/joints.ts";
import { BONES, LEG } from "../body/lengths.ts";
import type { ArmPlan, LegPlan, Trunk } from "../body/rig.ts";
import { heightOf, type Surface } from "../space/machine.ts";
import { blend, plus, UP, type Vec } from "../space/vector.ts";
import { deckOf } from "./deck.ts";
import { armAs, armsAs, handleCables, handsOf } from "./holds.ts";
import { holdsCable } from "./scheme.ts";
import { ballOnAny, facesSide, outward, type PoseStage, type Posture, soleOn } from "./stage.ts";

export function standing(stage: PoseStage): Posture {
  const { station, feet } = stage.move;
  const split = station === "front" && feet === "carriage";
  if (split) return facesSide(stage.facing) ? sideLunge(stage) : lunge(stage);
  return onOneSurface(stage);
}

/** Both feet on the floor, a platform or the carriage: upright, in a squat or folded at the hips. */
function onOneSurface(stage: PoseStage): Posture {
  const { surface, x } = standPlace(stage);
  const top = heightOf(surface);
  const deep = stage.move.pattern === "squat" || stage.move.pattern === "lunge";
  const folds = stage.move.pattern === "hinge" || stage.move.pattern === "flexion";
  const upright: Vec = [x, top + BONES.ankle + LEG * 0.997, 0];
  const low = deep && stage.end ? plus(plus(upright, UP, -0.37), stage.front, -0.25) : upright;
  const back = folds && stage.end ? plus(plus(upright, UP, -0.035), stage.front, -0.18) : low;
  const pitch = stage.end ? (deep ? 36 : folds ? 66 : 2) : 2;
  const lateral = stage.move.pattern === "lateral" && stage.end ? 22 : 0;
  return {
    trunk: {
      from: "pelvis",
      at: back,
      frame: frameFacing(stage.front, pitch),
      bend: folds && stage.end ? 8 : 0,
      aside: lateral,
      turn: stage.move.pattern === "rotation" ? (stage.end ? -30 : 30) : 0,
      nod: -pitch * 0.35,
    },
    legs: (_, side) => {
      const z = outward(stage, side, facesSide(stage.facing) ? 0.13 : 0.12);
      const foot = plus([x, top, 0], z);
      return [soleOn(stage, foot, blend([stage.front, 1], [outward(stage, side, 1), 0.25]), stage.front, surface)];
    },
    arms: standArms(stage, pitch),
    cables: handleCables(stage),
  };
}

function standPlace(stage: PoseStage): { readonly surface: Surface; readonly x: number } {
  const { station, feet } = stage.move;
  if (station === "floor" || feet === "floor") {
    return {
      surface: "floor",
      x: deckOf({ ...stage, facing: "front", move: { ...stage.move, station: "floor" } }).place(1.1),
    };
  }
  if (feet === "front-platform" || station === "front") return { surface: "front-platform", x: -0.27 };
  return { surface: "carriage", x: deckOf(stage).place(0.65) };
}

function standArms(stage: PoseStage, pitch: number): Posture["arms"] {
  if (!holdsCable(stage.move)) return handsOf(stage);
  const folds = stage.move.pattern === "hinge" && stage.end;
  const squats = stage.move.pattern === "squat";
  if (!folds && !squats) return (trunk, side) => armsAs(oneOrBoth(stage, side))(trunk, side);
  // Arms stay towards the cables, however far the trunk leans.
  const level = blend([stage.front, 1], [UP, folds ? -0.3 : pitch > 10 ? -0.06 : -0.12]);
  return (trunk, side) => [{ upper: level, fore: level }, ...armsAs("long")(trunk, side)];
}

const oneOrBoth = (stage: PoseStage, side: BodySide) =>
  stage.move.hands === "one-handle" && side !== stage.worked ? "hip" : stage.arms;

/** Hands on the hips, whatever the trunk does. */
function onHips(stage: PoseStage, trunk: Trunk, side: BodySide): ArmPlan[] {
  const out = outward(stage, side, 1);
  const hip = plus(plus(plus(trunk.pairs[side].hip, stage.front, 0.04), out, 0.07), UP, 0.095);
  return [{ fist: hip, pole: blend([stage.front, -1], [out, 0.9], [UP, 0.1]) }, armAs(trunk, side, "hip")];
}

/** One foot on the platform, the other on the ball on the carriage behind. */
function lunge(stage: PoseStage): Posture {
  const s = stage.front[0];
  const [start, end] = stage.travels;
  const short = Math.abs(end - start) < 0.2;
  const fore: Vec = [-0.23, heightOf("front-platform"), 0];
  const hind: Vec = [(short ? 0.52 - Math.min(start, end) : 0.41) + stage.travel, heightOf("carriage"), 0];
  const ahead = s < 0 ? stage.worked : otherBodySide(stage.worked);
  const hipX = short ? (stage.end ? 0.1 : 0.09) : stage.end ? 0.165 : 0.08;
  const most = heightOf("front-platform") + BONES.ankle + BONES.shank - 0.015;
  const reach = (x: number, y: number) => y + Math.sqrt(Math.max(0, (LEG * 0.985) ** 2 - (hipX - x) ** 2));
  const tall = Math.min(reach(fore[0], fore[1] + BONES.ankle), reach(hind[0] + 0.03, hind[1] + 0.14));
  const pitch = short ? 4 : stage.end ? 22 : 3;
  return {
    trunk: {
      from: "pelvis",
      at: [hipX, stage.end ? Math.min(tall, most) : tall, 0],
      frame: frameFacing(stage.front, pitch),
      nod: -pitch * 0.4,
    },
    legs: (_, side) => {
      const aside = outward(stage, side, BONES.hipHalf);
      if (side === ahead) return [soleOn(stage, plus(fore, aside), stage.front, stage.front, "front-platform")];
      return hindLeg(stage, plus(hind, aside));
    },
    arms: stage.move.hands === "free" ? (trunk, side) => onHips(stage, trunk, side) : handsOf(stage),
    cables: handleCables(stage),
  };
}

function hindLeg(stage: PoseStage, ball: Vec): LegPlan[] {
  const front: Vec = stage.front;
  const pole = blend([front, 1], [UP, -0.35]);
  return ballOnAny(ball, [52, 60, 68, 76, 44, 84, 36], front, pole, "carriage");
}

/** Across the rails, one foot on the platform and one on the carriage: the carriage's foot slides away. */
function sideLunge(stage: PoseStage): Posture {
  const onPlatform: BodySide = stage.facing === "left" ? "right" : "left";
  const platform: Vec = [-0.11, heightOf("front-platform"), 0];
  const carriage: Vec = [0.11 + stage.travel, heightOf("carriage"), 0];
  const middle = (platform[0] + carriage[0]) / 2;
  const reach =
    heightOf("carriage") + BONES.ankle + Math.sqrt(Math.max(0, (LEG * 0.987) ** 2 - (middle - platform[0]) ** 2));
  const hip: Vec = stage.end
    ? [platform[0] + 0.085, platform[1] + BONES.ankle + 0.43, -stage.front[2] * 0.27]
    : [middle, reach, -stage.front[2] * 0.07];
  const pitch = stage.end ? 42 : 5;
  return {
    trunk: { from: "pelvis", at: hip, frame: frameFacing(stage.front, pitch), nod: -pitch * 0.6 },
    legs: (_, side) => {
      const own = side === onPlatform;
      const out = outward(stage, side, 1);
      const along = blend([stage.front, 1], [out, own ? 0.12 : 0.1]);
      const foot = own ? platform : carriage;
      const pole = blend([stage.front, 1], [out, own ? 0.35 : 0]);
      return [soleOn(stage, foot, pole, along, own ? "front-platform" : "carriage")];
    },
    arms: (trunk, side) =>
      stage.move.hands !== "free"
        ? handsOf(stage)(trunk, side)
        : stage.end
          ? armsAs("before-chest")(trunk, side)
          : onHips(stage, trunk, side),
    cables: handleCables(stage),
  };
}

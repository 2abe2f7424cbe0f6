/** Lying on the back, the head away from where the person faces: presses, bridges, straps, arms. */
import { at, frameFacing, within } from "../body/joints.ts";
import { BONES, FLESH, REACH } from "../body/lengths.ts";
import type { LegPlan, Trunk } from "../body/rig.ts";
import { MACHINE } from "../space/machine.ts";
import { blend, cosOf, degreesOf, plus, scaled, sinOf, UP, type Vec } from "../space/vector.ts";
import { deckOf } from "./deck.ts";
import { armAs, armsAs, handleCables } from "./holds.ts";
import { bendsBack, holdsCable, pressesCalves } from "./scheme.ts";
import { heelOn } from "./seated.ts";
import { outward, type PoseStage, type Posture } from "./stage.ts";

export function supine(stage: PoseStage): Posture {
  if (stage.move.feet === "front-platform" && stage.move.station !== "floor") {
    if (pressesCalves(stage.move)) return calfPress(stage);
    return stage.move.pattern === "hinge" ? bridge(stage) : press(stage);
  }
  return onDeck(stage);
}

/** Arms beside the body, on what it lies on. */
function armsBeside(stage: PoseStage, top: number, trunk: Trunk, side: "left" | "right") {
  const { chest } = trunk.joints;
  const out = outward(stage, side, BONES.shoulderHalf + 0.04);
  const hand: Vec = [chest[0] + stage.front[0] * REACH * 0.97, top + 0.034, out[2]];
  return [{ fist: hand, pole: UP }, armAs(trunk, side, "along-body")];
}

const flatOnBack = (stage: PoseStage, hip: Vec): Posture["trunk"] => ({
  from: "pelvis",
  at: hip,
  frame: frameFacing(stage.front, -90),
  nod: 2,
});

function press(stage: PoseStage): Posture {
  const top = MACHINE.carriageTop;
  const hip: Vec = [0.27 + stage.travel + stage.shift, top + FLESH.back, 0];
  const single = stage.move.sides === "each";
  return {
    trunk: flatOnBack(stage, hip),
    legs: (trunk, side) =>
      single && side !== stage.worked
        ? [tableTop(trunk)]
        : [...heelsUp(stage, side, stage.end ? [38, 30, 46] : [18, 26, 34, 42]), tableTop(trunk)],
    arms: handlesOr(stage, top),
    rests: [{ joint: "pelvis", surface: "carriage" }],
    cables: handleCables(stage),
  };
}

/** A heel on the front platform's edge, the foot raised by one of these angles. */
function heelsUp(stage: PoseStage, side: "left" | "right", lifts: readonly number[]): LegPlan[] {
  const heel = plus([-0.018, MACHINE.platformTop, 0], outward(stage, side, BONES.hipHalf));
  return lifts.map((lift) => heelOn(heel, lift, stage.front, UP, "front-platform"));
}

const tableTop = (trunk: Trunk): LegPlan => ({
  thigh: plus(scaled(trunk.pelvis.front, 1), trunk.pelvis.up, -0.06),
  shank: plus(scaled(trunk.pelvis.up, -1), trunk.pelvis.front, 0.08),
  foot: { point: 25 },
});

/** The balls of the feet on the platform's edge, the knees almost straight: only the ankles work. */
function calfPress(stage: PoseStage): Posture {
  const top = MACHINE.carriageTop;
  const hip: Vec = [0.488 + stage.travel + stage.shift, top + FLESH.back, 0];
  const tilts = stage.end ? [44, 38, 50, 32] : [106, 100, 94, 88, 82, 76, 70, 64];
  return {
    trunk: flatOnBack(stage, hip),
    legs: (trunk, side) => {
      const ball = plus([-0.012, MACHINE.platformTop, 0], outward(stage, side, BONES.hipHalf));
      return [
        ...tilts.map((tilt): LegPlan => {
          const along = plus(scaled(stage.front, cosOf(tilt)), UP, sinOf(tilt));
          const up = plus(scaled(UP, cosOf(tilt)), stage.front, -sinOf(tilt));
          const ankle = plus(plus(ball, along, -BONES.ball), up, BONES.ankle);
          return { ankle, pole: UP, foot: { along, up }, touch: { joint: "ball", surface: "front-platform" } };
        }),
        tableTop(trunk),
      ];
    },
    arms: handlesOr(stage, top),
    rests: [{ joint: "pelvis", surface: "carriage" }],
    cables: handleCables(stage),
  };
}

/** Shoulders on the carriage, hips up: lifted and lowered, or held up while the carriage goes out and in. */
function bridge(stage: PoseStage): Posture {
  const top = MACHINE.carriageTop;
  const raises = bendsBack(stage.move);
  const up = !raises || stage.end;
  const rise = up ? degreesOf(Math.asin(0.25 / BONES.trunk)) : 0;
  const bend = up ? -14 : 0;
  const chestX = (raises ? 0.35 : 0.32) + stage.travel + stage.shift + BONES.trunk * 0.995;
  const lifts = raises ? [0, 12, 24] : stage.end ? [40, 30, 20] : [6, 16, 26];
  return {
    trunk: {
      from: "chest",
      at: [chestX, top + FLESH.back, 0],
      frame: frameFacing(stage.front, -90 - rise - bend / 2),
      bend,
      nod: up ? rise * 0.9 + 6 : 4,
    },
    legs: (trunk, side) => [...heelsUp(stage, side, lifts), tableTop(trunk)],
    arms: (trunk, side) => armsBeside(stage, top, trunk, side),
    rests: [{ joint: "chest", surface: "carriage" }],
  };
}

const handlesOr =
  (stage: PoseStage, top: number): Posture["arms"] =>
  (trunk, side) =>
    holdsCable(stage.move)
      ? [...armsAs(stage.arms)(trunk, side)]
      : [...armsBeside(stage, top, trunk, side), ...armsAs("along-body")(trunk, side)];

/** Nothing under the feet: legs in the air, in the straps, or feet on the carriage. */
function onDeck(stage: PoseStage): Posture {
  const deck = deckOf(stage);
  const curls = stage.move.pattern === "flexion" && stage.end;
  const hip: Vec = [deck.place(0.47), deck.top + FLESH.back, 0];
  return {
    trunk: {
      from: "pelvis",
      at: hip,
      frame: frameFacing(stage.front, curls ? -84 : -90),
      bend: curls ? 42 : 0,
      nod: curls ? 16 : 2,
    },
    legs: legsInAir(stage),
    arms: airArms(stage, deck.top, curls),
    rests: [{ joint: "pelvis", surface: deck.surface }],
    cables: [...handleCables(stage), ...strapCables(stage)],
  };
}

const strapCables = (stage: PoseStage): NonNullable<Posture["cables"]> =>
  stage.move.feet === "cable-strap"
    ? (["left", "right"] as const).map((side) => ({
        joint: at("ball", side),
        kind: "strap",
        pulley: outward(stage, side, 1)[2] > 0 ? "near" : "far",
      }))
    : [];

function legsInAir(stage: PoseStage): Posture["legs"] {
  return (trunk, side) => {
    if (stage.move.feet === "cable-strap") return [inStrap(stage, trunk), tableTop(trunk)];
    if (stage.move.feet === "carriage" || stage.move.feet === "floor")
      return [...feetFlat(stage, trunk, side), tableTop(trunk)];
    const reaches = stage.move.pattern === "extension" && stage.end && side !== stage.worked;
    return reaches ? [longLow(trunk), tableTop(trunk)] : [tableTop(trunk)];
  };
}

/** Legs long, from high to low, or knees bent to long where the move presses. */
function inStrap(stage: PoseStage, trunk: Trunk): LegPlan {
  const raised = stage.end ? 32 : 80;
  const { front, up } = trunk.pelvis;
  const line = (angle: number) => plus(scaled(front, sinOf(angle)), up, -cosOf(angle));
  const bent = stage.move.pattern === "squat" && !stage.end;
  return { thigh: line(bent ? 95 : raised), shank: line(bent ? 20 : raised), foot: { point: 40 } };
}

const longLow = (trunk: Trunk): LegPlan => {
  const line = plus(scaled(trunk.pelvis.front, 0.36), trunk.pelvis.up, -0.93);
  return { thigh: line, shank: line, foot: { point: 45 } };
};

function feetFlat(stage: PoseStage, trunk: Trunk, side: "left" | "right"): LegPlan[] {
  const deck = deckOf(stage);
  const hip = trunk.pairs[side].hip;
  const surface = deck.surface === "floor" ? "floor" : "carriage";
  return [0.36, 0.3, 0.24].map((ahead) =>
    heelOn([hip[0] + stage.front[0] * ahead, deck.top, hip[2]], 0, stage.front, UP, surface),
  );
}

function airArms(stage: PoseStage, top: number, curls: boolean): Posture["arms"] {
  const reaches = stage.move.pattern === "extension" && stage.end;
  return (trunk, side) => {
    if (!holdsCable(stage.move)) return [...armsBeside(stage, top, trunk, side), ...armsAs("along-body")(trunk, side)];
    if (reaches && side === stage.worked) return armsAs("knees")(trunk, side);
    if (!curls) return armsAs(stage.arms)(trunk, side);
    const out = within(trunk.chest, [0, 0, 1], side);
    const hand = plus(trunk.pairs[side].shoulder, blend([stage.front, 1], [UP, -0.14], [out, 0.08]), REACH * 0.985);
    return [{ fist: hand, pole: UP }, ...armsAs("along-body")(trunk, side)];
  };
}

/** On hands and knees, and the hover of a bear plank. */
import { frameFacing } from "../body/joints.ts";
import { ARM, BONES, FLESH } from "../body/lengths.ts";
import type { LegPlan, Trunk } from "../body/rig.ts";
import { heightOf, type Surface } from "../space/machine.ts";
import { blend, degreesOf, minus, plus, scaled, UP, type Vec } from "../space/vector.ts";
import { deckOf } from "./deck.ts";
import { armsAs, handleCables, handSurface, palmOn } from "./holds.ts";
import { holdsCable } from "./scheme.ts";
import { ballOn, ballOnAny, facesSide, outward, type PoseStage, type Posture } from "./stage.ts";

const ALMOST = 0.999;

/** A trunk from the hip to a shoulder line at height `y`, and its pitch. */
function reachForward(stage: PoseStage, hip: Vec, y: number): { readonly pitch: number; readonly shoulder: Vec } {
  const rise = y - hip[1];
  const ahead = Math.sqrt(Math.max(0, BONES.trunk ** 2 - rise ** 2));
  return { pitch: degreesOf(Math.atan2(ahead, rise)), shoulder: plus(plus(hip, stage.front, ahead), UP, rise) };
}

export function quadruped(stage: PoseStage): Posture {
  const surface = handSurface(stage.move);
  if (surface?.endsWith("platform")) return hover(stage, surface);
  if (stage.move.feet === "front-platform") return pressBack(stage);
  return onDeck(stage);
}

/** Hands on the platform, the knees just off the carriage. */
function hover(stage: PoseStage, surface: Surface): Posture {
  const s = stage.front[0];
  const handX = -0.215;
  const carriage = heightOf("carriage");
  const shoulderY = heightOf(surface) + FLESH.wrist + ARM * 0.992;
  const hipY = carriage + FLESH.knee + 0.07 + BONES.thigh * 0.99;
  const start = Math.min(...stage.travels);
  const rise = shoulderY - hipY;
  const hipX = handX - s * (Math.sqrt(BONES.trunk ** 2 - rise ** 2) - 0.01);
  const ballX = hipX - s * (0.235 + stage.travel - start);
  const pitch = degreesOf(Math.atan2(Math.abs(hipX - handX), rise));
  return {
    trunk: { from: "pelvis", at: [hipX, hipY, 0], frame: frameFacing(stage.front, pitch), nod: -10 },
    legs: (_, side) => {
      const ball = plus([ballX, carriage, 0], outward(stage, side, BONES.hipHalf));
      const pole = blend([stage.front, 1], [UP, -1]);
      return ballOnAny(ball, [68, 76, 84, 60, 52, 44, 36], stage.front, pole, "carriage");
    },
    arms: (_, side) => [palmOn(stage, side, handX, BONES.shoulderHalf, surface)],
  };
}

/** Hands and knees on the carriage or the floor; a hinge lifts the leg that works. */
function onDeck(stage: PoseStage): Posture {
  const deck = deckOf(stage);
  const across = facesSide(stage.facing);
  const thigh = BONES.thigh * ALMOST;
  const z = across ? -stage.front[2] * 0.17 : 0;
  const x = across ? deck.place(0.65) : deck.place(0.78);
  const hip: Vec = [x, deck.top + FLESH.knee + thigh, z];
  const { pitch, shoulder } = reachForward(stage, hip, deck.top + FLESH.wrist + ARM * 0.985);
  return {
    trunk: { from: "pelvis", at: hip, frame: frameFacing(stage.front, pitch), nod: -12 },
    legs: (trunk, side) =>
      stage.move.pattern === "hinge" && stage.end && side === stage.worked
        ? [liftedBack(trunk, stage), kneeLeg(stage, deck.surface)]
        : [kneeLeg(stage, deck.surface)],
    arms: armsUnder(stage, shoulder, deck.surface, across),
    cables: handleCables(stage),
  };
}

function armsUnder(stage: PoseStage, shoulder: Vec, surface: Surface, across: boolean): Posture["arms"] {
  const cable = holdsCable(stage.move);
  return (trunk, side) => {
    const hand = plus(plus(shoulder, outward(stage, side, BONES.shoulderHalf)), stage.front, 0.008);
    const flat = palmOn(stage, side, hand[0], BONES.shoulderHalf, surface);
    const palm = "wrist" in flat ? { ...flat, wrist: [flat.wrist[0], flat.wrist[1], hand[2]] as Vec } : flat;
    const pulls = cable && (stage.move.hands !== "one-handle" || side === stage.worked);
    const free = armsAs(stage.arms, stage.end ? "behind" : "low")(trunk, side);
    return pulls ? free : across ? [palm, ...free] : [palm];
  };
}

/** The thigh upright, the shank along the surface, the toes behind. */
function kneeLeg(stage: PoseStage, surface: Surface): LegPlan {
  const back = scaled(stage.front, -1);

  return {
    thigh: scaled(UP, -1),
    shank: blend([back, 1], [UP, -0.02]),
    foot: { point: 50, toes: back },
    touch: { joint: "knee", surface },
  };
}

const liftedBack = (trunk: Trunk, stage: PoseStage): LegPlan => {
  const out = blend([trunk.pelvis.up, -1], [UP, 0.1]);
  return { thigh: out, shank: blend([out, 1], [stage.front, -0.05]), foot: { point: 40 } };
};

/** One foot presses against the platform behind, the other knee stays on the carriage. */
function pressBack(stage: PoseStage): Posture {
  const knee = heightOf("carriage") + FLESH.knee;
  const ball: Vec = [-0.055, heightOf("front-platform"), 0];
  const hip: Vec = [0.035 + stage.travel + stage.shift, knee + Math.sqrt(BONES.thigh ** 2 - 0.0016), 0];
  const { pitch, shoulder } = reachForward(stage, hip, heightOf("carriage") + FLESH.wrist + ARM * 0.985);
  const kneeAt: Vec = [hip[0] + stage.front[0] * 0.04, knee, 0];
  return {
    trunk: { from: "pelvis", at: hip, frame: frameFacing(stage.front, pitch), nod: -12 },
    legs: (trunk, side) => {
      if (side !== stage.worked) {
        const thigh = minus(kneeAt, hip);
        return [{ ...kneeLeg(stage, "carriage"), thigh } as LegPlan];
      }
      const foot = plus(ball, outward(stage, side, BONES.hipHalf));
      const pole = blend([stage.front, 1], [UP, -1]);
      const rises = stage.end ? [66, 74, 58, 50, 82] : [88, 80, 72, 64];
      return [
        ...rises.map((rise) => ballOn(foot, rise, stage.front, pole, "front-platform")),
        liftedBack(trunk, stage),
      ];
    },
    arms: (_, side) => [palmOn(stage, side, shoulder[0] + stage.front[0] * 0.01, BONES.shoulderHalf, "carriage")],
  };
}

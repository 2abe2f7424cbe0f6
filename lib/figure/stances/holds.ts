/** What hands do by a move's field: the ways to hold it, best first, and the cables that follow. */
import { at, BODY_SIDES, type BodySide, type Cable } from "../body/joints.ts";
import { FIST_OVER_BAR, FLESH } from "../body/lengths.ts";
import { type ArmPlan, shapedArm, type Trunk } from "../body/rig.ts";
import { heightOf, MACHINE, type Surface, surfaceSpan } from "../space/machine.ts";
import { blend, scaled, UP, type Vec } from "../space/vector.ts";
import { ARM_WORDS, type ArmWord, SPARE_ARMS } from "./arm-words.ts";
import { outward, type PoseStage, type Posture } from "./stage.ts";

export const armAs = (trunk: Trunk, side: BodySide, word: ArmWord): ArmPlan => shapedArm(trunk, side, ARM_WORDS[word]);

/** Both arms by words, and what is taken where a body cannot. */
export function armsAs(...words: readonly ArmWord[]): Posture["arms"] {
  return (trunk, side) => [...words, ...SPARE_ARMS].map((word) => armAs(trunk, side, word));
}

/** The surface that a field of hands names; undefined for cables and free hands. */
export function handSurface({ hands }: PoseStage["move"]): Surface | undefined {
  switch (hands) {
    case "front-bars":
    case "back-bars":
    case "front-platform":
    case "back-platform":
    case "carriage":
      return hands;
    default:
      return undefined;
  }
}

/** A flat hand on a level surface. */
export function palmOn(
  stage: PoseStage,
  side: BodySide,
  x: number,
  aside: number,
  surface: Surface,
  fingers = stage.front,
): ArmPlan {
  const [, , z] = outward(stage, side, aside);
  return {
    wrist: [x, heightOf(surface) + FLESH.wrist, z],
    pole: blend([stage.front, -0.6], [outward(stage, side, 1), 1]),
    fingers,
    touch: { joint: "wrist", surface },
  };
}

/** A fist on one of the bars' side loops. */
export function fistOn(side: BodySide, stage: PoseStage, x: number, surface: Surface, pole: Vec): ArmPlan {
  const [, , z] = outward(stage, side, MACHINE.barAside);
  const nearer = Math.abs(z) > 0.01 ? z : side === "left" ? MACHINE.barAside : -MACHINE.barAside;
  return { fist: [x, MACHINE.barTop + FIST_OVER_BAR, nearer], pole, touch: { joint: "hand", surface } };
}

const STEPS = [0.5, 0.3, 0.7, 0.1, 0.9] as const;

/** Everywhere on the surface that hands are to hold, from the nearest to the shoulder on. */
function placesOn(stage: PoseStage, trunk: Trunk, side: BodySide, surface: Surface): ArmPlan[] {
  const [from, to] = surfaceSpan(surface, stage.travel);
  const inset = surface.endsWith("bars") ? 0.02 : 0.1;
  const shoulder = trunk.pairs[side].shoulder;
  const near = Math.min(to - inset, Math.max(from + inset, shoulder[0] + stage.front[0] * 0.2));
  const xs = [near, ...STEPS.map((share) => from + inset + (to - from - 2 * inset) * share)];
  const pole = blend([stage.front, -0.7], [UP, -0.6], [outward(stage, side, 1), 0.9]);
  const aside = Math.abs(shoulder[2]);
  return xs.map((x) =>
    surface.endsWith("bars")
      ? fistOn(side, stage, x, surface, pole)
      : palmOn(stage, side, x, Math.min(0.24, aside || 0.18), surface, fingersOn(stage)),
  );
}

/** Fingers point where the person faces, and lie along the rails for one who faces the side. */
const fingersOn = (stage: PoseStage): Vec => (Math.abs(stage.front[0]) > 0.5 ? stage.front : scaled(stage.front, 1));

/** Hands as the move's field says: a surface where it can be reached, else the arms of the move's word. */
export function handsOf(stage: PoseStage, ...words: readonly ArmWord[]): Posture["arms"] {
  const surface = handSurface(stage.move);
  return (trunk, side) => {
    const idle = stage.move.hands === "one-handle" && side !== stage.worked ? (["hip"] as const) : [];
    const shaped = [...idle, ...words, stage.arms, ...SPARE_ARMS].map((word) => armAs(trunk, side, word));
    return surface ? [...placesOn(stage, trunk, side, surface), ...shaped] : shaped;
  };
}

/** The cables in the hands. Crossed ones come from the pulley of the other side. */
export function handleCables(stage: PoseStage): Cable[] {
  const { hands } = stage.move;
  const held = hands === "one-handle" ? [stage.worked] : holdsBoth(hands) ? BODY_SIDES : [];
  return held.map((side) => ({
    joint: at("hand", side),
    kind: "handle",
    pulley: hands === "one-handle" ? "middle" : pulleyOf(stage, side, hands === "handles-crossed"),
  }));
}

const holdsBoth = (hands: PoseStage["move"]["hands"]) => hands === "handles" || hands === "handles-crossed";

function pulleyOf(stage: PoseStage, side: BodySide, crossed = false): "near" | "far" {
  const z = outward(stage, side, 1)[2] || outward(stage, side, 1)[0];
  return z > 0 !== crossed ? "near" : "far";
}

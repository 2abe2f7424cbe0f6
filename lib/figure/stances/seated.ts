/** Sitting: legs long or bent before the body, or crossed where the person faces the side. */
import { frameFacing } from "../body/joints.ts";
import { BONES, FLESH } from "../body/lengths.ts";
import type { LegPlan } from "../body/rig.ts";
import { MACHINE } from "../space/machine.ts";
import { blend, plus, UP, type Vec } from "../space/vector.ts";
import { deckOf } from "./deck.ts";
import { handleCables, handsOf } from "./holds.ts";
import { bothOnOne } from "./kneeling.ts";
import { facesSide, outward, type PoseStage, type Posture } from "./stage.ts";

const SEAT = FLESH.back * 0.95;

export function seated(stage: PoseStage): Posture {
  return facesSide(stage.facing) ? crossLegged(stage) : legsBefore(stage);
}

function crossLegged(stage: PoseStage): Posture {
  const deck = deckOf(stage);
  const k = stage.facing === "left" ? 1 : -1;
  const turns = stage.move.pattern === "rotation";
  const lateral = stage.move.pattern === "lateral" && stage.end;
  const at: Vec = [deck.place(0.65), deck.top + SEAT, -stage.front[2] * 0.06];
  return {
    trunk: {
      from: "pelvis",
      at,
      frame: frameFacing(stage.front),
      turn: turns ? (stage.end ? -30 : 30) * k : 0,
      aside: lateral ? 24 * k : 0,
    },
    legs: (_, side) => {
      const out = outward(stage, side, 1);
      return [
        {
          thigh: blend([stage.front, 0.62], [UP, 0.03], [out, 0.78]),
          shank: blend([stage.front, 0.16], [UP, -0.13], [out, -1]),
          foot: { along: blend([stage.front, 1.2], [out, -0.8]), up: UP },
        },
        ...longLegs(stage, at, deck.top, 0.77),
      ];
    },
    arms: turns ? bothOnOne(stage, k) : handsOf(stage),
    rests: [{ joint: "pelvis", surface: deck.surface }],
    cables: handleCables(turns ? { ...stage, worked: stage.facing === "left" ? "left" : "right" } : stage),
  };
}

function legsBefore(stage: PoseStage): Posture {
  const deck = deckOf(stage);
  const leans = stage.move.pattern === "flexion" || stage.move.pattern === "extension";
  const pitch = leans && stage.end ? -32 : stage.move.pattern === "pull" && stage.end ? -4 : 0;
  const onPlatform = stage.move.feet === "front-platform";
  const at: Vec = [onPlatform ? 0.62 + stage.travel + stage.shift : deck.place(0.88), deck.top + SEAT, 0];
  return {
    trunk: {
      from: "pelvis",
      at,
      frame: frameFacing(stage.front, pitch),
      bend: leans ? (stage.end ? 24 : 4) : 0,
      nod: leans && stage.end ? 10 : 0,
    },
    legs: (_, side) => [
      ...(onPlatform ? [heelsOnPlatform(stage, outward(stage, side, BONES.hipHalf))] : []),
      ...longLegs(stage, at, deck.top, leans ? 0.66 : 0.77, outward(stage, side, BONES.hipHalf), leans),
    ],
    arms: handsOf(stage),
    rests: [{ joint: "pelvis", surface: deck.surface }],
    cables: handleCables(stage),
  };
}

/** Heels on what the person sits on, so far before the hip; nearer where the legs would not do. */
function longLegs(
  stage: PoseStage,
  hip: Vec,
  top: number,
  far: number,
  aside: Vec = [0, 0, 0],
  flat = false,
): LegPlan[] {
  const surface = stage.move.station === "floor" ? ("floor" as const) : ("carriage" as const);
  const pole = blend([UP, 1], [stage.front, 0.2]);
  return [far, far - 0.08, far - 0.16].map((ahead) => {
    const heel = plus(plus([hip[0], top, hip[2]], stage.front, ahead - BONES.heel), aside);
    return heelOn(heel, flat ? 10 : 62, stage.front, pole, surface);
  });
}

/** The heel on a surface, the foot raised from it by `lift` degrees. */
export function heelOn(
  heel: Vec,
  lift: number,
  front: Vec,
  pole: Vec,
  surface: "carriage" | "floor" | "front-platform",
): LegPlan {
  const r = (lift * Math.PI) / 180;
  const along = plus([front[0] * Math.cos(r), 0, front[2] * Math.cos(r)], UP, Math.sin(r));
  const up = plus([-front[0] * Math.sin(r), 0, -front[2] * Math.sin(r)], UP, Math.cos(r));
  const ankle = plus(plus(heel, along, BONES.heel), up, BONES.ankle);
  return { ankle, pole, foot: { along, up }, touch: { joint: "heel", surface } };
}

function heelsOnPlatform(stage: PoseStage, aside: Vec): LegPlan {
  const heel = plus([MACHINE.frontPlatform[1] - 0.03, MACHINE.platformTop, 0], aside);
  return heelOn(heel, 50, stage.front, blend([UP, 1], [stage.front, 0.2]), "front-platform");
}

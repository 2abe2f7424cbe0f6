/** Lying face down, the head towards where the person faces. */
import { frameFacing, within } from "../body/joints.ts";
import { FLESH } from "../body/lengths.ts";
import { plus, scaled, UP, type Vec } from "../space/vector.ts";
import { deckOf } from "./deck.ts";
import { armsAs, handleCables, handSurface, handsOf } from "./holds.ts";
import { holdsCable } from "./scheme.ts";
import type { PoseStage, Posture } from "./stage.ts";

export function prone(stage: PoseStage): Posture {
  const deck = deckOf(stage);
  const up = stage.end && (stage.move.pattern === "extension" || stage.move.pattern === "pull");
  const hip: Vec = [deck.place(0.54), deck.top + FLESH.back, 0];
  return {
    trunk: {
      from: "pelvis",
      at: hip,
      frame: frameFacing(stage.front, up ? 84 : 90),
      bend: up ? -28 : -2,
      nod: -6,
    },
    legs: (trunk, side) => {
      const back = plus(scaled(trunk.pelvis.up, -1), trunk.pelvis.front, up ? -0.1 : -0.02);
      const line = plus(back, within(trunk.pelvis, [0, 0, 0.05], side));
      const level = plus(line, UP, up ? 0 : 0.01);
      return [{ thigh: level, shank: level, foot: { point: 50, toes: scaled(stage.front, -1) } }];
    },
    arms: proneArms(stage, up),
    rests: [{ joint: "pelvis", surface: deck.surface }],
    cables: handleCables(stage),
  };
}

function proneArms(stage: PoseStage, up: boolean): Posture["arms"] {
  if (handSurface(stage.move)) return handsOf(stage);
  const forward = { upper: [0.12, 0.98, 0.1], fore: [0.06, 0.99, 0] } as const;
  return (trunk, side) => {
    const spare = armsAs("overhead", "behind")(trunk, side);
    if (up && (holdsCable(stage.move) || stage.move.hands === "free")) return armsAs("behind", "overhead")(trunk, side);
    const local = (d: Vec) => within(trunk.chest, d, side);
    return [{ upper: local(forward.upper), fore: local(forward.fore) }, ...spare];
  };
}

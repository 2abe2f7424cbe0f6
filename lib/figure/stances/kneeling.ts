/** Kneeling upright: on the carriage or the floor, facing along the rails or to a side. */
import { type BodyFrame, type BodySide, frameFacing } from "../body/joints.ts";
import { BONES, FIST_OVER_BAR, FLESH, REACH } from "../body/lengths.ts";
import type { LegPlan, TrunkPlan } from "../body/rig.ts";
import { MACHINE } from "../space/machine.ts";
import { blend, cosOf, plus, scaled, sinOf, UP, type Vec } from "../space/vector.ts";
import { type Deck, deckOf } from "./deck.ts";
import { armAs, armsAs, fistOn, handleCables, handSurface, handsOf } from "./holds.ts";
import { kneelingPlank } from "./plank.ts";
import { bendsBack, holdsCable } from "./scheme.ts";
import { facesSide, outward, type PoseStage, type Posture } from "./stage.ts";

interface Kneel {
  readonly x: number;
  readonly z?: number;
  /** How far thighs and trunk lean forward, degrees. */
  readonly thigh?: number;
  readonly pitch?: number;
  readonly rest?: Omit<TrunkPlan, "from" | "at" | "frame">;
}

function kneel(stage: PoseStage, deck: Deck, how: Kneel): Pick<Posture, "trunk" | "legs"> {
  const thigh = how.thigh ?? 0;
  const up: Vec = plus(scaled(UP, cosOf(thigh)), stage.front, sinOf(thigh));
  const knee: Vec = [how.x, deck.top + FLESH.knee, how.z ?? 0];
  const frame: BodyFrame = frameFacing(stage.front, how.pitch ?? 0);
  return {
    trunk: { from: "pelvis", at: plus(knee, up, BONES.thigh), frame, ...how.rest },
    legs: () => [shinsDown(stage, deck, up)],
  };
}

function shinsDown(stage: PoseStage, deck: Deck, up: Vec): LegPlan {
  const back = scaled(stage.front, -1);
  return {
    thigh: scaled(up, -1),
    shank: blend([back, 1], [UP, -0.02]),
    foot: { point: 50, toes: back },
    touch: { joint: "knee", surface: deck.surface },
  };
}

export function kneeling(stage: PoseStage): Posture {
  const surface = handSurface(stage.move);
  if (surface === "front-platform") return kneelingPlank(stage);
  if (facesSide(stage.facing)) return sideways(stage);
  if (surface === "front-bars" && stage.facing === "front") return atTheBars(stage);
  return alongRails(stage);
}

/** Presses the carriage away from the bars: the arms are long at the end. */
function atTheBars(stage: PoseStage): Posture {
  const thigh = 8;
  const pitch = 16;
  const bar = MACHINE.frontBars[1] - 0.03;
  const top = MACHINE.carriageTop + FLESH.knee + BONES.thigh * cosOf(thigh) + BONES.trunk * cosOf(pitch);
  const down = top - MACHINE.barTop - FIST_OVER_BAR;
  const forward = BONES.thigh * sinOf(thigh) + BONES.trunk * sinOf(pitch);
  const aside = MACHINE.barAside - BONES.shoulderHalf;
  const away = Math.sqrt((REACH * 0.985) ** 2 - down ** 2 - aside ** 2);
  const x = bar + away + forward - Math.max(...stage.travels) + stage.travel;
  return {
    ...kneel(stage, deckOf(stage), { x, thigh, pitch, rest: { nod: -8 } }),
    arms: (trunk, side) => {
      const pole = blend([stage.front, -0.7], [UP, -0.6], [outward(stage, side, 1), 0.9]);
      return [fistOn(side, stage, bar, "front-bars", pole), armAs(trunk, side, "long")];
    },
  };
}

/** How far the trunk leans forward as the arms work. */
function pitchFor(stage: PoseStage): number {
  if (stage.arms === "kick-long" || stage.arms === "kick-bent") return 12;
  if (!stage.end) return stage.move.pattern === "hinge" ? 4 : 0;
  if (stage.move.pattern === "hinge" || stage.move.pattern === "flexion") return 32;
  if (stage.facing === "front") return 4;
  return stage.move.pattern === "pull" ? -3 : 0;
}

function alongRails(stage: PoseStage): Posture {
  const deck = deckOf(stage);
  const leans = stage.move.pattern === "extension" && stage.end;
  const lean = leans && !holdsCable(stage.move) ? -28 : 0;
  const hinge = stage.move.pattern === "hinge" && stage.end ? -14 : 0;
  const how = { x: deck.place(0.6), thigh: lean || hinge, pitch: lean || pitchFor(stage) };
  const bend = stage.move.pattern === "flexion" && stage.end ? 24 : leans && holdsCable(stage.move) ? -14 : 0;
  const level = blend([stage.front, 1], [UP, leans ? -0.1 : 0]);
  const free = stage.move.hands === "free" && stage.move.pattern === "extension";
  return {
    ...kneel(stage, deck, { ...how, rest: { bend, nod: lean < 0 ? 14 : bend * 0.4 } }),
    arms: free ? () => [{ upper: level, fore: level }] : handsOf(stage),
    cables: handleCables(stage),
  };
}

/** Across the rails: turning, bending and pulling to the side of the cables, which come from the back. */
function sideways(stage: PoseStage): Posture {
  const deck = deckOf(stage);
  const cableSide: BodySide = stage.facing === "left" ? "left" : "right";
  const far: BodySide = cableSide === "left" ? "right" : "left";
  const k = cableSide === "left" ? 1 : -1;
  const lateral = stage.move.pattern === "lateral";
  const turns = stage.move.pattern === "rotation";
  const rest = {
    turn: turns ? (stage.end ? -30 : 30) * k : 0,
    aside: lateral ? (stage.end ? 26 : -4) * k : 0,
    bend: bendsBack(stage.move) && stage.end ? -4 : 0,
  };
  return {
    ...kneel(stage, deck, { x: deck.place(0.65), z: stage.front[2] * 0.11, rest }),
    arms: turns ? bothOnOne(stage, k) : lateral ? bendArms(cableSide) : pullArms(stage, far),
    cables: handleCables({ ...stage, worked: turns || lateral ? cableSide : far }),
  };
}

/** Both hands on one handle, further round than the chest. */
export function bothOnOne(stage: PoseStage, towardsCable: number): Posture["arms"] {
  const round = (stage.end ? -1 : 1) * towardsCable * 0.34;
  return (trunk, side) => {
    const plan = armAs(trunk, side, stage.arms);
    if (!("upper" in plan) || stage.arms !== "both") return [plan, ...armsAs("long")(trunk, side)];
    const aside = (direction: Vec) => plus(direction, trunk.chest.left, round);
    return [{ ...plan, upper: aside(plan.upper), fore: aside(plan.fore) }, ...armsAs("long")(trunk, side)];
  };
}

const bendArms =
  (cable: BodySide): Posture["arms"] =>
  (trunk, side) =>
    armsAs(side === cable ? "down" : "behind-head")(trunk, side);

function pullArms(stage: PoseStage, far: BodySide): Posture["arms"] {
  const both = stage.move.hands === "handles" || stage.move.hands === "handles-crossed";
  const surface = handSurface(stage.move);
  if (surface) return handsOf(stage);
  return (trunk, side) => armsAs(side === far || both ? stage.arms : "hip")(trunk, side);
}

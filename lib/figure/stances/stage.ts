/** What a stance is told of the move, and what it answers. */
import type { Facing, Move } from "#lib/plan/schema.ts";
import type { BodySide, Cable, Joint } from "../body/joints.ts";
import { BONES } from "../body/lengths.ts";
import type { ArmPlan, LegPlan, Trunk, TrunkPlan } from "../body/rig.ts";
import type { Surface } from "../space/machine.ts";
import { cosOf, plus, scaled, sinOf, UP, type Vec } from "../space/vector.ts";
import type { ArmWord } from "./arm-words.ts";

/** The fields of a move that a figure is drawn from. A move of the library is one. */
export type FigureMove = Pick<Move, "station" | "position" | "facing" | "hands" | "feet" | "pattern"> &
  Partial<
    Pick<
      Move,
      | "muscles"
      | "spine"
      | "sides"
      | "tempo"
      | "travelMm"
      | "handsShare"
      | "cautions"
      | "springs"
      | "resistance"
      | "figure"
    >
  >;

export interface PoseStage {
  readonly move: FigureMove;
  readonly facing: Facing;
  readonly end: boolean;
  /** Where the carriage is, metres from home; and at the start and the end of the motion. */
  readonly travel: number;
  readonly travels: readonly [start: number, end: number];
  /** Moved along the carriage by so much, where the place on it is free. */
  readonly shift: number;
  /** 0 at first, then 1, 2, ... while no body fits: stances may bend further. */
  readonly attempt: number;
  /** The direction that the person faces, and their left. */
  readonly front: Vec;
  readonly left: Vec;
  /** The arm or leg that works where one does. */
  readonly worked: BodySide;
  /** How the arms are held in this phase, by the words of `arm-words.ts`. */
  readonly arms: ArmWord;
  readonly onForearms: boolean;
}

type Options<T> = (trunk: Trunk, side: BodySide) => readonly T[];

export interface Posture {
  readonly trunk: TrunkPlan;
  /** Ways to hold each leg and arm, the first one that a body can take being taken. */
  readonly legs: Options<LegPlan>;
  readonly arms: Options<ArmPlan>;
  /** What of the trunk lies on something. */
  readonly rests?: readonly { readonly joint: Joint; readonly surface: Surface }[];
  readonly cables?: readonly Cable[];
}

export type PositionStance = (stage: PoseStage) => Posture;

/** A distance to the outer side of that half of the body, along the person's left. */
export const outward = (stage: PoseStage, side: BodySide, by: number): Vec =>
  scaled(stage.left, side === "left" ? by : -by);

export const facesSide = (facing: Facing): boolean => facing === "left" || facing === "right";

/** A leg with the whole sole on a level surface, the ankle over `x`. */
export function soleOn(
  stage: PoseStage,
  [x, y, z]: Vec,
  pole: Vec,
  along: Vec = stage.front,
  surface?: Surface,
): LegPlan {
  const foot = { along, up: UP };
  return { ankle: [x, y + BONES.ankle, z], pole, foot, touch: surface && { joint: "ball", surface } };
}

/** A leg on the ball of the foot, the heel raised by `rise` degrees, the toes flat. */
export function ballOn(ball: Vec, rise: number, along: Vec, pole: Vec, surface: Surface): LegPlan {
  const down = plus(scaled(along, cosOf(rise)), UP, -sinOf(rise));
  const up = plus(scaled(UP, cosOf(rise)), along, sinOf(rise));
  const ankle = plus(plus(ball, down, -BONES.ball), up, BONES.ankle);
  return { ankle, pole, foot: { along: down, up, toes: along }, touch: { joint: "ball", surface } };
}

/** The same with the heel lower or higher where the ankle needs it. */
export const ballOnAny = (ball: Vec, rises: readonly number[], along: Vec, pole: Vec, surface: Surface): LegPlan[] =>
  rises.map((rise) => ballOn(ball, rise, along, pole, surface));

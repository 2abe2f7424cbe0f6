/** Puts a body together: the trunk where a stance wants it, then each leg and arm by what it reaches for or how it is held. */
import { twoBones } from "../space/ik.ts";
import type { Surface } from "../space/machine.ts";
import { across, blend, cosOf, crossOf, minus, plus, scaled, sinOf, unit, type Vec } from "../space/vector.ts";
import { at, BODY_SIDES, type BodyFrame, type BodySide, type Joint, type PairedJoint, spin, within } from "./joints.ts";
import { BONES, REACH } from "./lengths.ts";

export interface TrunkPlan {
  /** The joint that is placed, and where. */
  readonly from: "pelvis" | "chest";
  readonly at: Vec;
  /** How the pelvis is turned in space. */
  readonly frame: BodyFrame;
  /** The chest on the pelvis, degrees: forward, to the right, turned to the left. */
  readonly bend?: number;
  readonly aside?: number;
  readonly turn?: number;
  /** The head on the chest, degrees: forward, to the right. */
  readonly nod?: number;
  readonly nodAside?: number;
}

export interface Trunk {
  readonly joints: Readonly<Record<"pelvis" | "waist" | "chest" | "head", Vec>>;
  readonly pairs: Readonly<Record<BodySide, { readonly hip: Vec; readonly shoulder: Vec }>>;
  readonly pelvis: BodyFrame;
  readonly chest: BodyFrame;
  readonly head: BodyFrame;
}

/** What a limb is meant to touch: this joint of it, that surface. */
export interface Touch {
  readonly joint: PairedJoint;
  readonly surface: Surface;
}

/** A foot by its own directions in space, or pointed by so many degrees from a right angle to the shank. */
type FootPlan =
  | { readonly along: Vec; readonly up: Vec; readonly toes?: Vec }
  | { readonly point: number; readonly toes?: Vec };

interface Limb {
  readonly touch?: Touch | undefined;
}
export type LegPlan = Limb & { readonly foot: FootPlan } & (
    | { readonly ankle: Vec; readonly pole: Vec }
    | { readonly thigh: Vec; readonly shank: Vec }
  );
export type ArmPlan = Limb &
  (
    | { readonly fist: Vec; readonly pole: Vec }
    | { readonly wrist: Vec; readonly pole: Vec; readonly fingers: Vec }
    | { readonly upper: Vec; readonly fore: Vec }
  );

/** The joints of one leg or arm, and by how much it misses what it reaches for. */
export interface BuiltLimb {
  readonly joints: Readonly<Partial<Record<Joint, Vec>>>;
  readonly short: number;
}

export function trunkOf(plan: TrunkPlan): Trunk {
  const pelvis = plan.frame;
  let chest = spin(pelvis, pelvis.left, plan.bend ?? 0);
  chest = spin(chest, chest.front, plan.aside ?? 0);
  chest = spin(chest, chest.up, plan.turn ?? 0);
  const head = spin(spin(chest, chest.left, plan.nod ?? 0), chest.front, plan.nodAside ?? 0);
  const half = BONES.trunk / 2;
  const waist = scaled(pelvis.up, half);
  const top = plus(waist, chest.up, half);
  const move = plan.from === "pelvis" ? plan.at : minus(plan.at, top);
  const joints = {
    pelvis: move,
    waist: plus(waist, move),
    chest: plus(top, move),
    head: plus(plus(top, move), head.up, BONES.neck),
  };
  const pair = (sign: number) => ({
    hip: plus(joints.pelvis, pelvis.left, BONES.hipHalf * sign),
    shoulder: plus(joints.chest, chest.left, BONES.shoulderHalf * sign),
  });
  return { joints, pairs: { left: pair(1), right: pair(-1) }, pelvis, chest, head };
}

export function trunkJoints(trunk: Trunk): Record<string, Vec> {
  const pairs = BODY_SIDES.flatMap((side) => [
    [at("hip", side), trunk.pairs[side].hip] as const,
    [at("shoulder", side), trunk.pairs[side].shoulder] as const,
  ]);
  return { ...trunk.joints, ...Object.fromEntries(pairs) };
}

export function legOf(trunk: Trunk, side: BodySide, plan: LegPlan): BuiltLimb {
  const { hip } = trunk.pairs[side];
  const bones = "ankle" in plan ? twoBones(hip, plan.ankle, BONES.thigh, BONES.shank, plan.pole) : straight(hip, plan);
  const { middle: knee, end: ankle, short } = bones;
  const foot = footFrame(trunk, plan.foot, unit(minus(ankle, knee)));
  const sole = plus(ankle, foot.up, -BONES.ankle);
  const ball = plus(sole, foot.along, BONES.ball);
  return {
    joints: {
      [at("knee", side)]: knee,
      [at("ankle", side)]: ankle,
      [at("heel", side)]: plus(sole, foot.along, -BONES.heel),
      [at("ball", side)]: ball,
      [at("toe", side)]: plus(ball, unit(foot.toes), BONES.toes),
    },
    short,
  };
}

function straight(hip: Vec, { thigh, shank }: { readonly thigh: Vec; readonly shank: Vec }) {
  const middle = plus(hip, unit(thigh), BONES.thigh);
  return { middle, end: plus(middle, unit(shank), BONES.shank), short: 0 };
}

function footFrame(trunk: Trunk, plan: FootPlan, shank: Vec): { along: Vec; up: Vec; toes: Vec } {
  if ("along" in plan) {
    const along = unit(plan.along);
    return { along, up: unit(plan.up), toes: plan.toes ?? along };
  }
  const aside = unit(across(trunk.pelvis.left, shank));
  const level = crossOf(aside, scaled(shank, -1));
  const along = blend([level, cosOf(plan.point)], [shank, sinOf(plan.point)]);
  return { along, up: blend([shank, -cosOf(plan.point)], [level, sinOf(plan.point)]), toes: plan.toes ?? along };
}

export function armOf(trunk: Trunk, side: BodySide, plan: ArmPlan): BuiltLimb {
  const { shoulder } = trunk.pairs[side];
  const [elbow, wrist, hand, short] = armBones(shoulder, plan);
  return { joints: { [at("elbow", side)]: elbow, [at("wrist", side)]: wrist, [at("hand", side)]: hand }, short };
}

function armBones(shoulder: Vec, plan: ArmPlan): readonly [Vec, Vec, Vec, number] {
  if ("upper" in plan) {
    const elbow = plus(shoulder, unit(plan.upper), BONES.upperArm);
    const fore = unit(plan.fore);
    const wrist = plus(elbow, fore, BONES.forearm);
    return [elbow, wrist, plus(wrist, fore, BONES.fist), 0];
  }
  if ("fist" in plan) {
    const bones = twoBones(shoulder, plan.fist, BONES.upperArm, BONES.forearm + BONES.fist, plan.pole);
    const fore = unit(minus(bones.end, bones.middle));
    return [bones.middle, plus(bones.middle, fore, BONES.forearm), bones.end, bones.short];
  }
  const bones = twoBones(shoulder, plan.wrist, BONES.upperArm, BONES.forearm, plan.pole);
  return [bones.middle, bones.end, plus(bones.end, unit(plan.fingers), BONES.palm), bones.short];
}

/** An arm held in the directions of the chest: a fist so far off the shoulder in arm's lengths, or both bones' directions. */
export type ArmShape = { readonly hand: Vec; readonly pole: Vec } | { readonly upper: Vec; readonly fore: Vec };

export function shapedArm(trunk: Trunk, side: BodySide, shape: ArmShape): ArmPlan {
  const local = (direction: Vec) => within(trunk.chest, direction, side);
  if ("upper" in shape) return { upper: local(shape.upper), fore: local(shape.fore) };
  return { fist: plus(trunk.pairs[side].shoulder, local(shape.hand), REACH), pole: local(shape.pole) };
}

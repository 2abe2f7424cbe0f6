/**
 * From a stance to a body: each limb takes the first way to hold it that its joints, the machine and the floor allow; where
 * none fits, the one that strains least. Start and end share their place on the carriage.
 */

import { at, BODY_SIDES, type Body, type BodySide, type Cable, type Contact, type Joint } from "./body/joints.ts";
import { FIST_OVER_BAR, FLESH } from "./body/lengths.ts";
import { armAngles, legAngles, strainOf } from "./body/measure.ts";
import { armOf, type BuiltLimb, legOf, type Touch, type Trunk, trunkJoints, trunkOf } from "./body/rig.ts";
import { groundAt, heightOf, type Surface, surfaceSpan } from "./space/machine.ts";
import { mixed, type Vec } from "./space/vector.ts";
import type { Posture } from "./stances/stage.ts";

export interface SolvedBody extends Body {
  readonly cables: readonly Cable[];
  /** How far the body is from what a body can do; 0 where everything holds. */
  readonly strain: number;
  /** Hands and feet that came to hold nothing where they were meant to. */
  readonly missed: number;
}

/** A contact holds within this, metres. */
const CONTACT_WITHIN = 0.005;
const EDGE = 0.012;
/** Strain of one millimetre short of a goal, or inside the machine. */
const PER_METRE = 1000;

export function solveBody(posture: Posture, travel: number): SolvedBody {
  const trunk = trunkOf(posture.trunk);
  const joints: Record<string, Vec> = trunkJoints(trunk);
  const contacts: Contact[] = [];
  let missed = 0;
  let strain = inside(
    joints,
    [
      ["pelvis", "waist"],
      ["waist", "chest"],
      ["chest", "head"],
    ],
    travel,
  );
  for (const side of BODY_SIDES) {
    const legs = posture.legs(trunk, side);
    const arms = posture.arms(trunk, side);
    const leg = best(legs, (plan) => judged(trunk, side, "leg", legOf(trunk, side, plan), plan.touch, travel));
    const arm = best(arms, (plan) => judged(trunk, side, "arm", armOf(trunk, side, plan), plan.touch, travel));
    for (const limb of [leg, arm]) {
      if (!limb) continue;
      Object.assign(joints, limb.joints);
      contacts.push(...limb.contacts);
      strain += limb.strain;
      missed += limb.missed;
    }
  }
  for (const { joint, surface } of posture.rests ?? []) {
    const place = joints[joint];
    if (place && rests(place, joint, surface, travel)) contacts.push({ joint, surface });
  }
  return {
    joints: joints as Body["joints"],
    frames: { pelvis: trunk.pelvis, chest: trunk.chest, head: trunk.head },
    contacts,
    cables: posture.cables ?? [],
    strain,
    missed,
  };
}

interface JudgedLimb {
  /** 1 where the limb was meant to hold something and does not. */
  readonly missed: number;
  readonly joints: BuiltLimb["joints"];
  readonly contacts: readonly Contact[];
  readonly strain: number;
}

/** The first plan that fits, else the one that strains least. */
function best<T extends { readonly touch?: Touch | undefined }>(
  plans: readonly T[],
  judge: (plan: T) => JudgedLimb,
): JudgedLimb | undefined {
  const meant = plans[0]?.touch !== undefined;
  let least: JudgedLimb | undefined;
  for (const plan of plans) {
    const limb = judge(plan);
    if (least === undefined || limb.strain < least.strain) least = limb;
    if (limb.strain < 1e-6) break;
  }
  return least && { ...least, missed: meant && least.contacts.length === 0 ? 1 : 0 };
}

function judged(
  trunk: Trunk,
  side: BodySide,
  kind: "leg" | "arm",
  limb: BuiltLimb,
  touch: Touch | undefined,
  travel: number,
): JudgedLimb {
  const root = kind === "leg" ? trunk.pairs[side].hip : trunk.pairs[side].shoulder;
  const names = kind === "leg" ? LEG_CHAIN : ARM_CHAIN;
  const all: Record<string, Vec> = { ...limb.joints, [at(names[0], side)]: root };
  const pairs = names.slice(1).map((name, i) => [at(names[i] ?? name, side), at(name, side)] as const);
  const angles = kind === "leg" ? legAngles(trunk, limb.joints, side) : armAngles(trunk, limb.joints, side);
  const met = touch ? touches(all[at(touch.joint, side)], touch, travel) : true;
  const missed = limb.short > CONTACT_WITHIN || !met ? 1 + limb.short * PER_METRE : 0;
  return {
    joints: limb.joints,
    contacts: touch && met ? [{ joint: at(touch.joint, side), surface: touch.surface }] : [],
    missed: 0,
    strain: strainOf(angles) + missed + inside(all, pairs, travel),
  };
}

const LEG_CHAIN = ["hip", "knee", "ankle", "heel", "ball", "toe"] as const;
const ARM_CHAIN = ["shoulder", "elbow", "wrist", "hand"] as const;

/** How high over a surface the middle of a joint is that lies on it. */
function fleshUnder(joint: string, surface: Surface): number {
  if (surface.endsWith("bars")) return FIST_OVER_BAR;
  if (joint.startsWith("knee")) return FLESH.knee;
  if (joint.startsWith("wrist")) return FLESH.wrist;
  if (joint.startsWith("elbow")) return FLESH.elbow;
  return joint === "pelvis" || joint === "chest" ? FLESH.back : 0;
}

function touches(place: Vec | undefined, { joint, surface }: Touch, travel: number): boolean {
  if (!place) return false;
  const [from, to] = surfaceSpan(surface, travel);
  if (place[0] < from - EDGE || place[0] > to + EDGE) return false;
  // The side of a stacked foot lies on the surface, the ankle half a foot's breadth above.
  if (joint === "ankle") return place[1] - heightOf(surface) < 0.06;
  return Math.abs(place[1] - heightOf(surface) - fleshUnder(joint, surface)) <= CONTACT_WITHIN;
}

const rests = (place: Vec, joint: Joint, surface: Surface, travel: number): boolean => {
  const [from, to] = surfaceSpan(surface, travel);
  return (
    place[0] >= from - EDGE &&
    place[0] <= to + EDGE &&
    place[1] - heightOf(surface) < (joint.startsWith("hip") ? 0.1 : 0.11)
  );
};

/** A joint may lie this deep in the flesh of what it presses on, and the middle of a limb at an edge. */
const DEEP = 0.012;

/** How far joints and the lines between them lie under what is below them, as strain. */
function inside(
  joints: Readonly<Record<string, Vec>>,
  pairs: readonly (readonly [string, string])[],
  travel: number,
): number {
  let deep = 0;
  for (const [a, b] of pairs) {
    const [from, to] = [joints[a], joints[b]];
    if (!from || !to) continue;
    for (let share = 0; share <= 1; share += 0.125) {
      const p = mixed(from, to, share);
      deep = Math.max(deep, groundAt(p[0], p[2], travel) - DEEP - p[1]);
    }
  }
  return Math.max(0, deep) * PER_METRE;
}

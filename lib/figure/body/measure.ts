/** The angles of a body's joints, degrees, as `ranges.ts` counts them. An angle that its plane does not define is left out. */
import { angleBetween, degreesOf, dotOf, minus, unit, type Vec } from "../space/vector.ts";
import { at, type BodyFrame, type BodySide, type Joint } from "./joints.ts";
import { RANGES, type RangeName } from "./ranges.ts";
import type { Trunk } from "./rig.ts";

export type Angles = Readonly<Partial<Record<RangeName, number>>>;
type Found = Readonly<Partial<Record<Joint, Vec>>>;

/** In the plane that a frame's front and up span, from down to the front. */
const pitchIn = (frame: BodyFrame, d: Vec): number => degreesOf(Math.atan2(dotOf(d, frame.front), -dotOf(d, frame.up)));
/** How much of a direction lies in that plane. */
const shareIn = (frame: BodyFrame, d: Vec): number => Math.hypot(dotOf(d, frame.front), dotOf(d, frame.up));

function bone(joints: Found, from: Joint, to: Joint): Vec {
  const [a, b] = [joints[from], joints[to]];
  return a && b ? unit(minus(b, a)) : [0, 0, 0];
}

export function legAngles(trunk: Trunk, joints: Found, side: BodySide): Angles {
  const all = { ...joints, [at("hip", side)]: trunk.pairs[side].hip };
  const thigh = bone(all, at("hip", side), at("knee", side));
  const shank = bone(all, at("knee", side), at("ankle", side));
  const sole = bone(all, at("heel", side), at("ball", side));
  const out = dotOf(thigh, trunk.pelvis.left) * (side === "left" ? 1 : -1);
  const upright = dotOf(thigh, trunk.pelvis.up) < -0.5;
  return {
    ...(shareIn(trunk.pelvis, thigh) > 0.5 ? { hip: pitchIn(trunk.pelvis, thigh) } : {}),
    ...(upright ? { hipAside: degreesOf(Math.asin(out)) } : {}),
    knee: kneeBend(trunk, thigh, shank),
    ankle: 90 - angleBetween(sole, shank),
  };
}

/** Above 0 when the shank turns to the back of the leg; the side counts only where the leg bends in the body's own plane. */
function kneeBend(trunk: Trunk, thigh: Vec, shank: Vec): number {
  const bend = angleBetween(thigh, shank);
  const planar = Math.min(shareIn(trunk.pelvis, thigh), shareIn(trunk.pelvis, shank)) > 0.75;
  const turn = pitchIn(trunk.pelvis, thigh) - pitchIn(trunk.pelvis, shank);
  const forwards = ((turn + 540) % 360) - 180 < -4;
  return planar && bend > 8 && forwards ? -bend : bend;
}

export function armAngles(trunk: Trunk, joints: Found, side: BodySide): Angles {
  const all = { ...joints, [at("shoulder", side)]: trunk.pairs[side].shoulder };
  const upper = bone(all, at("shoulder", side), at("elbow", side));
  const fore = bone(all, at("elbow", side), at("wrist", side));
  const pitch = pitchIn(trunk.chest, upper);
  const raised = pitch < -90 ? pitch + 360 : pitch;
  return {
    ...(shareIn(trunk.chest, upper) > 0.5 ? { shoulder: raised } : {}),
    elbow: angleBetween(upper, fore),
  };
}

/** By how many degrees angles leave their ranges, added up. */
export function strainOf(angles: Angles): number {
  return Object.entries(angles).reduce((sum, [name, angle]) => {
    const [least, most] = RANGES[name as RangeName];
    return sum + Math.max(0, least - angle - 0.5, angle - most - 0.5);
  }, 0);
}

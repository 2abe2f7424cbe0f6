/** Inverse kinematics: where the middle joint of two bones is when both ends are known. Closed forms, no iteration. */
import { across, crossOf, lengthOf, minus, plus, unit, type Vec } from "./vector.ts";

/** Never quite straight, so that the side to which the joint bends stays known. */
const STRAIGHT = 0.9995;

export interface TwoBones {
  readonly middle: Vec;
  readonly end: Vec;
  /** By how much the goal lies beyond the bones' reach, metres. */
  readonly short: number;
}

/** From `root` to `goal` by bones of lengths `first` and `second`; the middle joint lies to the side of `pole`. */
export function twoBones(root: Vec, goal: Vec, first: number, second: number, pole: Vec): TwoBones {
  const way = minus(goal, root);
  const most = (first + second) * STRAIGHT;
  const far = Math.max(Math.min(lengthOf(way), most), Math.abs(first - second) + 0.001);
  const along = unit(way);
  const cos = (first * first + far * far - second * second) / (2 * first * far);
  const sin = Math.sqrt(Math.max(0, 1 - cos * cos));
  const aside = across(pole, along);
  const out = lengthOf(aside) < 1e-6 ? unit(crossOf(along, [0, 0, 1])) : unit(aside);
  return {
    middle: plus(plus(root, along, first * cos), out, first * sin),
    end: plus(root, along, far),
    short: Math.max(0, lengthOf(way) - most),
  };
}

/**
 * Where two circles in the plane of the rails meet, the upper point of the two (or the lower one). Circles too far apart
 * give the point between them.
 */
export function meeting(p: Vec, r: number, q: Vec, s: number, which: "upper" | "lower" = "upper"): Vec {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const d = Math.hypot(dx, dy) || 1e-9;
  const apart = Math.max(Math.min(d, (r + s) * STRAIGHT), Math.abs(r - s) + 1e-6);
  const a = (r * r - s * s + apart * apart) / (2 * apart);
  const h = Math.sqrt(Math.max(0, r * r - a * a));
  const [ux, uy] = [dx / d, dy / d];
  const one: Vec = [p[0] + ux * a - uy * h, p[1] + uy * a + ux * h, 0];
  const two: Vec = [p[0] + ux * a + uy * h, p[1] + uy * a - ux * h, 0];
  return one[1] > two[1] === (which === "upper") ? one : two;
}

/** The side opposite an angle of 180 - `bend` degrees between two sides: how long a bent chain is from end to end. */
export const chord = (a: number, b: number, bend: number): number =>
  Math.sqrt(a * a + b * b + 2 * a * b * Math.cos((bend * Math.PI) / 180));

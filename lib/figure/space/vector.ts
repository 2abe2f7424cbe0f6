/** Points and directions in three dimensions. x runs along the rails from the front to the back, y up, z to the viewer. Metres. */
export type Vec = readonly [x: number, y: number, z: number];

export const UP: Vec = [0, 1, 0];

/** `a` and `times` times `b`. */
export const plus = (a: Vec, b: Vec, times = 1): Vec => [a[0] + b[0] * times, a[1] + b[1] * times, a[2] + b[2] * times];
export const minus = (a: Vec, b: Vec): Vec => plus(a, b, -1);
export const scaled = (a: Vec, by: number): Vec => [a[0] * by, a[1] * by, a[2] * by];
export const dotOf = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const crossOf = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const lengthOf = (a: Vec): number => Math.hypot(a[0], a[1], a[2]);
/** The direction of `a`, one long. The zero vector stays what it is. */
export const unit = (a: Vec): Vec => scaled(a, 1 / (lengthOf(a) || 1));
/** The point a share of the way from `a` to `b`. */
export const mixed = (a: Vec, b: Vec, share: number): Vec => plus(scaled(a, 1 - share), b, share);
/** Several directions added up, each times its number, one long. */
export const blend = (...parts: readonly (readonly [Vec, number])[]): Vec =>
  unit(parts.reduce<Vec>((sum, [direction, times]) => plus(sum, direction, times), [0, 0, 0]));

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
export const degreesOf = (angle: number): number => (angle * 180) / Math.PI;
export const cosOf = (degrees: number): number => Math.cos(radians(degrees));
export const sinOf = (degrees: number): number => Math.sin(radians(degrees));

/** `a` turned about `axis`, which is one long, by the right-hand rule. */
export function turned(a: Vec, axis: Vec, degrees: number): Vec {
  const cos = cosOf(degrees);
  return plus(plus(scaled(a, cos), crossOf(axis, a), sinOf(degrees)), axis, dotOf(axis, a) * (1 - cos));
}

/** The angle between two directions, 0 to 180 degrees. */
export const angleBetween = (a: Vec, b: Vec): number =>
  degreesOf(Math.acos(Math.max(-1, Math.min(1, dotOf(unit(a), unit(b))))));

/** `a` without what it has of `along`, which is one long. */
export const across = (a: Vec, along: Vec): Vec => plus(a, along, -dotOf(a, along));

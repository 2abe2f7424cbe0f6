/**
 * Smooth lines through points. A point is where the line passes; a corner is a point at which it turns. Units: thousandths of
 * the stature, x from the middle line, y down from the crown.
 */
export type MapPoint = readonly [x: number, y: number];
/** A point of a drawn line; `"corner"` where the line is not to be smooth. */
export type Knot = readonly [x: number, y: number, corner?: "corner"];
/** From `from` to `to`, with its two handles. */
export interface Bend {
  readonly from: MapPoint;
  readonly out: MapPoint;
  readonly into: MapPoint;
  readonly to: MapPoint;
}

/** How far a handle reaches, as a part of the way to the next point. A third makes an even curve. */
const REACH = 1 / 3;

/** Bends through all points and back to the first one. */
export const closedCurve = (knots: readonly Knot[]): Bend[] =>
  knots.map((knot, i) => bendBetween(at(knots, i - 1), knot, at(knots, i + 1), at(knots, i + 2)));

/** Bends from the first point to the last one. */
export function openCurve(knots: readonly Knot[]): Bend[] {
  const end = knots.length - 1;
  return knots
    .slice(0, end)
    .map((knot, i) =>
      bendBetween(knots[Math.max(0, i - 1)] ?? knot, knot, at(knots, i + 1), knots[Math.min(end, i + 2)] ?? knot),
    );
}

const at = (knots: readonly Knot[], i: number): Knot => knots.at(i % knots.length) ?? [0, 0];

function bendBetween(before: Knot, from: Knot, to: Knot, after: Knot): Bend {
  const reach = Math.hypot(to[0] - from[0], to[1] - from[1]) * REACH;
  const leave = from[2] ? direction(from, to) : direction(before, to);
  const arrive = to[2] ? direction(from, to) : direction(from, after);
  return {
    from: [from[0], from[1]],
    out: [from[0] + leave[0] * reach, from[1] + leave[1] * reach],
    into: [to[0] - arrive[0] * reach, to[1] - arrive[1] * reach],
    to: [to[0], to[1]],
  };
}

function direction(from: Knot, to: Knot): MapPoint {
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(x, y);
  return length === 0 ? [0, 0] : [x / length, y / length];
}

/** As the path of an SVG, to a tenth. `close`: back to its start. */
export function pathOf(bends: readonly Bend[], close: boolean): string {
  const [first] = bends;
  if (!first) return "";
  const curves = bends.map(({ out, into, to }) => `C${[out, into, to].map(pair).join(" ")}`);
  return `M${pair(first.from)}${curves.join("")}${close ? "Z" : ""}`;
}

const pair = ([x, y]: MapPoint): string => `${tenthOf(x)},${tenthOf(y)}`;
const tenthOf = (x: number): number => Math.round(x * 10) / 10 + 0;

/** Points along the line, so many a bend. */
export const pointsOn = (bends: readonly Bend[], each = 8): MapPoint[] =>
  bends.flatMap((bend) => Array.from({ length: each }, (_, i) => pointAt(bend, i / each)));

function pointAt({ from, out, into, to }: Bend, t: number): MapPoint {
  const u = 1 - t;
  const mix = (a: number, b: number, c: number, d: number) =>
    u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
  return [mix(from[0], out[0], into[0], to[0]), mix(from[1], out[1], into[1], to[1])];
}

/**
 * From the machine's space to the paper: seen from the side, a little from above, so that both rails and both limbs show.
 * Depth is drawn aslant, always so that the person is seen a little from in front.
 */
import type { FigurePose, MoveFigure } from "../figure.ts";
import type { Vec } from "../space/vector.ts";
import type { View } from "../stances/scheme.ts";
import type { Flat } from "./shapes.ts";

/** How much a metre of depth moves a point along and down the paper. */
const SLANTS: Readonly<Record<View, Flat>> = { side: [0.3, 0.2], front: [0.1, 0.24], open: [0.56, 0.33] };
const MM = 1000;

export interface Projection {
  readonly to: (point: Vec) => Flat;
  /** Millimetres of the drawing from the floor's middle line down to its near edge. */
  readonly slant: Flat;
}

export function projectionOf({ view, facing }: Pick<MoveFigure, "view" | "facing">): Projection {
  const [along, down] = SLANTS[view];
  const slant: Flat = [facing === "back" ? -along : along, down];
  return { to: ([x, y, z]) => [(x + slant[0] * z) * MM, (slant[1] * z - y) * MM], slant };
}

export interface Frame2D {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Widths of the picture, millimetres: few, so that figures beside each other have one scale. */
const WIDE = [1900, 2200, 2500, 2800, 3200];
const SMALL = [1450, 1700, 1950, 2200, 2500];
/** Room round the joints for head, hands and feet. */
const ROUND = { side: 90, head: 175, top: 150 };

/** Below this width only one pose is drawn, square and close. */
export const CLOSE_BELOW = 72;

/** The part of the drawing that is shown: wide enough for both poses, so that the machine stays where it is between them. */
export function frameFor(figure: MoveFigure, poses: readonly FigurePose[], px: number): Frame2D {
  const { to } = projectionOf(figure);
  const points = poses.flatMap(({ joints }) => Object.values(joints).map(to));
  const heads = poses.map(({ joints }) => to(joints.head)[0]);
  const beside = ROUND.head - ROUND.side;
  const xs = [...points.map(([x]) => x), ...heads.map((x) => x - beside), ...heads.map((x) => x + beside)];
  const [left, right] = [Math.min(...xs) - ROUND.side, Math.max(...xs) + ROUND.side];
  const top = Math.min(...points.map(([, y]) => y)) - ROUND.top;
  const close = px < CLOSE_BELOW;
  const aspect = close ? 1 : 1.25;
  const onFloor = poses.some(({ contacts }) => contacts.some(({ surface }) => surface === "floor"));
  // A close picture ends under the rails, unless somebody stands on the floor.
  const bottom = close && !onFloor ? -150 : 130;
  const need = Math.max(right - left, (bottom - top) * aspect);
  const stops = close ? SMALL : WIDE;
  const width = stops.find((stop) => stop >= need) ?? (stops.at(-1) as number);
  const height = width / aspect;
  return { x: (left + right) / 2 - width / 2, y: bottom - height, width, height };
}

/**
 * Somebody lying along the columns, head to foot: an outline as wide as the columns, and how far down the body each group is.
 * Lengths along the body: Drillis & Contini 1966, as drawn in Winter, fig. 4.1 (shares of stature, from memory). Across it the
 * figure is pressed flat to fit over the heads; where the groups are is plain anatomy, common practice, no source.
 */
import type { Group } from "#lib/plan/schema.ts";

export const FIGURE_HEIGHT = 52;
const MIDDLE = FIGURE_HEIGHT / 2;

type Point = readonly [along: number, across: number];

/** From the crown (0) to the sole (1), and px from the middle line. The outer line of neck, trunk and leg. */
const TRUNK: readonly Point[] = [
  [0.125, 5],
  [0.15, 6],
  [0.182, 15],
  [0.22, 16],
  [0.3, 14.5],
  [0.38, 12],
  [0.44, 14],
  [0.5, 16],
  [0.56, 15.5],
  [0.64, 13],
  [0.715, 10],
  [0.77, 11.5],
  [0.84, 9],
  [0.92, 6.5],
  [0.95, 6.5],
];
const ARM: readonly Point[] = [
  [0.185, 15.5],
  [0.25, 19],
  [0.37, 22],
  [0.45, 23],
  [0.53, 24],
];
const ARM_WIDTH = 5;

/** Where a group lies along the body, and whether on the trunk and legs or on the arms. */
const PLACES: Readonly<Record<Group, { readonly from: number; readonly to: number; readonly on: "middle" | "arms" }>> =
  {
    shoulders: { from: 0.17, to: 0.215, on: "middle" },
    chest: { from: 0.215, to: 0.3, on: "middle" },
    "upper-back": { from: 0.19, to: 0.3, on: "middle" },
    biceps: { from: 0.22, to: 0.35, on: "arms" },
    triceps: { from: 0.22, to: 0.35, on: "arms" },
    forearms: { from: 0.38, to: 0.5, on: "arms" },
    abdominals: { from: 0.31, to: 0.43, on: "middle" },
    obliques: { from: 0.32, to: 0.43, on: "middle" },
    "lower-back": { from: 0.37, to: 0.44, on: "middle" },
    "hip-flexors": { from: 0.44, to: 0.5, on: "middle" },
    glutes: { from: 0.45, to: 0.53, on: "middle" },
    abductors: { from: 0.47, to: 0.55, on: "middle" },
    adductors: { from: 0.52, to: 0.62, on: "middle" },
    quadriceps: { from: 0.53, to: 0.7, on: "middle" },
    hamstrings: { from: 0.54, to: 0.7, on: "middle" },
    calves: { from: 0.73, to: 0.86, on: "middle" },
  };

const px = (n: number): number => Math.round(n * 10) / 10;

export interface LyingFigure {
  readonly head: { readonly x: number; readonly y: number; readonly rx: number; readonly ry: number };
  /** SVG path data, the arms behind the trunk. */
  readonly arms: string;
  readonly trunk: string;
  /** Between the legs. */
  readonly legs: string;
  /** Places along the body, over the whole height, for the part that is given. */
  readonly spans: readonly { readonly x: number; readonly width: number; readonly on: "middle" | "arms" }[];
}

export function lyingFigure(width: number, marked: readonly Group[]): LyingFigure {
  const at = (along: number) => px(along * (width - 4) + 2);
  const line = (points: readonly Point[], side: 1 | -1) =>
    points.map(([along, across]) => [at(along), px(MIDDLE + side * across)] as const);
  const toes: readonly Point[] = [
    [0.985, 10],
    [1, 10],
    [0.99, 2],
  ];
  const upper = [...line(TRUNK, -1), ...line(toes, -1)];
  const lower = [...line(TRUNK, 1), ...line(toes, 1)].reverse();
  return {
    head: { x: at(0.065), y: MIDDLE, rx: px(width * 0.058), ry: 9 },
    arms: [-1, 1].map((side) => armPath(line(ARM, side as 1 | -1), side as 1 | -1)).join(""),
    trunk: `${smooth([...upper, ...lower])}Z`,
    legs: `M${at(0.53)} ${MIDDLE}H${at(0.99)}M${at(0.47)} ${MIDDLE - 15}q${px(width * 0.035)} 15 0 30`,
    spans: marked.map((group) => {
      const { from, to, on } = PLACES[group];
      return { x: at(from), width: px(at(to) - at(from)), on };
    }),
  };
}

type Placed = readonly (readonly [number, number])[];

function armPath(outer: Placed, side: 1 | -1): string {
  const inner = outer.map(([x, y]) => [x, px(y - side * ARM_WIDTH)] as const).reverse();
  return `${smooth([...outer, ...inner])}Z`;
}

/** Through all points, rounded at each: quadratic curves between the middles. */
function smooth(points: Placed): string {
  const [first] = points;
  if (!first) return "";
  const middle = points.map(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
    return [px((x + nextX) / 2), px((y + nextY) / 2)] as const;
  });
  const start = middle.at(-1) ?? first;
  return `M${start.join(" ")}${points.map((point, i) => `Q${point.join(" ")} ${(middle[i] ?? point).join(" ")}`).join("")}`;
}

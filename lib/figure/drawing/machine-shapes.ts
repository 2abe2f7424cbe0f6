/** The machine as lines and planes, thinner than the body: floor, frame, springs, carriage, platforms, bars, pulleys. */
import type { CoilRow } from "../coil-rows.ts";
import { MACHINE } from "../space/machine.ts";
import type { Vec } from "../space/vector.ts";
import { coilPath, coilWidth } from "./coils.ts";
import { atLeast, type Pen } from "./pen.ts";
import { CLOSE_BELOW, type Frame2D } from "./projection.ts";
import { disc, type Flat, lineThrough, type Shape, spot, type Tone } from "./shapes.ts";

export interface MachineState {
  /** Metres from home. */
  readonly travel: number;
  readonly springs: readonly CoilRow[];
  /** The bars that hands hold. */
  readonly held: "front" | "back" | null;
}

interface Paper {
  readonly pen: Pen;
  readonly frame: Frame2D;
  readonly close: boolean;
}

const SIDE = MACHINE.halfWidth;
/** The frame's ends, and where its feet stand. */
const RAILS = [MACHINE.frontPlatform[0] + 0.01, MACHINE.backPlatform[1] - 0.01] as const;
const FEET = [RAILS[0] + 0.07, RAILS[1] - 0.07] as const;
const RAIL_LINE = MACHINE.railTop - 0.02;

export function machineShapes(state: MachineState, pen: Pen, frame: Frame2D, px: number): Shape[] {
  const paper: Paper = { pen, frame, close: px < CLOSE_BELOW };
  return [
    floorLine(paper),
    ...FEET.map((x) => rod(pen, [x, RAIL_LINE, -SIDE], [x, 0, -SIDE], "line", 14, 0.8)),
    rod(pen, [RAILS[0], RAIL_LINE, -SIDE], [RAILS[1], RAIL_LINE, -SIDE], "line", 16, 0.8),
    ...(paper.close ? [] : springShapes(state, pen)),
    ...FEET.map((x) => rod(pen, [x, RAIL_LINE, SIDE], [x, 0, SIDE], "rail", 16, 1)),
    rod(pen, [RAILS[0], RAIL_LINE, SIDE], [RAILS[1], RAIL_LINE, SIDE], "rail", 24, 1.4),
    ...platform(paper, MACHINE.backPlatform),
    ...(paper.close ? [] : wheels(state, pen)),
    ...slab(
      paper,
      MACHINE.carriage[0] + state.travel,
      MACHINE.carriage[1] + state.travel,
      MACHINE.carriageTop,
      "deck",
      "edge",
    ),
    ...platform(paper, MACHINE.frontPlatform),
    ...barShapes(state, paper, "front"),
    ...barShapes(state, paper, "back"),
    ...(paper.close ? [] : pulleys(pen)),
  ];
}

function rod(pen: Pen, from: Vec, to: Vec, stroke: Tone, mm: number, px: number): Shape {
  const { to: on } = pen.projection;
  return { d: lineThrough([on(from), on(to)]), stroke, width: atLeast(pen, mm, px) };
}

function floorLine({ pen, frame }: Paper): Shape {
  const y = pen.projection.to([0, 0, SIDE])[1];
  return {
    d: lineThrough([
      [frame.x, y],
      [frame.x + frame.width, y],
    ]),
    stroke: "line",
    width: atLeast(pen, 10, 0.8),
  };
}

/** A plane with thickness: its top seen aslant, its near face. What only just shows at the edge of a close picture is left out. */
function slab(paper: Paper, from: number, to: number, top: number, plane: Tone, face: Tone): Shape[] {
  const { pen, frame, close } = paper;
  const { to: on } = pen.projection;
  const seen = Math.min(on([to, 0, 0])[0], frame.x + frame.width) - Math.max(on([from, 0, 0])[0], frame.x);
  if (close && seen < 170) return [];
  const width = atLeast(pen, 7, 0.6);
  const quad = (corners: readonly Vec[], fill: Tone): Shape => ({
    d: lineThrough(corners.map(on), true),
    fill,
    stroke: "edge",
    width,
  });
  const low = top - MACHINE.slab;
  return [
    quad(
      [
        [from, top, SIDE],
        [to, top, SIDE],
        [to, top, -SIDE],
        [from, top, -SIDE],
      ],
      plane,
    ),
    quad(
      [
        [from, top, SIDE],
        [to, top, SIDE],
        [to, low, SIDE],
        [from, low, SIDE],
      ],
      face,
    ),
  ];
}

function platform(paper: Paper, [from, to]: readonly [number, number]): Shape[] {
  const posts = [from + 0.07, to - 0.07].map((x) =>
    rod(paper.pen, [x, MACHINE.platformTop - MACHINE.slab, SIDE], [x, RAIL_LINE, SIDE], "rail", 16, 1),
  );
  return [...posts, ...slab(paper, from, to, MACHINE.platformTop, "fixed", "fixed")];
}

function wheels({ travel }: MachineState, pen: Pen): Shape[] {
  return [0.14, 1.16].map((x) => ({
    d: disc({ at: pen.projection.to([x + travel, MACHINE.railTop + 0.006, SIDE]), r: atLeast(pen, 24, 1.3) }),
    fill: "ground",
    stroke: "edge",
    width: atLeast(pen, 10, 0.8),
  }));
}

/** Springs hang between the frame's front and the carriage, one below the other. */
function springShapes({ springs, travel }: MachineState, pen: Pen): Shape[] {
  if (springs.length === 0) return [];
  const near = -pen.projection.to([0, 0, SIDE])[1];
  const top = RAIL_LINE * 1000 + near - 26;
  const step = Math.min(80, (top - near - 30) / springs.length);
  const [from, to] = [MACHINE.springFrame * 1000, (MACHINE.springCarriage + travel) * 1000];
  const rows = springs.map(({ weight }, i): Shape => {
    const y = -(top - step * (i + 0.6));
    return {
      d: coilPath(from, to, y, Math.min(32, step * 0.42), 9),
      stroke: "coil",
      width: coilWidth(weight, pen.scale),
    };
  });
  const lowest = -(top - step * (springs.length - 0.4));
  const hook = (x: number, y: number): Shape => ({
    d: lineThrough([
      [x, y],
      [x, lowest],
    ]),
    stroke: "edge",
    width: atLeast(pen, 12, 1),
  });
  return [hook(from, -RAIL_LINE * 1000), hook(to, -(MACHINE.carriageTop - MACHINE.slab) * 1000), ...rows];
}

/** Two loops at the sides; those that hands hold are drawn heavier. */
function barShapes({ held }: MachineState, { pen, close }: Paper, end: "front" | "back"): Shape[] {
  const on = held === end;
  if (close && !on) return [];
  const [from, to] = end === "front" ? MACHINE.frontBars : MACHINE.backBars;
  return ([-1, 1] as const).map((side) => {
    const z = MACHINE.barAside * side;
    const corners: Vec[] = [
      [from, MACHINE.platformTop, z],
      [from, MACHINE.barTop, z],
      [to, MACHINE.barTop, z],
      [to, MACHINE.platformTop, z],
    ];
    const tone: Tone = side < 0 ? "line" : on ? "edge" : "line";
    return {
      d: rounded(corners.map(pen.projection.to)),
      stroke: tone,
      width: atLeast(pen, on ? 26 : 16, on ? 1.7 : 0.9),
    };
  });
}

const CORNER = 60;

function rounded(points: readonly Flat[]): string {
  const [a, b, c, d] = points as [Flat, Flat, Flat, Flat];
  const low = b[1] + CORNER;
  return `M${spot(a)}L${spot([b[0], low])}Q${spot(b)} ${spot([b[0] + CORNER, b[1]])}L${spot([c[0] - CORNER, c[1]])}Q${spot(c)} ${spot([c[0], low])}L${spot(d)}`;
}

function pulleys(pen: Pen): Shape[] {
  const [x, y, z] = MACHINE.pulley;
  return [-z, z].flatMap((side): Shape[] => [
    rod(pen, [x, MACHINE.platformTop, side], [x, y, side], "rail", 14, 0.9),
    {
      d: disc({ at: pen.projection.to([x, y, side]), r: atLeast(pen, 24, 1.3) }),
      fill: "ground",
      stroke: "edge",
      width: atLeast(pen, 10, 0.8),
    },
  ]);
}

/** A figure as outlines: the machine, the pose that is not shown as a pale ghost, the body with what it holds. */
import type { CoilRow } from "../coil-rows.ts";
import type { FigurePose, MoveFigure } from "../figure.ts";
import { plus } from "../space/vector.ts";
import { bodyShapes } from "./body-shapes.ts";
import { bandShapes, cableShapes } from "./cable-shapes.ts";
import { machineShapes } from "./machine-shapes.ts";
import { motionShapes } from "./motion-shapes.ts";
import type { Pen } from "./pen.ts";
import { CLOSE_BELOW, type Frame2D, frameFor, projectionOf } from "./projection.ts";
import type { Shape } from "./shapes.ts";

export interface Drawing {
  readonly frame: Frame2D;
  readonly shapes: readonly Shape[];
}

export interface DrawOptions {
  /** How wide it will be seen, pixels: lines stay readable at any width. */
  readonly px: number;
  /** Which pose; by default the one that tells the move. */
  readonly phase?: "start" | "end" | undefined;
  /** Whether the other pose is drawn too, pale, with an arrow; not under 72 px. By default it is. */
  readonly ghost?: boolean | undefined;
  readonly springs?: readonly CoilRow[] | undefined;
}

export function drawFigure(figure: MoveFigure, { px, phase, ghost = true, springs = [] }: DrawOptions): Drawing {
  const shown = phase ?? figure.tells;
  const pose = figure[shown];
  const other = figure[shown === "start" ? "end" : "start"];
  const pale = ridden(figure, other, pose);
  const both = ghost && !figure.held && px >= CLOSE_BELOW;
  const frame = frameFor(figure, px < CLOSE_BELOW ? [pose] : [figure.start, figure.end], px);
  const pen: Pen = { projection: projectionOf(figure), scale: px / frame.width, ghost: false };
  const state = { travel: pose.travel, springs, held: heldBars(figure) };
  return {
    frame,
    shapes: [
      ...machineShapes(state, pen, frame, px),
      ...(both && differs(pose, pale) ? bodyShapes(figure, pale, { ...pen, ghost: true }) : []),
      ...(both ? motionShapes(figure, shown, pen, frame) : []),
      ...cableShapes(pose, pen, "far"),
      ...bodyShapes(figure, pose, pen),
      ...cableShapes(pose, pen, "near"),
      ...(figure.strapped ? bandShapes(pose, pen) : []),
    ],
  };
}

function heldBars({ start, end }: MoveFigure): "front" | "back" | null {
  const surfaces = [...start.contacts, ...end.contacts].map(({ surface }) => surface);
  if (surfaces.includes("front-bars")) return "front";
  return surfaces.includes("back-bars") ? "back" : null;
}

/** Whoever rides on the carriage is shown on its new place, so that only what moved on the body shows. */
function ridden(figure: MoveFigure, other: FigurePose, pose: FigurePose): FigurePose {
  const rides = [...other.contacts, ...pose.contacts].every(({ surface }) => surface === "carriage");
  const moved = pose.travel - other.travel;
  if (!rides || moved === 0 || figure.move.station === "floor") return other;
  const joints = Object.entries(other.joints).map(([name, point]) => [name, plus(point, [moved, 0, 0])]);
  return { ...other, joints: Object.fromEntries(joints) };
}

/** Two poses that are almost one: a ghost would only blur them. */
const SAME = 0.05;

const differs = (a: FigurePose, b: FigurePose): boolean =>
  Object.entries(a.joints).some(([name, [x, y, z]]) => {
    const [u, v, w] = b.joints[name as keyof FigurePose["joints"]];
    return Math.hypot(x - u, y - v, z - w) > SAME;
  });

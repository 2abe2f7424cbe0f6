/** Where the carriage moves: its other place dashed, and an arrow along the rail the way it goes. */
import type { MoveFigure } from "../figure.ts";
import { MACHINE } from "../space/machine.ts";
import { atLeast, type Pen } from "./pen.ts";
import type { Frame2D } from "./projection.ts";
import { type Flat, lineThrough, type Shape } from "./shapes.ts";

/** Less than this is no way that one sees, metres. */
const SEEN = 0.03;
/** The least length of the arrow, pixels. */
const SHORTEST = 13;

export function motionShapes(figure: MoveFigure, shown: "start" | "end", pen: Pen, frame: Frame2D): Shape[] {
  const { start, end } = figure;
  const way = end.travel - start.travel;
  if (Math.abs(way) < SEEN) return [];
  const { to } = pen.projection;
  const y = to([0, MACHINE.railTop - 0.15, MACHINE.halfWidth])[1];
  const half = (Math.sign(way) * Math.max(Math.abs(way) * 1000, SHORTEST / pen.scale)) / 2;
  // Under the part of the carriage that the picture shows, behind the springs.
  const front = to([MACHINE.carriage[0] + figure[shown].travel + 0.12, 0, MACHINE.halfWidth])[0];
  const back = Math.min(
    to([MACHINE.carriage[1] + Math.max(start.travel, end.travel), 0, MACHINE.halfWidth])[0],
    frame.x + frame.width,
  );
  const middle = Math.min(
    Math.max((front + back) / 2, front + Math.abs(half)),
    frame.x + frame.width - Math.abs(half) - 40,
  );
  return [...placeBefore(figure, shown, pen), ...arrow([middle - half, y], [middle + half, y], pen)];
}

/** The carriage's end where it is in the other pose, dashed, where that lies beyond the carriage. */
function placeBefore({ start, end }: MoveFigure, shown: "start" | "end", pen: Pen): Shape[] {
  const [here, other] = shown === "start" ? [start, end] : [end, start];
  const { to } = pen.projection;
  const at = (travel: number, y: number): Flat => to([MACHINE.carriage[1] + travel, y, MACHINE.halfWidth]);
  const thin = atLeast(pen, 7, 0.7);
  const dash = `${Math.round(4 * thin)} ${Math.round(3 * thin)}`;
  const low = MACHINE.carriageTop - MACHINE.slab;
  if (other.travel < here.travel) return [];
  const outline = [
    at(here.travel, MACHINE.carriageTop),
    at(other.travel, MACHINE.carriageTop),
    at(other.travel, low),
    at(here.travel, low),
  ];
  return [{ d: lineThrough(outline), stroke: "motion", width: thin, dash }];
}

/** A line with a head at its end. */
export function arrow(from: Flat, to: Flat, pen: Pick<Pen, "scale">, tone: "motion" | "near" = "motion"): Shape[] {
  const size = atLeast(pen, 52, 4);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const wing = (side: number): Flat => [
    to[0] - ux * size - uy * size * 0.6 * side,
    to[1] - uy * size + ux * size * 0.6 * side,
  ];
  const neck: Flat = [to[0] - ux * size * 0.6, to[1] - uy * size * 0.6];
  return [
    { d: lineThrough([from, neck]), stroke: tone, width: atLeast(pen, 15, 1.2) },
    { d: lineThrough([wing(1), to, wing(-1)], true), fill: tone },
  ];
}

/** The change as outlines: the old pose pale, the new one in ink, the carriage's way home, the turn, the coils below. */
import type { ChangeFigure } from "../change.ts";
import type { FigurePose } from "../figure.ts";
import { MACHINE } from "../space/machine.ts";
import { bodyShapes } from "./body-shapes.ts";
import { cableShapes } from "./cable-shapes.ts";
import { bankShapes, type DrawingLabel, turnShapes, wayShapes } from "./change-shapes.ts";
import type { Drawing } from "./draw.ts";
import { machineShapes } from "./machine-shapes.ts";
import { arrow } from "./motion-shapes.ts";
import { atLeast, type Pen } from "./pen.ts";
import { frameFor, projectionOf } from "./projection.ts";
import { lineThrough, type Shape } from "./shapes.ts";

export interface ChangeDrawing extends Drawing {
  readonly labels: readonly DrawingLabel[];
  /** Height of the labels' letters, millimetres of the drawing. */
  readonly letters: number;
}

/** Letters in pixels, and at least so much of the picture. */
const LETTERS_PX = 13;
/** Over the highest joint, millimetres of the drawing: for the head, and for the arc of a turn. */
const ROOM_OVER = { head: 190, turn: 430 };

export interface ChangeOptions {
  /** How wide it will be seen, pixels. */
  readonly px: number;
  /** The coils below, each with its label. Without them where the acts beside it are drawn with their springs. */
  readonly coils?: boolean | undefined;
}

export function drawChange(change: ChangeFigure, { px, coils: withCoils = true }: ChangeOptions): ChangeDrawing {
  const poses = [change.from.end, change.to.start];
  const seen = frameFor(change.to, poses, px);
  const scale = px / seen.width;
  const pen: Pen = { projection: projectionOf(change.to), scale, ghost: false };
  const letters = Math.max(58, LETTERS_PX / scale);
  const row = Math.max(120, letters * 1.7);
  const top = seen.y + seen.height + row * 0.4;
  const words = letters * 5;
  const bank = { left: seen.x + words, right: seen.x + seen.width * 0.62, top, row };
  const springs = withCoils ? change.springs : [];
  const coils = bankShapes(springs, bank, pen);
  const y = topOf(change, poses, pen);
  const frame = {
    ...seen,
    y,
    height: seen.y + seen.height - y + row * (springs.length + (springs.length > 0 ? 0.8 : 0)),
  };
  const state = { travel: change.to.start.travel, springs: [], held: null };
  const shapes = [
    ...machineShapes(state, pen, seen, px),
    ...oldPose(change, pen),
    ...carriageHome(change, pen),
    ...cableShapes(change.to.start, pen, "far"),
    ...bodyShapes(change.to, change.to.start, pen),
    ...cableShapes(change.to.start, pen, "near"),
    ...(change.goes ? wayShapes(change, pen) : []),
    ...(change.turn ? turnShapes(change, change.turn, pen) : []),
    ...coils.shapes,
  ];
  return { frame, shapes, labels: coils.labels, letters };
}

/** No higher than what it shows: a change between two planks takes half the room of one between two standing moves. */
function topOf({ turn }: ChangeFigure, poses: readonly FigurePose[], { projection }: Pen): number {
  const heights = poses.flatMap(({ joints }) => Object.values(joints).map((joint) => projection.to(joint)[1]));
  return Math.min(...heights, -1000 * MACHINE.barTop) - (turn ? ROOM_OVER.turn : ROOM_OVER.head);
}

/** Pale, with an edge: here the old pose says something of its own. */
function oldPose({ from }: ChangeFigure, pen: Pen): Shape[] {
  const pale = bodyShapes(from, from.end, { ...pen, ghost: true });
  const edge = atLeast(pen, 8, 0.9);
  return [...pale.map(({ d }): Shape => ({ d, stroke: "far", width: 2 * edge })), ...pale];
}

/** The carriage's end where it was, dashed, and the arrow home. */
function carriageHome({ from, to }: ChangeFigure, pen: Pen): Shape[] {
  const way = from.end.travel - to.start.travel;
  if (way < 0.03) return [];
  const { to: on } = pen.projection;
  const [near, far] = [MACHINE.carriage[1] + to.start.travel, MACHINE.carriage[1] + from.end.travel];
  const low = MACHINE.carriageTop - MACHINE.slab;
  const z = MACHINE.halfWidth;
  const width = atLeast(pen, 8, 0.9);
  const corners = [
    on([near, MACHINE.carriageTop, z]),
    on([far, MACHINE.carriageTop, z]),
    on([far, low, z]),
    on([near, low, z]),
  ];
  const y = MACHINE.railTop - 0.1;
  return [
    { d: lineThrough(corners), stroke: "motion", width, dash: `${Math.round(width * 4)} ${Math.round(width * 3)}` },
    ...arrow(on([far, y, z]), on([near, y, z]), pen),
  ];
}

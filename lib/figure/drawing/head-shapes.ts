/** Head and neck: a skull, a chin and a nose in profile, hair gathered behind, so that one sees where the person looks. */
import type { FigurePose } from "../figure.ts";
import { mixed, plus, type Vec } from "../space/vector.ts";
import { atLeast, type Pen, painted } from "./pen.ts";
import { type Circle, capsule, disc, hull, lineThrough, type Shape } from "./shapes.ts";

export function headShapes(pose: FigurePose, pen: Pen): Shape[] {
  const { joints, frames } = pose;
  const { up, front } = frames.head;
  const circle = (point: Vec, mm: number, px: number): Circle => ({
    at: pen.projection.to(point),
    r: atLeast(pen, mm, px),
  });
  const place = (ahead: number, above: number): Vec => plus(plus(joints.head, front, ahead), up, above);
  const neck = capsule(
    circle(plus(joints.chest, frames.chest.up, -0.02), 52, 1),
    circle(mixed(joints.chest, place(-0.012, -0.03), 0.75), 44, 0.9),
  );
  const skull = [
    circle(place(-0.012, 0.03), 88, 2),
    circle(place(0.006, 0.008), 84, 1.8),
    circle(place(0.036, -0.062), 42, 0.9),
  ];
  const nose = capsule(circle(place(0.07, 0), 22, 0.4), circle(place(0.098, -0.022), 11, 0.3));
  const before = front[2] > 0.5;
  const behind = front[2] < -0.5;
  const face = painted({ tone: "near", outlines: [neck, hull(skull), nose] }, pen);
  // Before the skull, which parts it off as a knot; over it where one sees the back of the head; behind it from in front.
  const knot = painted({ tone: "near", outlines: [disc(circle(place(-0.088, before ? 0.1 : 0.082), 42, 0.9))] }, pen);
  const shapes = behind ? [...face, ...knot] : [...knot, ...face];
  if (pen.ghost) return shapes;
  const marks = pen.scale > 0.035 ? faceMarks(pose, pen, place) : [];
  return [...shapes, ...marks];
}

/** Seen from in front the nose is one stroke. */
function faceMarks(pose: FigurePose, pen: Pen, place: (ahead: number, above: number) => Vec): Shape[] {
  const turned = pose.frames.head.front[2];
  const width = atLeast(pen, 11, 0.8);
  const { to } = pen.projection;
  if (turned > 0.5)
    return [{ d: lineThrough([to(place(0.08, 0.03)), to(place(0.1, -0.02))]), stroke: "ground", width }];
  return [];
}

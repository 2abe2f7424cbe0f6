/** Cables with their handles and straps, and the band over feet on the carriage. */
import { at, BODY_SIDES, type Cable } from "../body/joints.ts";
import type { FigurePose } from "../figure.ts";
import { MACHINE } from "../space/machine.ts";
import { mixed, plus } from "../space/vector.ts";
import { atLeast, type Pen } from "./pen.ts";
import { type Flat, lineThrough, type Shape } from "./shapes.ts";

/** Those at the viewer's side are drawn over the body, the far ones behind it. */
export function cableShapes(pose: FigurePose, pen: Pen, which: "near" | "far"): Shape[] {
  return pose.cables
    .filter((cable) => nearness(pose, cable) === which)
    .flatMap((cable) => cableShape(pose, cable, pen));
}

function nearness(pose: FigurePose, { joint, pulley }: Cable): "near" | "far" {
  if (pulley !== "middle") return pulley;
  return pose.joints[joint][2] >= pose.joints.chest[2] - 0.02 ? "near" : "far";
}

function cableShape(pose: FigurePose, { joint, kind, pulley }: Cable, pen: Pen): Shape[] {
  const [x, y, z] = MACHINE.pulley;
  const { to } = pen.projection;
  const hand = to(pose.joints[joint]);
  const from = to([x, y, pulley === "near" ? z : pulley === "far" ? -z : 0]);
  const away = Math.hypot(from[0] - hand[0], from[1] - hand[1]) || 1;
  const along: Flat = [(from[0] - hand[0]) / away, (from[1] - hand[1]) / away];
  const half = atLeast(pen, 52, 2.1);
  const long = atLeast(pen, 112, 4.2);
  const on = (ahead: number, aside: number): Flat => [
    hand[0] + along[0] * ahead - along[1] * aside,
    hand[1] + along[1] * ahead + along[0] * aside,
  ];
  const line = atLeast(pen, 8, 0.8);
  const cable: Shape = { d: lineThrough([on(long, 0), from]), stroke: "cable", width: line };
  const slings: Shape = { d: lineThrough([on(0, half), on(long, 0), on(0, -half)]), stroke: "cable", width: line };
  const grip: Shape = { d: lineThrough([on(0, half), on(0, -half)]), stroke: "edge", width: atLeast(pen, 24, 1.6) };
  if (kind === "handle") return [cable, slings, grip];
  const loop = lineThrough([on(-10, half), on(long, 0), on(-10, -half)], true);
  return [cable, { d: loop, stroke: "edge", width: atLeast(pen, 18, 1.2) }];
}

/** A band over each foot that stands on the carriage, where feet are strapped to it. */
export function bandShapes(pose: FigurePose, pen: Pen): Shape[] {
  const strapped = BODY_SIDES.filter((side) =>
    pose.contacts.some(({ joint, surface }) => surface === "carriage" && FOOT.some((name) => joint === at(name, side))),
  );
  return strapped.map((side) => {
    const instep = mixed(pose.joints[at("ankle", side)], pose.joints[at("ball", side)], 0.4);
    const ends = [plus(instep, [0, 0, -0.09]), plus(instep, [0, 0, 0.09])].map(pen.projection.to);
    return { d: lineThrough(ends), stroke: "edge", width: atLeast(pen, 34, 1.8) };
  });
}

const FOOT = ["ball", "heel"] as const;

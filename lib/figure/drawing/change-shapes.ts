/** The parts of a change's drawing: the bank of coils, the turn over the head, the way to another station. */
import type { ChangeFigure, SpringMark, TurnMark } from "../change.ts";
import { plus, scaled, turned, UP, type Vec } from "../space/vector.ts";
import { coilPath, coilWidth } from "./coils.ts";
import { arrow } from "./motion-shapes.ts";
import { atLeast, type Pen } from "./pen.ts";
import { disc, type Flat, lineThrough, type Shape } from "./shapes.ts";

export interface DrawingLabel {
  readonly at: Flat;
  readonly text: string;
  readonly anchor: "start" | "end";
  readonly strong: boolean;
}

/** Where the bank of coils lies, millimetres: between a frame's post and the carriage's. */
export interface Bank {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly row: number;
}

const ACT_WORDS: Readonly<Record<SpringMark["act"], string>> = {
  stays: "stays on",
  "comes-off": "comes off",
  "goes-on": "goes on",
};

export function bankShapes(
  springs: readonly SpringMark[],
  bank: Bank,
  pen: Pen,
): { shapes: Shape[]; labels: DrawingLabel[] } {
  const post = (x: number): Shape => ({
    d: lineThrough([
      [x, bank.top],
      [x, bank.top + bank.row * springs.length],
    ]),
    stroke: "edge",
    width: atLeast(pen, 16, 1.6),
  });
  const posts = springs.length > 0 ? [post(bank.left), post(bank.right)] : [];
  const rows = springs.map((spring, i) => springRow(spring, bank, bank.top + bank.row * (i + 0.5), pen));
  return { shapes: [...posts, ...rows.flatMap(({ shapes }) => shapes)], labels: rows.flatMap(({ labels }) => labels) };
}

/** On: hooked at both posts, the ring full. Off: slack, its ring on the carriage empty. An arrow points the way it goes. */
function springRow(spring: SpringMark, bank: Bank, y: number, pen: Pen): { shapes: Shape[]; labels: DrawingLabel[] } {
  const off = spring.act === "comes-off";
  const reach = bank.right - bank.left;
  const end = off ? bank.left + reach * 0.6 : bank.right;
  const ring = atLeast(pen, 20, 2.6);
  const width = coilWidth(spring.weight, pen.scale);
  const radius = Math.min(bank.row * 0.34, 44);
  const side = bank.right + ring * 2;
  const [from, to] = off ? [bank.right - ring * 2, end + ring * 2] : [side + bank.row * 1.3, side];
  const strong = spring.act !== "stays";
  const edge = { stroke: off ? "far" : "coil", width: atLeast(pen, 9, 1.2) } as const;
  return {
    shapes: [
      { d: coilPath(bank.left, end, y, radius, 12), stroke: off ? "far" : "coil", width },
      { d: disc({ at: [bank.right, y], r: ring }), fill: off ? "ground" : "coil", ...edge },
      ...(strong ? arrow([from, y], [to, y], pen, "near") : []),
    ],
    labels: [
      { at: [bank.left - ring, y], text: spring.label, anchor: "end", strong },
      { at: [side + (strong && !off ? bank.row * 1.5 : 0), y], text: ACT_WORDS[spring.act], anchor: "start", strong },
    ],
  };
}

const STEPS = 12;

/** An arc over the head, in the plane of the floor, from where the person looked to where they will look. */
export function turnShapes({ to }: ChangeFigure, turn: TurnMark, pen: Pen): Shape[] {
  const { head } = to.start.joints;
  const looks: Readonly<Record<TurnMark["from"], Vec>> = {
    front: [-1, 0, 0],
    back: [1, 0, 0],
    left: [0, 0, 1],
    right: [0, 0, -1],
  };
  const whole = turn.quarters * 90 * (turn.way === "left" ? 1 : -1);
  const centre = plus(head, UP, 0.2);
  const points = Array.from({ length: STEPS + 1 }, (_, i) =>
    pen.projection.to(plus(centre, scaled(turned(looks[turn.from], UP, (whole * i) / STEPS), 0.2))),
  );
  const [before, last] = points.slice(-2) as [Flat, Flat];
  return [
    { d: lineThrough(points), stroke: "motion", width: atLeast(pen, 16, 1.5) },
    ...arrow(before, last, pen, "motion").slice(1),
  ];
}

/** A dashed bow from the old place to the new one. */
export function wayShapes({ from, to }: ChangeFigure, pen: Pen): Shape[] {
  const [a, b] = [pen.projection.to(from.end.joints.pelvis), pen.projection.to(to.start.joints.pelvis)];
  const high = Math.min(a[1], b[1]) - 260;
  const points = Array.from({ length: STEPS + 1 }, (_, i): Flat => {
    const t = 0.12 + (0.76 * i) / STEPS;
    const bow = (from_: number, top: number, to_: number) =>
      (1 - t) ** 2 * from_ + 2 * t * (1 - t) * top + t ** 2 * to_;
    return [bow(a[0], (a[0] + b[0]) / 2, b[0]), bow(a[1], high, b[1])];
  });
  const width = atLeast(pen, 14, 1.3);
  const [before, last] = points.slice(-2) as [Flat, Flat];
  return [
    { d: lineThrough(points), stroke: "motion", width, dash: `${Math.round(width * 3)} ${Math.round(width * 2.4)}` },
    ...arrow(before, last, pen, "motion").slice(1),
  ];
}

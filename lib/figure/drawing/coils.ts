/** Springs as coils: one a spring, the line as thick as the spring is stiff beside the others. Never a colour. */
import { type Flat, lineThrough } from "./shapes.ts";

/** Line width of a coil: millimetres of the drawing, and never under so many pixels. */
export const coilWidth = (weight: number, scale: number): number =>
  Math.max(6 + 13 * weight, (0.75 + 1.35 * weight) / scale);

/** A coil between two places at one height: as many turns however far it is stretched, so that it opens as it is drawn out. */
export function coilPath(from: number, to: number, y: number, radius: number, turns: number): string {
  const steps = 8;
  const lead = Math.min(46, (to - from) * 0.12);
  const [begin, end] = [from + lead, to - lead];
  const loop = Math.max(radius * 0.42, ((end - begin) / turns) * 0.3);
  const points: Flat[] = [
    [from, y],
    [begin, y],
  ];
  for (let i = 0; i <= turns * steps; i++) {
    const share = i / (turns * steps);
    const phase = (2 * Math.PI * i) / steps;
    const back = share < 1 ? loop * (1 - Math.cos(phase)) : 0;
    points.push([begin + (end - begin) * share + back, y - radius * Math.sin(phase)]);
  }
  return lineThrough([...points, [to, y]]);
}

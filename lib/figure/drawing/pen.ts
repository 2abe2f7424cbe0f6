/** How a drawing is made: where points fall, how large it will be seen, and in one tone or many. */
import type { Projection } from "./projection.ts";
import type { Shape, Tone } from "./shapes.ts";

export interface Pen {
  readonly projection: Projection;
  /** Pixels a millimetre. */
  readonly scale: number;
  /** One tone for all of it: a pose the body is not in. */
  readonly ghost: boolean;
}

/** At least so many pixels. */
export const atLeast = (pen: Pick<Pen, "scale">, mm: number, px: number): number => Math.max(mm, px / pen.scale);

/** The outline in the ground's tone first, so that limbs which cross stay apart. */
export function painted(
  { tone, outlines }: { readonly tone: Tone; readonly outlines: readonly string[] },
  pen: Pen,
): Shape[] {
  const d = outlines.join("");
  if (pen.ghost) return [{ d, fill: "ghost" }];
  return [
    { d, fill: "ground", stroke: "ground", width: 2 * atLeast(pen, 10, 0.9) },
    { d, fill: tone },
  ];
}

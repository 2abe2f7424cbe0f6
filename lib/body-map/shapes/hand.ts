/** Lines between the fingers, one hand. They go with the arm. */
import type { Knot } from "../lines/curve.ts";

export const HAND_LINES: readonly (readonly Knot[])[] = [
  [
    [193, 586],
    [195, 606],
  ],
  [
    [199, 584],
    [201, 607],
  ],
  [
    [205, 580],
    [206, 600],
  ],
];

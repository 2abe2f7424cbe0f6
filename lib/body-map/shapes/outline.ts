/**
 * The outline of a standing person, one half, from the crown to where the legs part. The same line is seen from the front and
 * from the back. Heights of eye, chin, shoulder, elbow, wrist, hip, knee and ankle and the breadths of shoulders and hips are
 * those of Drillis & Contini 1966, as drawn in Winter, Biomechanics and Motor Control of Human Movement, fig. 4.1 (quoted from
 * memory); what lies between is our own drawing.
 */
import type { Knot } from "../lines/curve.ts";

/** Where the arm turns when it is laid closer to the body. */
export const SHOULDER_JOINT: Knot = [110, 190];

export const HEAD_LINE: readonly Knot[] = [
  [0, 0],
  [19, 3],
  [34, 15],
  [43, 36],
  [45, 64],
  [49, 66],
  [48, 82],
  [42, 92],
  [39, 106],
  [33, 119],
];
export const NECK_LINE: readonly Knot[] = [
  [33, 134],
  [36, 147],
  [52, 159],
  [80, 168],
];
export const ARM_LINE: readonly Knot[] = [
  [106, 174],
  [125, 182],
  [139, 202],
  [146, 230],
  [150, 262],
  [156, 296],
  [163, 330],
  [167, 358],
  [175, 380],
  [183, 408],
  [187, 440],
  [191, 475],
  [196, 506],
  [203, 524],
  [208, 550],
  [211, 578],
  [209, 602],
  [203, 618],
  [196, 621],
  [190, 613],
  [187, 592],
  [185, 572, "corner"],
  [182, 583],
  [176, 583],
  [171, 566],
  [167, 545],
  [168, 524],
  [169, 506],
  [158, 475],
  [143, 440],
  [133, 408],
  [129, 380],
  [126, 358],
  [118, 330],
  [110, 296],
];
export const ARMPIT: Knot = [105, 262, "corner"];
export const FLANK_LINE: readonly Knot[] = [
  [103, 290],
  [97, 328],
  [88, 364],
  [83, 394],
  [85, 424],
  [93, 454],
  [101, 486],
];
export const LEG_LINE: readonly Knot[] = [
  [106, 524],
  [106, 570],
  [102, 620],
  [94, 668],
  [86, 706],
  [82, 734],
  [86, 770],
  [87, 802],
  [81, 846],
  [70, 896],
  [63, 936],
  [62, 960],
  [70, 978],
  [80, 990],
  [78, 1000],
  [58, 1003],
  [42, 998],
  [38, 980],
  [39, 960],
  [38, 936],
  [32, 890],
  [25, 840],
  [23, 796],
  [27, 758],
  [26, 730],
  [24, 706],
  [19, 668],
  [13, 620],
  [7, 570],
];
export const FORK: Knot = [0, 538, "corner"];

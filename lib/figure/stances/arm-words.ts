/**
 * How arms are held, in the directions of the chest: to its front, up, out to the side. Either the fist's place from the
 * shoulder in arm's lengths and the side to which the elbow points, or the directions of both bones. Judged by eye.
 */
import type { ArmShape } from "../body/rig.ts";

export const ARM_WORDS = {
  down: { hand: [0.06, -0.98, 0.1], pole: [-1, 0, 0.3] },
  thighs: { hand: [0.2, -0.97, 0.05], pole: [-1, 0, 0.3] },
  behind: { upper: [-0.36, -0.93, 0.06], fore: [-0.36, -0.93, 0.06] },
  long: { hand: [0.995, -0.06, -0.05], pole: [0, -1, 0.4] },
  low: { hand: [0.62, -0.77, -0.05], pole: [-0.5, 0, 0.6] },
  high: { hand: [0.76, 0.64, 0], pole: [0.2, -1, 0.6] },
  overhead: { hand: [0.3, 0.945, 0.02], pole: [0.3, 0, 1] },
  chest: { hand: [0.36, -0.14, 0.14], pole: [-0.8, -0.6, 0.9] },
  ribs: { hand: [0.17, -0.4, 0.06], pole: [-1, 0.1, 0.12] },
  pulled: { hand: [0.3, 0.03, 0.16], pole: [-0.35, -1, 0.35] },
  shoulder: { hand: [0.2, 0.2, 0.2], pole: [0.25, -1, 0.35] },
  "curl-low": { upper: [0.5, -0.86, 0.03], fore: [0.8, -0.6, 0] },
  "curl-high": { upper: [0.5, -0.86, 0.03], fore: [0.12, 0.99, 0] },
  "triceps-bent": { upper: [0.96, 0.05, 0.1], fore: [-0.62, 0.78, -0.12] },
  "triceps-long": { upper: [0.98, -0.02, 0.06], fore: [0.99, -0.03, -0.06] },
  "kick-bent": { upper: [-0.74, -0.67, 0.08], fore: [0.62, -0.78, 0.02] },
  "kick-long": { upper: [-0.74, -0.67, 0.08], fore: [-0.82, -0.57, 0.04] },
  "upright-high": { hand: [0.27, -0.2, -0.12], pole: [-0.3, 0.6, 1] },
  "upright-low": { hand: [0.42, -0.9, -0.08], pole: [-0.2, 0.2, 1] },
  wide: { upper: [0.2, -0.04, 0.98], fore: [0.42, 0.02, 0.9] },
  together: { upper: [0.93, -0.04, -0.02], fore: [0.93, 0, -0.32] },
  crossed: { upper: [0.94, -0.05, -0.12], fore: [0.94, 0, -0.3] },
  "turned-in": { upper: [0.05, -0.98, 0.1], fore: [0.5, 0, -0.86] },
  "turned-out": { upper: [0.05, -0.98, 0.1], fore: [0.3, 0.05, 0.95] },
  both: { upper: [0.92, -0.12, -0.3], fore: [0.95, -0.05, -0.28] },
  "both-low": { upper: [0.6, -0.72, -0.25], fore: [0.66, -0.7, -0.22] },
  "both-high": { upper: [0.78, 0.58, -0.25], fore: [0.76, 0.62, -0.2] },
  hip: { hand: [0.02, -0.62, 0.2], pole: [-0.5, 0, 1] },
  "behind-head": { hand: [-0.1, 0.33, -0.06], pole: [0.2, 0.25, 1] },
  "before-chest": { hand: [0.42, -0.22, -0.26], pole: [-0.2, -1, 0.9] },
  "along-body": { hand: [0.16, -0.97, 0.1], pole: [1, 0, 0.3] },
  knees: { hand: [0.42, -0.9, 0.02], pole: [1, 0, 0.3] },
} as const satisfies Readonly<Record<string, ArmShape>>;

export type ArmWord = keyof typeof ARM_WORDS;

/** What is tried, in this order, where an arm cannot be held as a move would have it. */
export const SPARE_ARMS: readonly ArmWord[] = [
  "down",
  "low",
  "long",
  "before-chest",
  "hip",
  "high",
  "overhead",
  "wide",
];

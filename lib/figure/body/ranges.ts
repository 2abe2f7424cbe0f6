/**
 * How far joints go, degrees from standing upright with arms down. Hip, knee, ankle, shoulder and elbow: the widest value of
 * two published tables, "Normal Values for Range of Motion of Joints" (Merck Manual, Professional edition) and the table of
 * joint motion of 38 CFR 4.71 (Plates I and II); extension of hip and shoulder: American Academy of Orthopaedic Surgeons, Joint
 * Motion, 1965 (from memory). Spine and neck: 38 CFR 4.71a, Plate V (from memory).
 */
export type Range = readonly [least: number, most: number];

export const RANGES = {
  /** Below 0 behind the body. */
  hip: [-30, 125],
  hipAside: [-30, 45],
  knee: [0, 140],
  /** Below 0 the toes drawn up, above 0 pointed. */
  ankle: [-20, 50],
  shoulder: [-60, 180],
  elbow: [0, 145],
  /** Forward and back, to either side, turned. */
  spine: [-30, 90],
  spineAside: [-30, 30],
  spineTurn: [-30, 30],
  neck: [-45, 45],
  neckAside: [-45, 45],
} as const satisfies Readonly<Record<string, Range>>;

export type RangeName = keyof typeof RANGES;

/**
 * The body of the figures, metres. Bones: Drillis & Contini 1966, as drawn in Winter, Biomechanics and Motor Control of Human
 * Movement, fig. 4.1 (the table of `lib/statics`, quoted from memory). Stature, hands, feet and flesh are judgement.
 */
import { SEGMENT_LENGTHS } from "#lib/statics/segments.ts";

export const STATURE = 1.65;
const of = (share: number) => share * STATURE;

export const BONES = {
  shank: of(SEGMENT_LENGTHS.shank),
  thigh: of(SEGMENT_LENGTHS.thigh),
  /** Hip to shoulder line, in two halves that meet at the waist. */
  trunk: of(SEGMENT_LENGTHS.trunk),
  upperArm: of(SEGMENT_LENGTHS.upperArm),
  forearm: of(SEGMENT_LENGTHS.forearm),
  /** Wrist to the middle of the fist, and to the fingers of a flat hand. */
  fist: of(0.05),
  palm: of(0.09),
  /** Shoulder line to the middle of the head. */
  neck: of(0.116),
  hipHalf: of(0.052),
  shoulderHalf: of(0.108),
  /** The ankle over the sole, the heel behind it, the ball of the foot before it, the toes beyond the ball. */
  ankle: of(0.039),
  heel: of(0.045),
  ball: of(0.075),
  toes: of(0.032),
} as const;

export const LEG = BONES.thigh + BONES.shank;
export const ARM = BONES.upperArm + BONES.forearm;
/** Shoulder to fist. */
export const REACH = ARM + BONES.fist;

/** Flesh between a joint and what it lies on. */
export const FLESH = { knee: of(0.03), back: of(0.06), elbow: of(0.022), wrist: of(0.02), side: of(0.038) } as const;
/** The middle of a fist over the bar it holds. */
export const FIST_OVER_BAR = 0.018;

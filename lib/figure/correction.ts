/** A correction of what was worked out: degrees and metres added to a posture, where a move's own pose should differ. */
import { spin } from "./body/joints.ts";
import { plus } from "./space/vector.ts";
import type { Posture } from "./stances/stage.ts";

export interface PhaseCorrection {
  /** Degrees: the pelvis leaned forward, the chest bent forward on it, bent to the right, turned to the left, the head nodded. */
  readonly pelvis?: number;
  readonly bend?: number;
  readonly aside?: number;
  readonly turn?: number;
  readonly nod?: number;
  /** Metres: the trunk moved along the rails and up. Hands and feet stay where they hold. */
  readonly along?: number;
  readonly up?: number;
}

export interface FigureCorrection {
  readonly start?: PhaseCorrection;
  readonly end?: PhaseCorrection;
}

export function withCorrection(posture: Posture, by: PhaseCorrection | undefined): Posture {
  if (!by) return posture;
  const { trunk } = posture;
  return {
    ...posture,
    trunk: {
      ...trunk,
      at: plus(trunk.at, [by.along ?? 0, by.up ?? 0, 0]),
      frame: spin(trunk.frame, trunk.frame.left, by.pelvis ?? 0),
      bend: (trunk.bend ?? 0) + (by.bend ?? 0),
      aside: (trunk.aside ?? 0) + (by.aside ?? 0),
      turn: (trunk.turn ?? 0) + (by.turn ?? 0),
      nod: (trunk.nod ?? 0) + (by.nod ?? 0),
    },
  };
}

/** A move's own correction of what was worked out: degrees and millimetres added to a posture. */
import type { PhaseCorrection } from "#lib/plan/figure-correction.ts";
import { type BodySide, spin } from "./body/joints.ts";
import { plus } from "./space/vector.ts";
import type { Posture } from "./stances/stage.ts";

const MM_PER_M = 1000;

interface Drawn {
  readonly worked: BodySide;
  /** Worked out at the front end, to be turned round: what is away from the front end is towards it here. */
  readonly mirrored: boolean;
}

export function withCorrection(
  posture: Posture,
  by: PhaseCorrection | undefined,
  { worked, mirrored }: Drawn,
): Posture {
  if (!by) return posture;
  const { trunk } = posture;
  const side = worked === "right" ? 1 : -1;
  const along = ((by.alongMm ?? 0) / MM_PER_M) * (mirrored ? -1 : 1);
  return {
    ...posture,
    trunk: {
      ...trunk,
      at: plus(trunk.at, [along, (by.upMm ?? 0) / MM_PER_M, 0]),
      frame: spin(trunk.frame, trunk.frame.left, by.leanDeg ?? 0),
      bend: (trunk.bend ?? 0) + (by.bendDeg ?? 0),
      // To the right, and turned to the left, as the posture has them.
      aside: (trunk.aside ?? 0) + side * (by.asideDeg ?? 0),
      turn: (trunk.turn ?? 0) - side * (by.turnDeg ?? 0),
      nod: (trunk.nod ?? 0) + (by.nodDeg ?? 0),
    },
  };
}

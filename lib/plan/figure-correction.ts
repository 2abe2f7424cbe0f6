/** Where a move's figure, which is worked out from its other fields, is wrong. */
import * as z from "zod/mini";
import { numberFrom } from "./number-fields.ts";

/** By how much a figure's pose is corrected: degrees, and millimetres along the rails and up. */
const phaseCorrectionSchema = z.strictObject({
  /** The pelvis leaned forward. */
  leanDeg: z.optional(numberFrom(-90, 90)),
  /** The back bent forward from the pelvis. */
  bendDeg: z.optional(numberFrom(-90, 90)),
  /** The back bent, and turned, towards the side that works; where both do, towards the side that is drawn in front. */
  asideDeg: z.optional(numberFrom(-90, 90)),
  turnDeg: z.optional(numberFrom(-90, 90)),
  /** The head bent forward. */
  nodDeg: z.optional(numberFrom(-90, 90)),
  /** The trunk moved away from the front end, and up. Hands and feet stay where they hold. */
  alongMm: z.optional(numberFrom(-500, 500)),
  upMm: z.optional(numberFrom(-500, 500)),
});

export const figureCorrectionSchema = z.strictObject({
  start: z.optional(phaseCorrectionSchema),
  end: z.optional(phaseCorrectionSchema),
});

export type PhaseCorrection = z.infer<typeof phaseCorrectionSchema>;

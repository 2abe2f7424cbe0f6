/**
 * The class log, format `springline.class-log/1`: what a device sends the studio after a class. The zod schema is both
 * type and parser. It names no person: it records what the class did, not who was in the room.
 */
import * as z from "zod/mini";
import { numberFrom } from "#lib/plan/number-fields.ts";
import { rehearsedSchema } from "./rehearsed-schema.ts";

const CLASS_LOG_FORMAT = "springline.class-log/1";

/** At most a day; a larger number is a mistake. */
const seconds = numberFrom(0, 86_400);

const rowSchema = z.strictObject({
  phase: z.enum(["opening", "change", "work", "pause", "closing"]),
  /** Null in the opening and the closing. */
  item: z.nullable(z.string().check(z.minLength(1), z.maxLength(64))),
  /** Seconds in the signed plan; 0 for a change that exists only because of a re-timing. */
  planned: seconds,
  /** Seconds after all re-timings; 0 if it was left out. */
  given: seconds,
  /** Seconds it really took, without holds; going back adds to them. */
  took: seconds,
  /** Seconds the class was held in it. */
  held: seconds,
  /**
   * Seconds from the step's start until it resumed after a hold made right at its start: people were not ready.
   * Absent without such a hold.
   */
  lateStart: z.optional(seconds),
});

/** The most undone touches that a log lists. */
export const MOST_UNDONE = 200;
const undoneSchema = z.strictObject({
  act: z.enum(["hold", "resume", "next", "back", "seek", "end", "retime"]),
  /** Seconds from the start of the class to the touch, and from the touch to its undo. */
  at: seconds,
  after: seconds,
});

export const classLogSchema = z.strictObject({
  format: z.literal(CLASS_LOG_FORMAT),
  /** Made by the device when the class begins, so a log that is sent twice counts as one class. */
  sessionId: z.string().check(z.regex(/^[0-9a-z]{16,40}$/, "letters and digits, 16 to 40 of them")),
  kind: z.enum(["class", "rehearsal"]),
  edition: z.strictObject({
    planId: z.string().check(z.minLength(1), z.maxLength(64)),
    number: z.int().check(z.minimum(1)),
    hash: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  }),
  /** ISO 8601, UTC, by the device's clock. */
  startedAt: z.iso.datetime(),
  /** Seconds from start to end: the sum of `took` and `held` over all rows. */
  elapsed: seconds,
  /** True when the class ran to its end, false when it was ended early. */
  whole: z.boolean(),
  /** In the order of the class. */
  rows: z.array(rowSchema).check(z.minLength(1), z.maxLength(2_000)),
  /** For a rehearsal: each line and set-up as the coach tapped it. */
  rehearsed: z.optional(rehearsedSchema),
  /** Touches that were undone, in the order of the undos. They add no seconds to the rows. Absent when there are none. */
  undone: z.optional(z.array(undoneSchema).check(z.maxLength(MOST_UNDONE))),
});

export type ClassLog = z.infer<typeof classLogSchema>;
export type ClassLogRow = ClassLog["rows"][number];

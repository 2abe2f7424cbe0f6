/**
 * The class log, format `springline.class-log/1`: what a device sends the studio after a class. One zod schema is the type
 * and the parser. No person is named in it: it says what a class did, not who was in the room.
 */
import * as z from "zod/mini";
import { numberFrom } from "#lib/plan/number-fields.ts";
import { rehearsedSchema } from "./rehearsed-schema.ts";

const CLASS_LOG_FORMAT = "springline.class-log/1";

/** A day: no class is held up for longer, and a number beyond it is a mistake. */
const seconds = numberFrom(0, 86_400);

const rowSchema = z.strictObject({
  phase: z.enum(["opening", "change", "work", "pause", "closing"]),
  /** Null in the opening and the closing. */
  item: z.nullable(z.string().check(z.minLength(1), z.maxLength(64))),
  /** Seconds the signed plan gives it; 0 for a change that only a re-timing brought about. */
  planned: seconds,
  /** Seconds it had in the end, re-timings included; 0 where it was left out. */
  given: seconds,
  /** Seconds that really went into it, holds not counted; going back adds to them. */
  took: seconds,
  /** Seconds the class was held in it. */
  held: seconds,
  /**
   * Seconds from the step's start to when it went on after a hold begun as it had only just begun: people were not ready.
   * Left out where there was no such hold.
   */
  lateStart: z.optional(seconds),
});

/** As many as a log tells of. */
export const MOST_UNDONE = 200;
const undoneSchema = z.strictObject({
  act: z.enum(["hold", "resume", "next", "back", "seek", "end", "retime"]),
  /** Seconds from the start of the class to the touch, and from there to its undo. */
  at: seconds,
  after: seconds,
});

export const classLogSchema = z.strictObject({
  format: z.literal(CLASS_LOG_FORMAT),
  /** Made by the device when the class begins: the same log sent twice is one class. */
  sessionId: z.string().check(z.regex(/^[0-9a-z]{16,40}$/, "letters and digits, 16 to 40 of them")),
  kind: z.enum(["class", "rehearsal"]),
  edition: z.strictObject({
    planId: z.string().check(z.minLength(1), z.maxLength(64)),
    number: z.int().check(z.minimum(1)),
    hash: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  }),
  /** ISO 8601, UTC, by the device's clock. */
  startedAt: z.iso.datetime(),
  /** Seconds from the start to the end, the sum of what the rows took and were held. */
  elapsed: seconds,
  /** The class went through to its end, instead of being ended before. */
  whole: z.boolean(),
  /** In the order of the class. */
  rows: z.array(rowSchema).check(z.minLength(1), z.maxLength(2_000)),
  /** Of a rehearsal: each line and each set-up as the coach tapped it. */
  rehearsed: z.optional(rehearsedSchema),
  /** Touches that were taken back, in the order of the undos: no second of the rows is theirs. Left out for none. */
  undone: z.optional(z.array(undoneSchema).check(z.maxLength(MOST_UNDONE))),
});

export type ClassLog = z.infer<typeof classLogSchema>;
export type ClassLogRow = ClassLog["rows"][number];

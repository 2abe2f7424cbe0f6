/**
 * What the screens of one room and the server send each other on `/floor/line`: one JSON object per text frame. Strict and
 * bounded, since a paired device may send anything. The token is in the first message, never in a URL.
 */
import * as z from "zod/mini";
import { numberFrom, wholeFrom } from "#lib/plan/number-fields.ts";
import { SCREEN_VIEWS } from "#lib/protocol/line-wire.ts";

const id = z.string().check(z.minLength(1), z.maxLength(64));
const term = wholeFrom(0, 1_000_000_000);
/** ms on a monotonic clock. */
const ms = numberFrom(-1e12, 1e12);
/** Seconds of a plan. */
const seconds = numberFrom(0, 86_400);

const eventSchema = z.discriminatedUnion("type", [
  z.strictObject({ type: z.enum(["start", "end", "undo", "undo-retime"]), at: ms }),
  z.strictObject({ type: z.enum(["hold", "resume"]), at: ms, asleep: z.optional(z.literal(true)) }),
  z.strictObject({ type: z.enum(["next", "back"]), at: ms, to: z.optional(seconds) }),
  z.strictObject({ type: z.literal("seek"), at: ms, to: seconds }),
  z.strictObject({
    type: z.literal("retime"),
    at: ms,
    changed: z.array(z.strictObject({ item: id, to: seconds })).check(z.maxLength(500)),
    dropped: z.array(id).check(z.maxLength(500)),
    closingSeconds: seconds,
    openingSeconds: z.optional(seconds),
    changes: z.optional(z.array(z.strictObject({ item: id, to: seconds })).check(z.maxLength(500))),
  }),
]);

/** The class that is led: its edition, and its log with times on the server's clock. */
export const lineClassSchema = z.strictObject({
  /** The session id of the class log, so that the screen that leads at the end files it once. */
  session: z.string().check(z.regex(/^[0-9a-z]{16,40}$/)),
  edition: z.strictObject({
    planId: id,
    number: wholeFrom(1, 1_000_000),
    hash: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
  }),
  title: z.string().check(z.minLength(1), z.maxLength(300)),
  log: z.array(eventSchema).check(z.minLength(1), z.maxLength(1_000)),
});
export type LineClass = z.infer<typeof lineClassSchema>;

const memorySchema = z.strictObject({
  term,
  leader: z.nullable(
    z.strictObject({
      id,
      label: z.string().check(z.maxLength(80)),
      sinceWall: numberFrom(0, 1e14),
    }),
  ),
});
/** What a screen remembers of the line, from which a restarted server restores it. */
export type LineMemory = z.infer<typeof memorySchema>;

export const helloSchema = z.strictObject({
  t: z.literal("hello"),
  version: z.int(),
  token: z.string().check(z.minLength(20), z.maxLength(200)),
  view: z.enum(SCREEN_VIEWS),
  memory: z.nullable(memorySchema),
});

export const toServerSchema = z.discriminatedUnion("t", [
  /** `t1`: the sender's clock. */
  z.strictObject({ t: z.literal("time"), t1: ms }),
  z.strictObject({ t: z.literal("view"), view: z.enum(SCREEN_VIEWS) }),
  /** Asks to lead. `term`: as the sender knows it. `sure`: take over although the leader is gone and cannot be asked. */
  z.strictObject({ t: z.literal("lead"), term, sure: z.boolean() }),
  z.strictObject({ t: z.literal("withdraw") }),
  z.strictObject({ t: z.literal("answer"), term, to: id, yes: z.boolean() }),
  z.strictObject({ t: z.literal("class"), term, class: lineClassSchema }),
  z.strictObject({ t: z.literal("step-down"), term }),
]);
export type Hello = z.infer<typeof helloSchema>;
export type ToServer = z.infer<typeof toServerSchema>;

/** Why a request was refused. Words for people: `line-words.ts`. */
export type LineRefusal = "not-leading" | "changed" | "asked-already" | "nobody-asks" | "not-signed" | "declined";

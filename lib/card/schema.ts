/**
 * The cue card, format `springline.card/1`: everything the floor needs to run a class without a network, and its signed
 * envelope. The zod schema is both type and parser.
 */
import * as z from "zod/mini";
import { SPOKEN_KINDS } from "#lib/cues/types.ts";
import { ACTIONS, planSchema } from "#lib/plan/schema.ts";

export const CARD_FORMAT = "springline.card/1";

const at = z.number().check(z.minimum(0));
const line = z.object({ item: z.string(), kind: z.enum(SPOKEN_KINDS), text: z.string() });

const clockRowSchema = z.object({
  item: z.string(),
  transitionFrom: at,
  start: at,
  end: at,
  transition: z.object({
    planned: z.nullable(z.number()),
    estimate: z.number(),
    /** Cards from before transitions had it took no time to tell. */
    telling: z._default(z.number(), 0),
    actions: z.partialRecord(z.enum(ACTIONS), z.number()),
  }),
  reps: z.nullable(z.number()),
});

/** Unknown keys pass: a later server may add some, and the signature covers them too. */
export const cardSchema = z.object({
  format: z.literal(CARD_FORMAT),
  studio: z.object({ name: z.string(), town: z.string() }),
  edition: z.object({
    planId: z.string().check(z.minLength(1)),
    number: z.int().check(z.minimum(1)),
    /** SHA-256, hex, of the canonical plan below. */
    hash: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
    shortName: z.string(),
    title: z.string(),
  }),
  room: z.object({ id: z.string(), name: z.string() }),
  plan: planSchema,
  clock: z.object({ rows: z.array(clockRowSchema), total: at }),
  cues: z.array(z.extend(line, { from: at, to: at })),
  dropped: z.array(z.extend(line, { shortBy: z.number() })),
  cautions: z.object({
    note: z.array(z.string()).check(z.minLength(1)),
    asked: z.array(z.object({ words: z.string(), items: z.array(z.string()) })),
    expected: z.array(z.string()),
  }),
  /** ISO 8601, UTC. */
  issuedAt: z.iso.datetime(),
  expiresAt: z.iso.datetime(),
});

export const envelopeSchema = z.object({
  card: z.unknown(),
  /** SHA-256, hex, of the card's canonical bytes. */
  sha256: z.string(),
  keyId: z.string(),
  /** Ed25519 over the card's canonical bytes (RFC 8785, UTF-8), base64url. */
  signature: z.string(),
});

export type Card = z.infer<typeof cardSchema>;
export interface CardEnvelope {
  readonly card: Card;
  readonly sha256: string;
  readonly keyId: string;
  readonly signature: string;
}

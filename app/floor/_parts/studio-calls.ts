/** The calls of a device to the studio: pair, fetch the cards of its room, file the log of a class. */

import * as z from "zod/mini";
import { type Method, send } from "#app/_parts/send.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import { formatsSchema } from "#lib/formats/formats-schema.ts";
import { NO_NETWORK, UNREADABLE_ANSWER } from "./floor-words.ts";
import type { Pairing } from "./kept.ts";

type StudioAnswer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: string; readonly message: string };

const named = z.object({ id: z.string(), name: z.string() });
const pairingSchema = z.object({
  token: z.string().check(z.minLength(20)),
  device: named,
  room: named,
  studio: z.object({ name: z.string(), town: z.string() }),
  publicKey: z.string().check(z.minLength(43)),
});
const cardsSchema = z.object({
  room: named,
  /** Not trusted before they are verified. */
  cards: z.array(z.unknown()),
  nextSlots: z._default(z.record(z.string(), z.string()), {}),
  slotMarks: z._default(z.record(z.string(), z.array(z.string())), {}),
  withdrawn: z._default(
    z.array(
      z.object({ planId: z.string(), number: z.number(), byName: z.string(), at: z.number(), reason: z.string() }),
    ),
    [],
  ),
  /** Of a studio of an older version, or one that knows more than this page: none. */
  formats: z.catch(z.optional(formatsSchema), undefined),
  serverTime: z.number(),
});
type FetchedCards = z.infer<typeof cardsSchema>;

const WAIT_MS = 10_000;

export const pair = (code: string): Promise<StudioAnswer<Pairing>> =>
  ask("POST", "/api/devices/pair", pairingSchema, { code });

export const fetchCards = (token: string): Promise<StudioAnswer<FetchedCards>> =>
  ask("GET", "/api/devices/cards", cardsSchema, undefined, token);

const takenSchema = z.object({ sessionId: z.string() });

export const sendLog = (token: string, log: ClassLog): Promise<StudioAnswer<{ sessionId: string }>> =>
  ask("POST", "/api/devices/logs", takenSchema, log, token);

/** Sent without cookies: the device acts as itself, whoever is signed in to the same browser. */
async function ask<T>(
  method: Method,
  path: string,
  reads: z.ZodMiniType<T>,
  body?: unknown,
  token?: string,
): Promise<StudioAnswer<T>> {
  const headers: Record<string, string> = token === undefined ? {} : { authorization: `Bearer ${token}` };
  const signal = AbortSignal.timeout(WAIT_MS);
  const sent = await send(method, path, body, { reads, headers, credentials: "omit", signal });
  if (sent.ok) return sent;
  if (sent.code === "unreadable") return { ok: false, code: "strange", message: UNREADABLE_ANSWER };
  // An error that is not the studio's own comes from what stands before it.
  if (sent.code === "no-answer" || sent.code === "unknown")
    return { ok: false, code: "no-network", message: NO_NETWORK };
  return { ok: false, code: sent.code, message: sent.message };
}

/** The calls of a device to the studio: pair, fetch the cards of its room, file the log of a class. */
import * as z from "zod/mini";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
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
  withdrawn: z._default(
    z.array(
      z.object({ planId: z.string(), number: z.number(), byName: z.string(), at: z.number(), reason: z.string() }),
    ),
    [],
  ),
  serverTime: z.number(),
});
const errorSchema = z.object({ error: z.object({ code: z.string(), message: z.string() }) });
type FetchedCards = z.infer<typeof cardsSchema>;

const WAIT_MS = 10_000;

export const pair = (code: string): Promise<StudioAnswer<Pairing>> =>
  ask("/api/devices/pair", pairingSchema, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ code }),
  });

export const fetchCards = (token: string): Promise<StudioAnswer<FetchedCards>> =>
  ask("/api/devices/cards", cardsSchema, { headers: { authorization: `Bearer ${token}` } });

const takenSchema = z.object({ sessionId: z.string() });

export const sendLog = (token: string, log: ClassLog): Promise<StudioAnswer<{ sessionId: string }>> =>
  ask("/api/devices/logs", takenSchema, {
    method: "POST",
    headers: { "content-type": "application/json", authorization: `Bearer ${token}` },
    body: JSON.stringify(log),
  });

async function ask<T>(path: string, schema: z.ZodMiniType<T>, init: RequestInit): Promise<StudioAnswer<T>> {
  let body: unknown;
  try {
    // Sent without cookies: the device acts as itself, whoever is signed in to the same browser.
    const signal = AbortSignal.timeout(WAIT_MS);
    const response = await fetch(path, { ...init, credentials: "omit", cache: "no-store", signal });
    body = await response.json();
  } catch {
    return { ok: false, code: "no-network", message: NO_NETWORK };
  }
  const parsed = schema.safeParse(body);
  if (parsed.success) return { ok: true, value: parsed.data };
  const refused = errorSchema.safeParse(body);
  return refused.success
    ? { ok: false, ...refused.data.error }
    : { ok: false, code: "strange", message: UNREADABLE_ANSWER };
}

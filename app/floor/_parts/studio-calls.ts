/** What a device says to the studio: take me as yours, which cards are mine, this is what the class did. */
import * as z from "zod/mini";
import { type Method, send } from "#app/_parts/send.ts";
import type { ClassLog } from "#lib/floor/class-log-schema.ts";
import type { Pairing } from "./kept.ts";

export type Answer<T> =
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
export type RoomCards = z.infer<typeof cardsSchema>;

const NO_NETWORK = "The studio cannot be reached. What is kept on this device works without it.";
const STRANGE = "The studio's answer could not be read. Reload this page when the network is there.";
const WAIT_MS = 10_000;

export const pair = (code: string): Promise<Answer<Pairing>> =>
  ask("POST", "/api/devices/pair", pairingSchema, { code });

export const fetchCards = (token: string): Promise<Answer<RoomCards>> =>
  ask("GET", "/api/devices/cards", cardsSchema, undefined, token);

const takenSchema = z.object({ sessionId: z.string() });

export const sendLog = (token: string, log: ClassLog): Promise<Answer<{ sessionId: string }>> =>
  ask("POST", "/api/devices/logs", takenSchema, log, token);

/** As a page sends, but without a cookie: a device is a device, whoever is signed in on the same browser. */
async function ask<T>(
  method: Method,
  path: string,
  reads: z.ZodMiniType<T>,
  body?: unknown,
  token?: string,
): Promise<Answer<T>> {
  const headers: Record<string, string> = token === undefined ? {} : { authorization: `Bearer ${token}` };
  const signal = AbortSignal.timeout(WAIT_MS);
  const sent = await send(method, path, body, { reads, headers, credentials: "omit", signal });
  if (sent.ok) return sent;
  if (sent.code === "unreadable") return { ok: false, code: "strange", message: STRANGE };
  // An error that is not the studio's own comes from what stands before it.
  if (sent.code === "no-answer" || sent.code === "unknown")
    return { ok: false, code: "no-network", message: NO_NETWORK };
  return { ok: false, code: sent.code, message: sent.message };
}

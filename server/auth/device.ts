/**
 * Who is asking, when it is a paired cue device: it sends `Authorization: Bearer <token>`. Only the token's SHA-256
 * is stored, so a copied database opens nothing.
 */
import { createHash } from "node:crypto";
import type { Db } from "#db/connection.ts";
import { deviceByTokenHash } from "#db/repos/session-repo.ts";
import type { Device } from "#lib/policy/can.ts";
import { type HeaderSource, toHeaders } from "./actor.ts";

/** SHA-256 of a device's token or pairing code, hex: the form they are stored in. */
export const hashToken = (token: string): string => createHash("sha256").update(token, "utf8").digest("hex");

/** The device behind these headers, or null: no token, an unknown one, or a device that was taken back. */
export function deviceFromHeaders(headers: HeaderSource, app: { readonly db: Db }): Device | null {
  const token = /^Bearer ([\w-]{20,200})$/.exec(toHeaders(headers).get("authorization") ?? "")?.[1];
  if (!token) return null;
  const row = deviceByTokenHash(app.db, hashToken(token));
  return row ? { kind: "device", id: row.id, roomId: row.roomId } : null;
}

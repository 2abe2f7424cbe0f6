/**
 * Who is asking, when it is a paired cue device: it sends `Authorization: Bearer <token>`. Only the SHA-256 of the token
 * is stored, so a copied database gives nobody access.
 */
import { createHash } from "node:crypto";
import type { Db } from "#db/connection.ts";
import { deviceByTokenHash } from "#db/repos/session-repo.ts";
import type { Device } from "#lib/policy/can.ts";
import { type HeaderSource, toHeaders } from "./actor.ts";

/** SHA-256 (hex) of a device's token or pairing code, as it is stored. */
export const hashToken = (token: string): string => createHash("sha256").update(token, "utf8").digest("hex");

/** The device behind these headers. Null without a token, for an unknown one, and for a device that was removed. */
export function deviceFromHeaders(headers: HeaderSource, app: { readonly db: Db }): Device | null {
  const token = /^Bearer ([\w-]{20,200})$/.exec(toHeaders(headers).get("authorization") ?? "")?.[1];
  if (!token) return null;
  const row = deviceByTokenHash(app.db, hashToken(token));
  return row ? { kind: "device", id: row.id, roomId: row.roomId } : null;
}

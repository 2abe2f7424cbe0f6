/** Turns a pairing code into a device's token. Anybody may call this, so guesses are counted before they are looked at. */
import * as z from "zod";
import { claimDevice, makerOfCode } from "#db/repos/device-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { hashToken } from "#server/auth/device.ts";
import { mayStill } from "#server/people/made-links.ts";
import { fail, ok, type Result } from "#server/result.ts";
import type { Springline } from "#server/springline.ts";
import { type AttemptLimit, createAttemptLimit } from "./attempt-limit.ts";
import { newDeviceToken, readPairingCode } from "./pairing-code.ts";

type Studio = Pick<Springline, "db" | "now" | "keys">;

export const pairSchema = z.strictObject({ code: z.string().max(40) });

export interface Paired {
  /** Shown to the device once; only its hash is stored. */
  readonly token: string;
  readonly device: { readonly id: string; readonly name: string };
  readonly room: { readonly id: string; readonly name: string };
  readonly studio: { readonly name: string; readonly town: string };
  /** The studio's Ed25519 key, base64url: what the device checks cards with from now on. */
  readonly publicKey: string;
}

const WRONG_CODE = fail(
  404,
  "code-unknown",
  "That code is not known, was used or taken back, or is older than ten minutes. Check it, or ask the manager for a new one.",
);
const MAKER_GONE = fail(
  410,
  "code-withdrawn",
  "Whoever made this code may not add devices any more. Ask the manager for a new one.",
);
const TOO_OFTEN = fail(429, "too-often", "Too many wrong codes. Wait ten minutes, then ask the manager for a new one.");

const limits = new WeakMap<Springline["db"], AttemptLimit>();

function limitOf(app: Studio): AttemptLimit {
  const limit = limits.get(app.db) ?? createAttemptLimit();
  limits.set(app.db, limit);
  return limit;
}

/** `address` is who asks, for the limit on guesses. Errors: 404 code-unknown, 410 code-withdrawn, 429 too-often. */
export function pairDevice(app: Studio, typed: string, address: string): Result<Paired> {
  const limit = limitOf(app);
  const now = app.now();
  if (!limit.allows(address, now)) return TOO_OFTEN;
  const code = readPairingCode(typed);
  const token = newDeviceToken();
  const maker = code === null ? undefined : makerOfCode(app.db, hashToken(code), now);
  if (maker !== undefined && !mayStill(app.db, maker, "devices.manage")) return MAKER_GONE;
  const device = code === null ? undefined : claimDevice(app.db, hashToken(code), hashToken(token), now);
  if (!device) {
    limit.failed(address, now);
    return WRONG_CODE;
  }
  const studio = readStudio(app.db);
  return ok({
    token,
    device: { id: device.id, name: device.name },
    room: { id: device.roomId, name: readRoom(app.db, device.roomId)?.name ?? "" },
    studio: { name: studio?.name ?? "", town: studio?.town ?? "" },
    publicKey: app.keys.publicKey,
  });
}

/** Exchanges a pairing code for a device's token. Anybody may call this, so wrong guesses are limited. */
import * as z from "zod";
import { claimDevice, makerOfCode } from "#db/repos/device-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { readRoom } from "#db/repos/room-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { hashToken } from "#server/auth/device.ts";
import { newDeviceToken, readPairingCode } from "#server/auth/pairing-code.ts";
import { ok, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { type BackoffRules, GuessBackoff } from "#server/limits/guess-backoff.ts";
import { mayStill } from "#server/people/made-links.ts";
import { PAIRING_CODE_MAKER_GONE, PAIRING_CODE_UNKNOWN, tooManyCodes } from "./refusals.ts";

type Studio = Pick<Springline, "db" | "now" | "keys">;

export const pairSchema = z.strictObject({ code: z.string().max(40) });

export interface Paired {
  /** Sent to the device once; only its hash is stored. */
  readonly token: string;
  readonly device: { readonly id: string; readonly name: string };
  readonly room: { readonly id: string; readonly name: string };
  readonly studio: { readonly name: string; readonly town: string };
  /** The studio's Ed25519 key, base64url: the device verifies cards with it. */
  readonly publicKey: string;
}

/**
 * Wrong codes per network. There is no limit on all guesses together, which a stranger could use up: with 30^8 codes that
 * are valid for ten minutes, a thousand guesses a second succeed with odds of one in a million. Our own choice.
 */
export const GUESSES: BackoffRules = {
  free: 20,
  firstWaitMs: 10_000,
  longestWaitMs: 60_000,
  forgetMs: 10 * 60_000,
  keys: 10_000,
};
const guesses = new WeakMap<Springline["db"], GuessBackoff>();

function guessesOf(app: Studio): GuessBackoff {
  const tries = guesses.get(app.db) ?? new GuessBackoff(GUESSES);
  guesses.set(app.db, tries);
  return tries;
}

/**
 * `network` is where the request comes from, for the limit on guesses; null for no limit, where networks cannot be told
 * apart. Errors: 404 code-unknown, 410 code-withdrawn, 429 too-often.
 */
export function pairDevice(app: Studio, typed: string, network: string | null): Result<Paired> {
  const tries = guessesOf(app);
  const now = app.now();
  const wait = network === null ? 0 : tries.waitMs(network, now);
  if (wait > 0) return tooManyCodes(wait);
  const code = readPairingCode(typed);
  const token = newDeviceToken();
  const maker = code === null ? undefined : makerOfCode(app.db, hashToken(code), now);
  if (maker !== undefined && !mayStill(app.db, maker, "devices.manage")) return PAIRING_CODE_MAKER_GONE;
  // A wrong guess writes nothing: it would block the database's only writer.
  const device =
    code === null || maker === undefined
      ? undefined
      : inTransaction(app.db, () => claimAndNote(app, { code, token, maker }));
  if (!device) {
    if (network !== null) tries.failed(network, now);
    return PAIRING_CODE_UNKNOWN;
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

/** Uses the code up. The person who made it stands in the record for the device. */
function claimAndNote(app: Studio, { code, token, maker }: { code: string; token: string; maker: string }) {
  const at = app.now();
  const device = claimDevice(app.db, hashToken(code), hashToken(token), at);
  const body = device && { name: device.name, room: device.roomId, codeBy: maker };
  if (device)
    addToRecord(app.db, { at, actorId: `device/${device.id}`, subject: `device/${device.id}`, kind: "paired", body });
  return device;
}

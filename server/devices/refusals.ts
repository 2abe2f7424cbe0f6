/** What people are told when a device cannot be added or paired. */
import { fail, type Result } from "#server/base/result.ts";
import { waitInWords } from "#server/limits/guess-backoff.ts";

export const PAIRING_CODE_UNKNOWN = fail(
  404,
  "code-unknown",
  "This code is wrong, was used or removed, or is older than ten minutes. Check it, or ask the manager for a new one.",
);

export const PAIRING_CODE_MAKER_GONE = fail(
  410,
  "code-withdrawn",
  "The person who made this code can no longer add devices. Ask the manager for a new one.",
);

export const tooManyCodes = (waitMs: number): Result<never> =>
  fail(429, "too-often", `Too many wrong codes from this network. Wait ${waitInWords(waitMs)} and try again.`);

export const DEVICE_ROOM_UNKNOWN = fail(404, "no-room", "This room does not exist. Choose one of the studio's rooms.");

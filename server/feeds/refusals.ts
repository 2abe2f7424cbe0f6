/** What people, and programs that read calendars, are told when there is no calendar for them. */
import { fail, type Result } from "#server/base/result.ts";
import { waitInWords } from "#server/limits/guess-backoff.ts";

/** The same words whether there never was such an address or it was withdrawn: whoever guesses learns nothing. */
export const FEED_UNKNOWN = fail(
  404,
  "calendar-unknown",
  "There is no calendar at this address, or it was withdrawn. Make a new address under Calendar addresses.",
);

export const tooManyReads = (waitMs: number): Result<never> =>
  fail(429, "too-often", `This calendar is read too often. Wait ${waitInWords(waitMs)} and try again.`, {
    seconds: Math.ceil(waitMs / 1000),
  });

export const FEED_STANDS = fail(
  409,
  "calendar-stands",
  "There is an address for this calendar already. Renew it, or withdraw it first.",
);

export const FEED_ROOM_UNKNOWN = fail(404, "no-room", "This room does not exist. Choose one of the studio's rooms.");

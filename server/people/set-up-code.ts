/**
 * Who may make the studio of an empty installation that others can reach: whoever reads the code on the console where the
 * server was started. It is made anew at each start, and gone once there is a studio.
 */
import { timingSafeEqual } from "node:crypto";
import { readPairingCode } from "#server/auth/pairing-code.ts";
import type { Env } from "#server/base/env.ts";
import { fail, type Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";

const LOOPBACK = /^(localhost|127(\.\d+){3}|\[?::1\]?)$/;

/** Nobody but this machine's own people reach it when it listens there alone and is served under no other name. */
export const needsSetUpCode = ({ host, origin }: Pick<Env, "host" | "origin">): boolean =>
  !LOOPBACK.test(host) || !LOOPBACK.test(new URL(origin).hostname);

const WRONG_CODE = fail(
  403,
  "wrong-set-up-code",
  "That is not the set-up code. It stands on the console where the server was started; a new start makes a new one.",
);

/**
 * Undefined when the code is right, or none is asked for. No limit on guesses, which a stranger could use up: a code is one of
 * 30^8, and a thousand guesses a second for a day find it with odds of one in seven thousand. Errors: 403 wrong-set-up-code.
 */
export function refuseSetUp(app: Pick<Springline, "setUpCode">, typed: string): Result<never> | undefined {
  const { setUpCode } = app;
  if (setUpCode === undefined) return undefined;
  const code = readPairingCode(typed);
  const right = code !== null && timingSafeEqual(Buffer.from(code), Buffer.from(setUpCode));
  return right ? undefined : WRONG_CODE;
}

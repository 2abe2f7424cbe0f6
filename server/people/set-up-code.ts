/**
 * Protects the first run of an installation that other machines can reach: it requires a code that is printed on the
 * server's console. Each start prints a new code, until there is a studio.
 */
import { timingSafeEqual } from "node:crypto";
import { readPairingCode } from "#server/auth/pairing-code.ts";
import type { Env } from "#server/base/env.ts";
import type { Result } from "#server/base/result.ts";
import type { Springline } from "#server/context/springline.ts";
import { WRONG_SET_UP_CODE } from "./refusals.ts";

const LOOPBACK = /^(localhost|127(\.\d+){3}|\[?::1\]?)$/;

/** Not needed when the server only listens on this machine and is served under no other name. */
export const needsSetUpCode = ({ host, origin }: Pick<Env, "host" | "origin">): boolean =>
  !LOOPBACK.test(host) || !LOOPBACK.test(new URL(origin).hostname);

/**
 * Undefined when the code is right or none is required. Guesses are not limited, since a stranger could use such a limit up:
 * with 30^8 codes, a thousand guesses a second for a day succeed with odds of one in seven thousand. Errors: 403
 * wrong-set-up-code.
 */
export function refuseSetUp(app: Pick<Springline, "setUpCode">, typed: string): Result<never> | undefined {
  const { setUpCode } = app;
  if (setUpCode === undefined) return undefined;
  const code = readPairingCode(typed);
  const right = code !== null && timingSafeEqual(Buffer.from(code), Buffer.from(setUpCode));
  return right ? undefined : WRONG_SET_UP_CODE;
}

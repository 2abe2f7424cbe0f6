/** Warnings about the proxy in front of the server, logged once per cause. */
import type { IncomingMessage } from "node:http";
import type { Env } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import { warnOnce } from "#server/base/warn-once.ts";
import { bareAddress } from "#server/limits/network.ts";

type Watched = { readonly env: Pick<Env, "trustProxy">; readonly log: Pick<Log, "warn"> };

/** To be called before the headers are cleaned. */
export function noteForwarded({ env, log }: Watched, request: IncomingMessage): void {
  const forwarded = request.headers["x-forwarded-for"];
  if (forwarded === undefined) return;
  if (env.trustProxy) {
    noteNoAddress(log, String(forwarded));
    return;
  }
  warnOnce(
    log,
    "forwarded-not-trusted",
    {},
    "A proxy names its clients (x-forwarded-for), but SPRINGLINE_TRUST_PROXY is not set: all clients count as one address and share its limits. If the proxy is yours and sets the header itself, set SPRINGLINE_TRUST_PROXY=1.",
  );
}

/** Values such as "unknown" are allowed in this header but do not distinguish clients. Ports and brackets are ignored. */
function noteNoAddress(log: Watched["log"], forwarded: string): void {
  const said = forwarded.split(",").at(-1)?.trim() ?? "";
  if (bareAddress(said) !== "") return;
  warnOnce(
    log,
    "forwarded-no-address",
    { said: said.slice(0, 80) },
    "The proxy names a client by something that is not an address (x-forwarded-for): such requests count as the proxy's own and share its limits. Configure it to send the client's IP address, with or without a port.",
  );
}

/** A page of another address than SPRINGLINE_URL was refused. */
export function noteOtherOrigin(
  { env, log }: { readonly env: Pick<Env, "origin">; readonly log: Pick<Log, "warn"> },
  origin: string,
): void {
  const used = origin.slice(0, 200);
  warnOnce(
    log,
    `other-origin ${used}`,
    { set: env.origin, used },
    "A page of another address than SPRINGLINE_URL was refused. If people use that address, set SPRINGLINE_URL to it. For more, run: npm run -s doctor",
  );
}

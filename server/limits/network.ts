/**
 * The network that a request comes from, for limits on what strangers may try: an IPv4 address, or the /64 of an IPv6
 * address, which is what one household or one office gets (RFC 6177) and within which anybody has any number of them.
 */
import type { IncomingMessage } from "node:http";
import { BlockList, isIP, isIPv4, isIPv6 } from "node:net";
import type { Env } from "#server/base/env.ts";

/** The address a request came from. Set by our own server, after the client's header of that name is dropped. */
export const CLIENT_ADDRESS_HEADER = "x-springline-client";
/** Set by our own server, after the client's header of that name is dropped; absent when networks cannot be told apart. */
export const CLIENT_NETWORK_HEADER = "x-springline-network";

const LOOPBACK = new BlockList();
LOOPBACK.addSubnet("127.0.0.0", 8, "ipv4");
LOOPBACK.addAddress("::1", "ipv6");
/** What a proxy writes down about whom it speaks for. */
const FORWARDED = ["x-forwarded-for", "forwarded", "x-real-ip"] as const;

/**
 * The name of an address's network, or undefined when it names none: not an address, or the machine's own, behind which
 * a proxy may speak for everybody. Ports and zones are left out; `::ffff:a.b.c.d` is its IPv4 address.
 */
export function networkOf(address: string): string | undefined {
  const bare = bareAddress(address);
  if (isIPv4(bare)) return LOOPBACK.check(bare, "ipv4") ? undefined : bare;
  if (!isIPv6(bare) || LOOPBACK.check(bare, "ipv6")) return undefined;
  return `${groupsOf(bare).slice(0, 4).join(":")}::/64`;
}

/** The address alone: without brackets, port or zone. Empty when there is none. */
export function bareAddress(said: string): string {
  const text = said.trim();
  const inside = /^\[([^\]]+)\](?::\d+)?$/.exec(text)?.[1] ?? /^([\d.]+):\d+$/.exec(text)?.[1] ?? text;
  const plain = inside.split("%")[0] ?? "";
  const mapped = /^::ffff:([\d.]+)$/i.exec(plain)?.[1];
  return mapped && isIPv4(mapped) ? mapped : isIP(plain) === 0 ? "" : plain;
}

/**
 * Whether the address noted for a request tells its people apart. It does not when a proxy that is not trusted stands in
 * front (it says so, or the public address has TLS, which this server does not speak): all would share the proxy's.
 */
export function tellsPeopleApart(request: IncomingMessage, env: Pick<Env, "origin" | "trustProxy">): boolean {
  if (env.trustProxy) return request.headers["x-forwarded-for"] !== undefined;
  if (env.origin.startsWith("https://")) return false;
  return FORWARDED.every((name) => request.headers[name] === undefined);
}

/** The eight groups of an IPv6 address, without leading zeros. */
function groupsOf(address: string): string[] {
  const host = new URL(`http://[${address}]`).hostname.slice(1, -1);
  const [before = "", after] = host.split("::");
  const head = before === "" ? [] : before.split(":");
  const tail = after ? after.split(":") : [];
  const missing = after === undefined ? 0 : 8 - head.length - tail.length;
  return [...head, ...Array.from({ length: missing }, () => "0"), ...tail];
}

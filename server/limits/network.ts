/**
 * The network a request comes from, for limits on unknown callers: an IPv4 address, or the /64 of an IPv6 address. A /64
 * is what one household or office gets (RFC 6177), and within it anybody can use any number of addresses.
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
/** The headers in which a proxy names its client. */
const FORWARDED = ["x-forwarded-for", "forwarded", "x-real-ip"] as const;

/**
 * The network of an address. Undefined when the text is no address, and for the machine's own addresses, since a proxy
 * there may speak for everybody. Ports and zones are ignored; `::ffff:a.b.c.d` counts as its IPv4 address.
 */
export function networkOf(address: string): string | undefined {
  const bare = bareAddress(address);
  if (isIPv4(bare)) return LOOPBACK.check(bare, "ipv4") ? undefined : bare;
  if (!isIPv6(bare) || LOOPBACK.check(bare, "ipv6")) return undefined;
  return `${groupsOf(bare).slice(0, 4).join(":")}::/64`;
}

/** The address without brackets, port or zone. Empty when the text holds none. */
export function bareAddress(said: string): string {
  const text = said.trim();
  const inside = /^\[([^\]]+)\](?::\d+)?$/.exec(text)?.[1] ?? /^([\d.]+):\d+$/.exec(text)?.[1] ?? text;
  const plain = inside.split("%")[0] ?? "";
  const mapped = /^::ffff:([\d.]+)$/i.exec(plain)?.[1];
  return mapped && isIPv4(mapped) ? mapped : isIP(plain) === 0 ? "" : plain;
}

/**
 * Whether the address of a request distinguishes people. It does not behind a proxy that is not trusted, where everybody
 * would share the proxy's address. There is such a proxy if it sends its headers, or if the public address has TLS, which
 * this server does not speak.
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

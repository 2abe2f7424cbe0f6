/**
 * What every request passes before Next sees it: headers that only a proxy may set are dropped, malformed addresses and
 * bodies that are too large are refused, pages are redirected to the public name and, while there is no studio, to the
 * first run.
 */

import { randomBytes } from "node:crypto";
import type { IncomingMessage, ServerResponse } from "node:http";
import type { Env } from "#server/base/env.ts";
import { fail, type Result } from "#server/base/result.ts";
import {
  bareAddress,
  CLIENT_ADDRESS_HEADER,
  CLIENT_NETWORK_HEADER,
  networkOf,
  tellsPeopleApart,
} from "#server/limits/network.ts";
import { refuseUnread } from "./body.ts";
import { setSecurityHeaders } from "./security-headers.ts";

export interface GateSetup {
  readonly env: Pick<Env, "mode" | "origin" | "trustProxy">;
  /** Asked until it is true, then remembered. */
  hasStudio(): boolean;
}

/** Returns true when it has answered the request itself, false to let it through. */
export type Gate = (request: IncomingMessage, response: ServerResponse) => boolean;

/** Bytes of a refused body that are still read. Our own choice: more than any plan file, less than a long video. */
const MAX_DROPPED_BYTES = 64 * 1024 * 1024;
const BAD_ADDRESS = fail(400, "bad-address", "This address is not valid.");
const DROPPED = /^(forwarded|x-forwarded-.*|x-real-ip|x-springline-.*|x-middleware-.*|content-security-policy.*)$/;
/** Our own header: whether a proxy named the client's address, and whether it was trusted. */
export const FORWARDED_HEADER = "x-springline-forwarded";
const METHODS = new Set(["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"]);
export const ALLOW = [...METHODS].join(", ");
const NO_SUCH_METHOD = fail(405, "no-such-method", "This method is not supported here.");
const LOOPBACK = new Set(["localhost", "127.0.0.1", "[::1]"]);

export function createGate({ env, hasStudio }: GateSetup): Gate {
  const home = new URL(env.origin);
  let studio = false;
  const ready = () => {
    studio ||= hasStudio();
    return studio;
  };
  return (request, response) => {
    cleanHeaders(request, env);
    setSecurityHeaders(env, request, response, randomBytes(16).toString("base64"));
    if (!METHODS.has(request.method ?? "")) return refuse(request, response.setHeader("allow", ALLOW), NO_SUCH_METHOD);
    const path = pathOf(request);
    if (path === undefined) return refuse(request, response, BAD_ADDRESS);
    const tooMuch = refuseUnread(request.headers);
    if (tooMuch) return refuse(request, response, tooMuch);
    if (!isPage(request, path)) return false;
    const name = canonicalName(home, request);
    if (name) return redirect(response, 307, `${name}${request.url}`);
    if (!ready()) return path === "/first-run" ? false : redirect(response, 302, "/first-run");
    return path === "/first-run" ? redirect(response, 302, "/") : false;
  };
}

/**
 * Drops the headers that only a proxy may set. Notes in our own headers the address that the request came from and, where
 * addresses distinguish people, its network; limits on guesses use them. The address is the connection's or, behind a
 * trusted proxy, the last one in its header: earlier ones may have been set by the client.
 */
export function cleanHeaders(request: IncomingMessage, env: Pick<Env, "origin" | "trustProxy">): void {
  const forwarded = String(request.headers["x-forwarded-for"] ?? "");
  const apart = tellsPeopleApart(request, env);
  for (const name of Object.keys(request.headers)) if (DROPPED.test(name)) delete request.headers[name];
  const said = env.trustProxy ? bareAddress(forwarded.split(",").at(-1) ?? "") : "";
  request.headers[FORWARDED_HEADER] = forwarded === "" ? "none" : said ? "believed" : "ignored";
  const address = said || request.socket.remoteAddress || "127.0.0.1";
  request.headers[CLIENT_ADDRESS_HEADER] = address;
  const network = apart ? networkOf(address) : undefined;
  if (network) request.headers[CLIENT_NETWORK_HEADER] = network;
}

function pathOf(request: IncomingMessage): string | undefined {
  const url = request.url ?? "";
  if (!url.startsWith("/") || url.length > 8192) return undefined;
  const path = URL.canParse(url, "http://x") ? new URL(url, "http://x").pathname : undefined;
  return path !== undefined && decodes(path) ? path.replace(/(.)\/+$/, "$1") : undefined;
}

/** The pages decode their addresses, and would fail on a percent sign that begins no letter of UTF-8. */
function decodes(path: string): boolean {
  try {
    decodeURIComponent(path);
    return true;
  } catch {
    return false;
  }
}

/** A page that somebody looks at, as opposed to API answers, scripts, fonts and pictures. */
function isPage(request: IncomingMessage, path: string): boolean {
  if (request.method !== "GET" && request.method !== "HEAD") return false;
  return !path.startsWith("/api/") && !path.startsWith("/_next/") && !/\.[a-z0-9]+$/i.test(path);
}

/** The public origin, when the request used another name of this machine: cookies belong to one name. */
function canonicalName(home: URL, request: IncomingMessage): string | undefined {
  const asked = request.headers.host?.toLowerCase() ?? home.host;
  if (asked === home.host || !LOOPBACK.has(home.hostname)) return undefined;
  return LOOPBACK.has(asked.replace(/:\d+$/, "")) ? home.origin : undefined;
}

function redirect(response: ServerResponse, status: number, to: string): true {
  response.writeHead(status, { location: to, "cache-control": "no-store" }).end();
  return true;
}

function refuse(request: IncomingMessage, response: ServerResponse, refusal: Result<never>): boolean {
  if (refusal.ok) return false;
  const { code, message, status } = refusal.error;
  const headers = { "content-type": "application/json", "cache-control": "no-store" };
  response.writeHead(status, headers).end(JSON.stringify({ error: { code, message } }));
  // The rest of the body is read and dropped, up to a limit: a client that sends everything before it reads the answer
  // would otherwise see a broken connection instead of the reason.
  let dropped = 0;
  request.on("data", (chunk: Buffer) => {
    dropped += chunk.length;
    if (dropped > MAX_DROPPED_BYTES) request.destroy();
  });
  return true;
}

/** How proxies write a client's address: with a port or in brackets it is read all the same; what is none is told once. */

import type { IncomingMessage } from "node:http";
import { expect, test, vi } from "vitest";
import { cleanHeaders } from "#server/http/gate.ts";
import { noteForwarded } from "#server/http/proxy-signs.ts";
import { CLIENT_ADDRESS_HEADER } from "#server/limits/network.ts";

const env = { origin: "https://plans.quay.example", trustProxy: true };
const asking = (forwarded: string) =>
  ({ headers: { "x-forwarded-for": forwarded }, socket: { remoteAddress: "10.0.0.1" } }) as unknown as IncomingMessage;

// Addresses for documentation: RFC 5737 and RFC 3849.
test.each([
  ["203.0.113.77", "203.0.113.77"],
  ["203.0.113.77:50412", "203.0.113.77"],
  ["198.51.100.4, 203.0.113.77:50412", "203.0.113.77"],
  ["[2001:db8::7]:50412", "2001:db8::7"],
  ["[2001:db8::7]", "2001:db8::7"],
  ["2001:db8::7", "2001:db8::7"],
])("%s is read as %s, and nothing is said", (forwarded, address) => {
  const log = { warn: vi.fn() };
  const request = asking(forwarded);
  noteForwarded({ env, log }, request);
  cleanHeaders(request, env);
  expect(request.headers[CLIENT_ADDRESS_HEADER]).toBe(address);
  expect(log.warn).not.toHaveBeenCalled();
});

test("what is no address counts as the proxy's own, and the log says so once", () => {
  const log = { warn: vi.fn() };
  for (const forwarded of ["unknown", "_hidden", "203.0.113.77, unknown", "unknown"]) {
    const request = asking(forwarded);
    noteForwarded({ env, log }, request);
    cleanHeaders(request, env);
    expect(request.headers[CLIENT_ADDRESS_HEADER]).toBe("10.0.0.1");
  }
  expect(log.warn).toHaveBeenCalledOnce();
  expect(log.warn.mock.calls[0]?.[1]).toContain("not an address");
});

/** The gate before the pages, over a real server on a free port and raw requests. */
import { createConnection } from "node:net";
import { afterEach, beforeEach, expect, test } from "vitest";
import { createLog } from "#server/base/log.ts";
import { MAX_BODY_BYTES } from "#server/http/body.ts";
import { createGate } from "#server/http/gate.ts";
import { CannotListen } from "#server/http/listen.ts";
import { type Serving, serve } from "#server/http/serve.ts";

const log = createLog("silent");
let serving: Serving;
let studio: boolean;

async function start(origin: string, trustProxy = false): Promise<void> {
  const env = { mode: "live" as const, host: "127.0.0.1", port: 0, origin, trustProxy };
  serving = await serve({
    env,
    log,
    gate: createGate({ env, hasStudio: () => studio }),
    // Says back what the pages would see of the request.
    handle: (request, response) => response.end(JSON.stringify({ url: request.url, headers: request.headers })),
    upgrade: () => false,
  });
}

beforeEach(async () => {
  studio = true;
  await start("http://localhost:4310");
});
afterEach(() => serving.close(0));

const ask = (path: string, init: RequestInit = {}) =>
  fetch(`http://127.0.0.1:${serving.port}${path}`, { redirect: "manual", ...init });

/** One raw exchange, for what fetch will not send. */
function raw(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let got = "";
    const socket = createConnection(serving.port, "127.0.0.1", () => socket.write(text));
    socket.on("data", (chunk) => {
      got += chunk;
    });
    socket.on("close", () => resolve(got));
    socket.on("error", (error) => (got === "" ? reject(error) : resolve(got)));
  });
}

test("an address in use is said in one sentence", async () => {
  const env = { host: "127.0.0.1", port: serving.port, origin: "http://localhost:4310", trustProxy: false };
  const again = serve({ env, log, gate: () => false, handle: () => undefined, upgrade: () => false });
  await expect(again).rejects.toThrow(CannotListen);
  await expect(again).rejects.toThrow(
    `Port ${serving.port} on 127.0.0.1 is in use by another program. Stop that program, or choose another port with PORT=...`,
  );
});

test("headers that only a proxy may set do not come through; the address is the connection's", async () => {
  const sent = {
    "x-forwarded-for": "203.0.113.9",
    forwarded: "for=203.0.113.9",
    "x-real-ip": "203.0.113.9",
    "x-forwarded-host": "evil.example",
    "x-springline-client": "203.0.113.9",
    "x-middleware-subrequest": "middleware",
  };
  const { headers } = await (await ask("/api/x", { headers: sent })).json();
  expect(headers["x-springline-client"]).toBe("127.0.0.1");
  for (const name of Object.keys(sent)) if (name !== "x-springline-client") expect(headers[name]).toBeUndefined();
});

test("behind a trusted proxy the address is the last one it wrote down", async () => {
  await serving.close(0);
  await start("https://plans.quay.example", true);
  const sent = { "x-forwarded-for": "203.0.113.9, 198.51.100.4", "x-springline-client": "203.0.113.9" };
  const { headers } = await (await ask("/api/x", { headers: sent })).json();
  expect(headers["x-springline-client"]).toBe("198.51.100.4");
  expect(headers["x-forwarded-for"]).toBeUndefined();
});

test("every answer carries the security headers; a page's policy has a fresh nonce that the pages see too", async () => {
  const one = await ask("/api/x");
  const two = await ask("/api/x");
  const policy = one.headers.get("content-security-policy") ?? "";
  expect(policy).toContain("frame-ancestors 'none'");
  expect(policy).toMatch(/script-src 'self' 'nonce-[A-Za-z0-9+/]{22}=='(;|$)/);
  expect(policy).toContain("connect-src 'self' ws://localhost:4310");
  expect(policy).not.toBe(two.headers.get("content-security-policy"));
  expect((await one.json()).headers["content-security-policy"]).toBe(policy);
  expect(one.headers.get("x-content-type-options")).toBe("nosniff");
  expect(one.headers.get("referrer-policy")).toBe("same-origin");
  expect(one.headers.get("permissions-policy")).toContain("screen-wake-lock=(self)");
  expect(one.headers.get("strict-transport-security")).toBeNull();
  await serving.close(0);
  await start("https://plans.quay.example");
  expect((await ask("/api/x")).headers.get("strict-transport-security")).toBe("max-age=31536000");
});

test("a body above the limit is refused with a sentence, at it it is not", async () => {
  const post = (size: number) => ask("/api/x", { method: "POST", body: "x".repeat(size) });
  const refused = await post(MAX_BODY_BYTES + 1);
  expect(refused.status).toBe(413);
  expect(await refused.json()).toEqual({
    error: { code: "too-large", message: "This is too large: 5 MB is the limit." },
  });
  expect((await post(MAX_BODY_BYTES)).status).toBe(200);
});

test("whoever writes all of it before reading anything gets the sentence too, and the next request on the same line is answered", async () => {
  const size = 6 * MAX_BODY_BYTES;
  const next = "GET /api/next HTTP/1.1\r\nHost: localhost:4310\r\nConnection: close\r\n\r\n";
  const answer = await new Promise<string>((resolve, reject) => {
    let got = "";
    const socket = createConnection(serving.port, "127.0.0.1");
    socket.on("error", reject);
    socket.on("close", () => resolve(got));
    socket.pause();
    socket.write(`POST /api/plans/import HTTP/1.1\r\nHost: localhost:4310\r\nContent-Length: ${size}\r\n\r\n`);
    socket.write(Buffer.alloc(size), () => {
      socket.on("data", (chunk) => {
        got += chunk;
      });
      socket.resume();
      socket.write(next);
    });
  });
  expect(answer).toMatch(/^HTTP\/1\.1 413 /);
  expect(answer).toContain("5 MB is the limit");
  expect(answer).toContain('"url":"/api/next"');
});

test("a body without a stated length is refused", async () => {
  const answer = await raw(
    "POST /api/x HTTP/1.1\r\nHost: localhost:4310\r\nConnection: close\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
  );
  expect(answer).toMatch(/^HTTP\/1\.1 411 /);
});

test("a request that is no HTTP, and an upgrade that nobody knows, end without harm", async () => {
  expect(await raw("GET rubbish\r\n\r\n")).toMatch(/^HTTP\/1\.1 400 /);
  const upgrade = "Connection: Upgrade\r\nUpgrade: websocket\r\n";
  expect(await raw(`GET /_next/hmr HTTP/1.1\r\nHost: localhost:4310\r\n${upgrade}\r\n`)).toMatch(/^HTTP\/1\.1 404 /);
  expect((await ask("/api/x")).status).toBe(200);
});

test("the other name of this machine is sent to the public one, for pages only", async () => {
  const page = await ask("/plans/p1?x=1");
  expect([page.status, page.headers.get("location")]).toEqual([307, "http://localhost:4310/plans/p1?x=1"]);
  expect((await ask("/api/health")).status).toBe(200);
  await serving.close(0);
  await start("https://plans.quay.example");
  expect((await ask("/plans/p1")).status).toBe(200);
});

test("without a studio every page leads to the first run, and once there is one the first run leads away", async () => {
  await serving.close(0);
  studio = false;
  await start("https://plans.quay.example");
  const place = async (path: string) => (await ask(path)).headers.get("location");
  expect(await Promise.all(["/", "/plans", "/sign-in", "/floor/x", "/first-run/"].map(place))).toEqual([
    "/first-run",
    "/first-run",
    "/first-run",
    "/first-run",
    null,
  ]);
  expect((await ask("/api/health")).status).toBe(200);
  expect((await ask("/icon.svg")).status).toBe(200);
  studio = true;
  expect(await Promise.all(["/first-run", "/plans"].map(place))).toEqual(["/", null]);
});

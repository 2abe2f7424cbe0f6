/** What the server says of the address it was asked through, and what it logs for an owner whose proxy is set up half. */
import { afterEach, expect, test } from "vitest";
import { GET } from "#app/api/address/route.ts";
import { POST } from "#app/api/rooms/route.ts";
import { readAddressAnswer } from "#lib/protocol/address.ts";
import type { Log } from "#server/base/log.ts";
import { createGate } from "#server/http/gate.ts";
import { installationId } from "#server/http/installation-id.ts";
import { noteOtherOrigin } from "#server/http/proxy-signs.ts";
import { type Serving, serve } from "#server/http/serve.ts";
import { request, startHarness } from "#tests/unit/auth-harness.ts";

const ends: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

interface Started {
  readonly serving: Serving;
  readonly warned: string[];
}

async function start(trustProxy: boolean): Promise<Started> {
  const warned: string[] = [];
  const log = { warn: (_: object, message: string) => warned.push(message), debug: () => undefined } as unknown as Log;
  const env = { mode: "live" as const, host: "127.0.0.1", port: 0, origin: "http://localhost:4310", trustProxy };
  const serving = await serve({
    ...{ env, log, gate: createGate({ env, hasStudio: () => true }), upgrade: () => false },
    async handle(asked, answer) {
      const headers = new Headers(Object.entries(asked.headers).map(([name, value]) => [name, String(value)]));
      const said = await GET(new Request("http://localhost:4310/api/address", { headers }));
      answer.end(await said.text());
    },
  });
  ends.push(() => serving.close(0));
  return { serving, warned };
}

const ask = async ({ serving }: Started, headers: Record<string, string> = {}) =>
  readAddressAnswer(await (await fetch(`http://127.0.0.1:${serving.port}/api/address`, { headers })).json());

test.each([
  [false, undefined, { forwarded: "none", client: "127.0.0.1" }],
  [true, undefined, { forwarded: "none", client: "127.0.0.1" }],
  [false, "203.0.113.9", { forwarded: "ignored", client: "127.0.0.1" }],
  [true, "203.0.113.9", { forwarded: "believed", client: "203.0.113.9" }],
])("trust %s, header %s", async (trust, header, expected) => {
  const h = startHarness();
  ends.push(() => h.stop());
  const started = await start(trust);
  const said = await ask(started, header ? { "x-forwarded-for": header, "x-springline-forwarded": "believed" } : {});
  expect(said).toMatchObject({ ...expected, server: installationId(h.app.env.secret), address: h.app.env.origin });
  expect(JSON.stringify(said)).not.toContain(h.app.env.secret);
});

test.each(["/plans/%ff", "/api/plans/%ff", "/join/%E0%A4%A"])("%s is no address, which is said", async (path) => {
  const h = startHarness();
  ends.push(() => h.stop());
  const { serving } = await start(false);
  const answer = await fetch(`http://127.0.0.1:${serving.port}${path}`);
  expect(answer.status).toBe(400);
  expect(await answer.json()).toMatchObject({ error: { code: "bad-address", message: "This address is not valid." } });
});

test("a proxy that names clients without being trusted is logged once, however many requests come; a trusted one is not", async () => {
  const h = startHarness();
  ends.push(() => h.stop());
  const started = await start(false);
  for (let i = 0; i < 3; i++) await ask(started, { "x-forwarded-for": `203.0.113.${i}` });
  expect(started.warned).toHaveLength(1);
  expect(started.warned[0]).toContain("SPRINGLINE_TRUST_PROXY");
  const trusting = await start(true);
  await ask(trusting, { "x-forwarded-for": "203.0.113.9" });
  expect(trusting.warned).toEqual([]);
});

test("each other address is logged once, and strangers cannot fill the log with them", () => {
  const lines: object[] = [];
  const log = { warn: (details: object) => lines.push(details) } as unknown as Log;
  const env = { origin: "https://plans.quay.example" };
  for (let i = 0; i < 3; i++) noteOtherOrigin({ env, log }, "http://192.0.2.7:4310");
  expect(lines).toEqual([{ set: env.origin, used: "http://192.0.2.7:4310" }]);
  for (let i = 0; i < 500; i++) noteOtherOrigin({ env, log }, `http://${i}.example`);
  expect(lines.length).toBeLessThan(30);
});

test("a form without its page's origin is answered with the address and where to look", async () => {
  const h = startHarness();
  ends.push(() => h.stop());
  const post = async (origin: string) =>
    (await (await POST(request("/api/rooms", { method: "POST", body: {}, headers: { origin } }))).json()).error.message;
  expect(await post("null")).toContain("npm run -s doctor");
  expect(await post("null")).toContain(h.app.env.origin);
  const other = await post("http://192.0.2.7:4310");
  expect(other).toContain("address is http://localhost:4310, but you opened it as http://192.0.2.7:4310");
});

/** Before the server knows who is asking: origin, path, budgets. Each refusal beside the case that is let through. */
import { request } from "node:http";
import { connect } from "node:net";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { WebSocket } from "ws";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
const name = { kind: "plan", key: "door" } as const;
beforeAll(async () => {
  server = await startSyncServer();
  server.addPlan("door");
});
afterAll(() => server.stop());
beforeEach(() => {
  server.host.authenticating = async () => undefined;
});

const never = () => new Promise<void>(() => undefined);
const cookie = () => server.host.signIn("ines");
const host = () => new URL(server.url).host;

test("a page of another origin is refused with 403; the same page of this origin is let in", async () => {
  const foreign = new RawClient(server.url, name, { cookie: cookie(), origin: "https://elsewhere.example" });
  await eventually("it is refused", () => foreign.refusedStatus === 403);
  const nonsense = new RawClient(server.url, name, { cookie: cookie(), origin: "null" });
  await eventually("it is refused", () => nonsense.refusedStatus === 403);
  const own = await new RawClient(server.url, name, { cookie: cookie(), origin: `http://${host()}` }).synced();
  own.end();
});

test("without a session the socket is opened and closed with 4401", async () => {
  expect(await new RawClient(server.url, name).closed()).toBe(4401);
  expect(await new RawClient(server.url, name, { cookie: "made-up" }).closed()).toBe(4401);
  server.host.authenticating = () => Promise.reject(new Error("the session table is away"));
  expect(await new RawClient(server.url, name, { cookie: cookie() }).closed()).toBe(4401);
});

test.each(["/sync/plan/", "/sync/plan/a/b", "/sync/plan/A", "/sync/month/2031-13", "/sync/", "/sync/plan/none"])(
  "%s is no document here",
  async (path) => {
    expect(await new RawClient(server.url, path, { cookie: cookie() }).closed()).toBe(4404);
  },
);

test("other paths are left alone", async () => {
  let left = "";
  server.http.once("upgrade", (req, socket) => {
    left = req.url ?? "";
    socket.destroy();
  });
  const other = new RawClient(server.url, "/syncing/plan/door");
  await other.closed();
  expect(left).toContain("/syncing/plan/door");
});

test("more than 32 messages before the server knows who it is: closed; 32 are kept and heard", async () => {
  server.host.authenticating = never;
  const loud = await new RawClient(server.url, name, { cookie: cookie(), syncs: false }).opened();
  for (let i = 0; i < 33; i++) loud.sendStep1();
  expect(await loud.closed()).toBe(4429);

  let open: () => void = () => undefined;
  server.host.authenticating = () => new Promise((resolve) => (open = resolve));
  const patient = await new RawClient(server.url, name, { cookie: cookie(), syncs: false }).opened();
  for (let i = 0; i < 32; i++) patient.sendStep1();
  await new Promise<void>((resolve) => patient.ws.ping(undefined, undefined, () => resolve()));
  await new Promise((resolve) => patient.ws.once("pong", resolve));
  open();
  await eventually("all are answered", () => patient.heard.filter((h) => h.kind === "step2").length === 32);
  patient.end();
});

test("more than 64 KiB before the server knows who it is: closed before the frame is even whole", async () => {
  server.host.authenticating = never;
  const big = await new RawClient(server.url, name, { cookie: cookie(), syncs: false }).opened();
  big.sendUpdate(new Uint8Array(70 * 1024));
  expect(await big.closed()).toBe(4429);

  const slow = await new RawClient(server.url, name, { cookie: cookie(), syncs: false }).opened();
  // The head of a frame that says it will be 4 MiB, and only 66 KiB of it.
  const head = Buffer.from([0x82, 0xff, 0, 0, 0, 0, 0, 0x40, 0, 0, 1, 2, 3, 4]);
  const raw = (slow.ws as unknown as { _socket: NodeJS.WritableStream })._socket;
  raw.write(head);
  raw.write(Buffer.alloc(66 * 1024));
  expect(await slow.closed()).toBe(4429);
});

test("traffic does not extend the time to be known", async () => {
  const strict = await startSyncServer({ limits: { strangerMs: 400 } });
  strict.host.authenticating = never;
  const client = await new RawClient(strict.url, name, { cookie: strict.host.signIn("ines"), syncs: false }).opened();
  const talk = setInterval(() => client.ws.readyState === WebSocket.OPEN && client.ws.ping(), 20);
  expect(await client.closed(4000)).toBe(4408);
  clearInterval(talk);
  await strict.stop();
});

test("ten thousand frames of a stranger are not kept", async () => {
  server.host.authenticating = never;
  const client = await new RawClient(server.url, name, { cookie: cookie(), syncs: false }).opened();
  for (let i = 0; i < 10_000; i++) client.sendStep1();
  expect(await client.closed()).toBe(4429);
  expect(server.rooms.health().rooms).toBeLessThanOrEqual(1);
});

test("a socket that vanishes half-way through the greeting leaves nothing behind", async () => {
  const { port } = new URL(server.url.replace("ws:", "http:"));
  const socket = connect(Number(port), "127.0.0.1");
  socket.write("GET /sync/plan/door HTTP/1.1\r\nHost: x\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n");
  await new Promise((resolve) => socket.once("close", resolve).once("data", () => socket.destroy()));
  const status = await new Promise((resolve) => {
    request({ port, path: "/", host: "127.0.0.1" }, (res) => resolve(res.resume().statusCode)).end();
  });
  expect(status).toBe(404);
});

/** The access log: one line a request with what its host needs, and nothing that opens a door or tells of a person. */
import { mkdtempSync, openSync, readFileSync, rmSync } from "node:fs";
import { request as httpRequest } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { createLog } from "#server/base/log.ts";
import { setSpringline } from "#server/context/springline.ts";
import { unguarded } from "#server/http/respond.ts";
import { measure } from "#server/main/measure.ts";
import { attachSync } from "#server/sync/attach.ts";
import { eventually } from "#tests/support/eventually.ts";
import { openStudio, type PlanStudio } from "#tests/support/plan-studio.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { type RouteServer, startRoutes } from "#tests/support/route-server.ts";

const ORIGIN = "https://plans.quay.example";
const SECRET = "Zk3-a-secret-that-opens-a-door";
let folder: string;
let studio: PlanStudio;
let routes: RouteServer;
let text: () => string;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "springline-access-"));
  const file = join(folder, "log");
  // The lines are asked for by their own setting, whatever else the log leaves out.
  const log = createLog("error", { to: openSync(file, "a") });
  text = () => readFileSync(file, "utf8");
  studio = openStudio({ clock: Date.now() });
  setSpringline({ ...studio.app, log });
  const { answered } = await measure({ env: { metrics: null, accessLog: true } as never, log });
  const door = attachSync({ rooms: studio.rooms });
  const says = () => new Response("a page of words");
  routes = await startRoutes({
    ...{ env: { mode: "live", origin: ORIGIN, trustProxy: false }, log, upgrade: door.handleUpgrade },
    routes: {
      "GET /desk": says,
      "POST /api/rooms": says,
      "GET /api/broken": unguarded({}, () => {
        throw new Error("a bug");
      }),
      "GET /slow": () => new Promise<Response>(() => undefined),
    },
    ...(answered ? { answered } : {}),
  });
});
afterEach(async () => {
  await routes.serving.close(0);
  setSpringline(undefined);
  await studio.stop();
  rmSync(folder, { recursive: true });
});

type Line = Readonly<Record<string, unknown>>;
const lines = (): Line[] => {
  const whole = text().split("\n").slice(0, -1);
  return whole.map((line) => JSON.parse(line) as Line);
};
const requests = () => lines().filter((line) => line.msg === "request");
const ask = async (path: string, init: RequestInit = {}) => {
  const answer = await fetch(`${routes.url}${path}`, { redirect: "manual", ...init });
  return { id: answer.headers.get("x-request-id"), body: await answer.text(), status: answer.status };
};

test("a request is one line: time, method, path without query, status, ms, bytes and its id", async () => {
  const { id, body } = await ask("/desk?email=marta@tholepin.example", { headers: { cookie: `session=${SECRET}` } });
  const [line] = await eventually("it is written", () => requests().length === 1 && requests());
  expect(line).toMatchObject({ id, method: "GET", path: "/desk", status: 200 });
  expect(Object.keys(line ?? {}).sort()).toEqual([
    "bytes",
    "id",
    "level",
    "method",
    "ms",
    "msg",
    "path",
    "status",
    "time",
  ]);
  expect(Date.parse(String(line?.time))).toBeGreaterThan(Date.now() - 60_000);
  expect(line?.ms).toBeGreaterThan(0);
  expect(line?.bytes).toBeGreaterThan(body.length);
  expect(line?.bytes).toBeLessThan(4000);
  expect(text()).not.toMatch(/tholepin|Zk3|cookie/);
});

test("secret parts of addresses are masked, however they are written; bodies are never there", async () => {
  const masked = {
    [`/join/${SECRET}`]: "/join/...",
    [`/reset/${SECRET}`]: "/reset/...",
    [`/api/reset/${SECRET}`]: "/api/reset/...",
    [`/api/join/${SECRET}?x=${SECRET}`]: "/api/join/...",
    [`/api/calendar/${SECRET}.ics`]: "/api/calendar/...",
    [`/api/%63alendar/${SECRET}`]: "/api/calendar/...",
    [`/API/Reset/${SECRET}`]: "/API/Reset/...",
  };
  for (const path of Object.keys(masked)) await ask(path);
  const body = JSON.stringify({ name: SECRET });
  await ask("/api/rooms", { method: "POST", body, headers: { "content-type": "application/json", origin: ORIGIN } });
  await eventually("all are written", () => requests().length === 8);
  expect(requests().map(({ path }) => path)).toEqual([...Object.values(masked), "/api/rooms"]);
  expect(text()).not.toContain("Zk3");
});

test("the id of a request stands in the lines about its fault, and nobody outside chooses it", async () => {
  const { id, status } = await ask("/api/broken", {
    headers: { "x-springline-request": "mine", "x-request-id": "mine" },
  });
  expect(status).toBe(500);
  const all = await eventually("both are written", () => lines().length === 2 && lines());
  expect(all.find(({ msg }) => msg === "request failed")).toMatchObject({ id, path: "/api/broken" });
  expect(all.find(({ msg }) => msg === "request")).toMatchObject({ id, status: 500 });
  expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-z]+$/);
  const next = await ask("/desk");
  expect(next.id).not.toBe(id);
});

test("who goes before the answer is told by status 0; a long address is cut", async () => {
  const gone = httpRequest(`${routes.url}/slow`);
  gone.on("error", () => undefined);
  gone.end();
  await new Promise((done) => setTimeout(done, 100));
  gone.destroy();
  const [line] = await eventually("it is written", () => requests().length === 1 && requests());
  expect(line).toMatchObject({ path: "/slow", status: 0, bytes: 0 });
  await ask(`/${"x".repeat(5000)}`);
  const [, long] = await eventually("it is written", () => requests().length === 2 && requests());
  expect(String(long?.path)).toHaveLength(300);
});

test("a socket is one line when it ends, an upgrade that is refused one too", async () => {
  const url = routes.url.replace("http", "ws");
  const stranger = new RawClient(url, { kind: "plan", key: "x" });
  expect(await stranger.closed()).toBe(4401);
  const refused = new RawClient(url, "/elsewhere");
  await eventually("it is refused", () => refused.refusedStatus === 404);
  await eventually("both are written", () => requests().length === 2);
  expect(requests().map(({ path, status }) => [path, status])).toEqual([
    ["/sync/plan/x", 101],
    ["/elsewhere", 404],
  ]);
});

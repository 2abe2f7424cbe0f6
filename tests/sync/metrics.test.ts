/** The metrics, scraped and parsed as a collector would, agree with what was done, and name nobody. */
import { statSync } from "node:fs";
import { afterEach, beforeEach, expect, test } from "vitest";
import { GET as health } from "#app/api/health/route.ts";
import { insertMail } from "#db/repos/mail-repo.ts";
import { insertPlan } from "#db/repos/plan-repo.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { setSpringline } from "#server/context/springline.ts";
import { addDevice } from "#server/devices/manage-devices.ts";
import { pairDevice } from "#server/devices/pair-device.ts";
import { CannotListen } from "#server/http/listen.ts";
import { type Measuring, measure } from "#server/main/measure.ts";
import type { MetricsServing } from "#server/metrics/serve-metrics.ts";
import { attachSync, type SyncDoor } from "#server/sync/attach.ts";
import { until } from "#tests/support/app.ts";
import { eventually } from "#tests/support/eventually.ts";
import { must, openStudio, type PlanStudio } from "#tests/support/plan-studio.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { type RouteServer, startRoutes } from "#tests/support/route-server.ts";
import { scrape } from "#tests/support/scraped.ts";
import { signInAll } from "#tests/support/sign-in.ts";
import { SMALL_PLAN } from "#tests/support/sync-server.ts";

const PLAN = "a-plan-whose-id-nobody-reads-in-metrics";
const ORIGIN = "http://localhost:4310";
let studio: PlanStudio;
let measuring: Measuring;
let routes: RouteServer;
let metrics: MetricsServing;
let door: SyncDoor;

beforeEach(async () => {
  const env = { metrics: { host: "127.0.0.1", port: 0 }, accessLog: false, distDir: "no-build" };
  const log = { info: () => undefined, error: console.error } as never;
  measuring = await measure({ env: env as never, log });
  studio = openStudio({ clock: Date.now(), ...(measuring.sync ? { meter: measuring.sync } : {}) });
  setSpringline(studio.app);
  door = attachSync({ rooms: studio.rooms, ...measuring.onClosed("document") });
  routes = await startRoutes({
    env: { mode: "live", origin: ORIGIN, trustProxy: false },
    routes: { "GET /api/health": health, "POST /api/plans": () => new Response(null, { status: 401 }) },
    upgrade: door.handleUpgrade,
    ...(measuring.answered ? { answered: measuring.answered } : {}),
  });
  metrics = (await measuring.serve(studio.app, () => 3)) as MetricsServing;
});
afterEach(async () => {
  metrics.close();
  door.detach();
  await routes.serving.close(0);
  setSpringline(undefined);
  await studio.stop();
});

const ask = async (path: string, init: RequestInit = {}) => {
  const answer = await fetch(`${routes.url}${path}`, { redirect: "manual", ...init });
  await answer.arrayBuffer();
  return answer.status;
};
const NAME = "springline_http_request_duration_seconds_count";

test("requests are counted by group and class of status, and by why they were refused", async () => {
  for (let n = 0; n < 3; n++) expect(await ask("/api/health")).toBe(200);
  expect(await ask("/api/plans", { method: "POST" })).toBe(401);
  expect(await ask(`/api/plans/${PLAN}`)).toBe(404);
  expect(await ask("/%zz")).toBe(400);
  await until(async () => (await scrape(metrics.port)).value(NAME, { route: "page" }) === 1, 5000);
  const now = await scrape(metrics.port);
  expect(now.value(NAME, { route: "api/health", status: "2xx" })).toBe(3);
  expect(now.families.filter(({ name }) => name === NAME).flatMap(({ metrics: all }) => all)).toHaveLength(3);
  expect(now.value(NAME, { route: "api/plans", status: "4xx" })).toBe(2);
  expect(now.value("springline_http_refused_total", { reason: "not-signed-in" })).toBe(1);
  expect(now.value("springline_http_refused_total", { reason: "bad-request" })).toBe(1);
  expect(now.value("springline_http_sent_bytes_total", { route: "api/health" })).toBeGreaterThan(3 * 100);
});

test("what pages write is counted as the log has it, from arrival to relay and to the disk", async () => {
  const cookies = await signInAll(studio, ["marta", "ines", "sam"]);
  const doc = createPlanDoc(SMALL_PLAN, { carry: true });
  studio.rooms.create({ kind: "plan", key: PLAN }, doc, "marta");
  const row = { id: PLAN, title: "Rows", lengthSeconds: 300, ownerId: "marta", roomId: "loft", team: true, at: 1 };
  insertPlan(studio.db, row);
  const open = (who: "marta" | "ines" | "sam") =>
    new RawClient(routes.url.replace("http", "ws"), { kind: "plan", key: PLAN }, { cookies: cookies.get(who) ?? "" });
  const before = logged();
  const writers = await Promise.all([open("marta").synced(), open("ines").synced()]);
  for (let n = 0; n < 30; n++) {
    for (const [at, writer] of writers.entries()) writer.edit((d) => d.getMap("words").set(`${at}-${n}`, true));
    await Promise.all(writers.map((writer) => writer.saved()));
  }
  const now = await scrape(metrics.port);
  const after = logged();
  expect(now.value("springline_sockets", { door: "document" })).toBe(2);
  expect(now.value("springline_sockets", { door: "floor" })).toBe(3);
  expect(now.value("springline_document_rooms")).toBe(1);
  expect(now.value("springline_document_messages_total")).toBe(writers.reduce((sum, { sent }) => sum + sent, 0));
  expect(now.value("springline_document_rows_total")).toBe(after.rows - before.rows);
  expect(now.value("springline_document_stored_bytes_total")).toBe(after.bytes - before.bytes);
  const relayed = now.value("springline_document_relay_seconds_count");
  expect(relayed).toBeGreaterThanOrEqual(60);
  expect(now.value("springline_document_saved_seconds_count")).toBe(relayed);
  const [relay = 0, saved] = ["relay", "saved"].map((end) => now.value(`springline_document_${end}_seconds_sum`));
  expect(relay).toBeGreaterThan(0);
  expect(saved).toBeGreaterThan(relay);
  for (const writer of writers) writer.end();
  await eventually("both are gone", () => studio.rooms.health().connections === 0);
  const then = await scrape(metrics.port);
  expect(then.value("springline_sockets_closed_total", { door: "document" })).toBe(2);
});

function logged(): { rows: number; bytes: number } {
  const sql = "SELECT count(*) AS rows, coalesce(sum(length(bytes)), 0) AS bytes FROM doc_update";
  return studio.db.raw.prepare(sql).get() as { rows: number; bytes: number };
}

test("what waits and what stands on the disk is looked up at each reading", async () => {
  const at = studio.app.now();
  insertMail(studio.db, { id: "m1", userId: "ines", notices: [], madeAt: at, nextAt: at + 1e9 });
  must(addDevice(studio.app, studio.people.petra, { name: "Tablet by the door", roomId: "loft" }));
  const { code } = must(addDevice(studio.app, studio.people.petra, { name: "Wall", roomId: "loft" }));
  must(pairDevice(studio.app, code, "127.0.0.1"));
  const now = await scrape(metrics.port);
  expect(now.value("springline_mails", { state: "waiting" })).toBe(1);
  expect(now.value("springline_mails", { state: "failed" })).toBe(0);
  expect(now.value("springline_devices", { seen: "never" })).toBe(1);
  expect(now.value("springline_devices", { seen: "10m" })).toBe(1);
  expect(now.value("springline_database_bytes", { file: "database" })).toBe(statSync(studio.db.file).size);
  expect(now.value("springline_database_bytes", { file: "wal" })).toBe(statSync(`${studio.db.file}-wal`).size);
  expect(now.value("springline_checks_waiting")).toBe(0);
  expect(now.value("springline_database_damaged")).toBe(0);
  expect(now.value("springline_build_info", { build: "dev", node: process.version })).toBe(1);
  for (const name of ["nodejs_eventloop_lag_p99_seconds", "process_resident_memory_bytes", "process_cpu_seconds_total"])
    expect(now.families.map((one) => one.name)).toContain(name);
  expect(now.text).not.toMatch(/Tablet|Wall|tholepin/i);
});

test("nobody makes new series by asking for things, and no id is in any of them", async () => {
  await ask("/api/health");
  await ask("/api/nothing-of-ours/x");
  await ask("/first");
  await until(async () => (await scrape(metrics.port)).value(NAME, { route: "page" }) === 1, 5000);
  const before = await scrape(metrics.port);
  for (let n = 0; n < 60; n++) {
    await ask(`/api/${"x".repeat(n)}/${PLAN}-${n}`);
    await ask(`/${PLAN}-${n}/secret`);
  }
  await until(async () => (await scrape(metrics.port)).value(NAME, { route: "page" }) === 61, 5000);
  const after = await scrape(metrics.port);
  expect(after.series - before.series).toBeLessThanOrEqual(1);
  expect(after.text).not.toContain(PLAN);
});

test("anything but the metrics is refused there, and a port in use is said with the setting to change", async () => {
  const at = `http://127.0.0.1:${metrics.port}`;
  expect((await fetch(`${at}/`)).status).toBe(404);
  expect((await fetch(`${at}/metrics`, { method: "POST" })).status).toBe(404);
  const env = { metrics: { host: "127.0.0.1", port: metrics.port }, accessLog: false, distDir: "no-build" };
  const again = (await measure({ env: env as never, log: {} as never })).serve(studio.app, () => 0);
  await expect(again).rejects.toThrow(CannotListen);
  await expect(again).rejects.toThrow("choose another port with SPRINGLINE_METRICS_PORT=...");
});

test("without the setting nothing is measured", async () => {
  const none = await measure({ env: { metrics: null, accessLog: false } as never, log: {} as never });
  expect([none.sync, none.answered, none.onClosed("floor")]).toEqual([undefined, undefined, {}]);
  expect(await none.serve(studio.app, () => 0)).toBeUndefined();
});

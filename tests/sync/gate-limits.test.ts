/** What the gate turns away before it costs anything: bodies of those without a right, methods, sockets beyond a share. */
import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import * as firstRunRoute from "#app/api/first-run/route.ts";
import * as importRoute from "#app/api/plans/import/route.ts";
import * as plansRoute from "#app/api/plans/route.ts";
import { openDatabase } from "#db/connection.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { readEnv } from "#server/base/env.ts";
import { setSpringline } from "#server/context/springline.ts";
import { FORM_BODY_BYTES, MAX_BODY_BYTES } from "#server/http/body.ts";
import { ConcurrencyLimit } from "#server/limits/concurrency-limit.ts";
import { needsSetUpCode } from "#server/people/set-up-code.ts";
import { eventually } from "../support/eventually.ts";
import { openStudio, type PlanStudio, type Who } from "../support/plan-studio.ts";
import { RawClient } from "../support/raw-client.ts";
import { type RouteServer, startRoutes } from "../support/route-server.ts";
import { hashNothing, signInAll } from "../support/sign-in.ts";
import { startSyncServer, type TestServer } from "../support/sync-server.ts";

const offs: (() => unknown)[] = [];
afterEach(async () => {
  for (const off of offs.splice(0).reverse()) await off();
});

describe("requests", () => {
  let s: PlanStudio;
  let http: RouteServer;
  let cookies: ReadonlyMap<Who, string>;
  const start = async () => {
    s = openStudio({ clock: Date.now() });
    offs.push(() => s.stop());
    setSpringline(s.app);
    offs.push(() => setSpringline(undefined));
    await hashNothing(s);
    cookies = await signInAll(s, ["sam", "jonas"]);
    const routes = {
      "POST /api/first-run": firstRunRoute.POST,
      "POST /api/plans": plansRoute.POST,
      "POST /api/plans/import": importRoute.POST,
    };
    http = await startRoutes({ env: { ...s.app.env, mode: "live" }, routes });
    offs.push(() => http.serving.close(0));
  };
  /** Sends raw bytes and gives what comes back until the other side is done or `until` stands in it. */
  const raw = (bytes: string, until = "\r\n\r\n") =>
    new Promise<string>((resolve, reject) => {
      let got = "";
      const socket = connect(Number(new URL(http.url).port), "127.0.0.1", () => socket.write(bytes));
      socket.on("data", (chunk) => {
        got += String(chunk);
        if (got.includes(until)) socket.destroy();
      });
      socket.on("close", () => resolve(got));
      socket.on("error", reject);
    });
  /** The head of a request whose body never comes: only who does not wait for it answers. */
  const head = (path: string, bytes: number, who?: Who) =>
    [
      `POST ${path} HTTP/1.1`,
      "Host: localhost:4310",
      `Origin: ${s.app.env.origin}`,
      "Content-Type: application/json",
      `Content-Length: ${bytes}`,
      ...(who ? [`Cookie: ${cookies.get(who)}`] : []),
      "\r\n",
    ].join("\r\n");

  test("whoever has no right is told so before a byte of the body is read; so is the first run of a studio that is there", async () => {
    await start();
    expect(await raw(head("/api/plans/import", MAX_BODY_BYTES, "sam"), "no-right")).toMatch(/^HTTP\/1\.1 403 /);
    expect(await raw(head("/api/plans/import", MAX_BODY_BYTES), "not-signed-in")).toMatch(/^HTTP\/1\.1 401 /);
    expect(await raw(head("/api/first-run", MAX_BODY_BYTES), "studio-exists")).toMatch(/^HTTP\/1\.1 409 /);
    // A form is no file, whoever sends it.
    const large = await raw(head("/api/plans", FORM_BODY_BYTES + 1, "jonas"), "limit.");
    expect(large).toMatch(/^HTTP\/1\.1 413 [\s\S]*256 kB is the limit\./);
  });

  test.each(["TRACE", "PROPFIND", "REPORT", "NONSENSE", "CONNECT"])(
    "%s is answered 405 with what there is",
    async (method) => {
      await start();
      const target = method === "CONNECT" ? "elsewhere.example:443" : "/api/health";
      const said = await raw(`${method} ${target} HTTP/1.1\r\nHost: localhost:4310\r\nConnection: close\r\n\r\n`);
      expect(said).toMatch(/^HTTP\/1\.1 405 /);
      expect(said).toMatch(/allow: GET, HEAD, POST, PUT, PATCH, DELETE, OPTIONS/i);
    },
  );
});

describe("sockets", () => {
  let server: TestServer;
  const start = async (limits: Parameters<typeof startSyncServer>[0] = {}) => {
    server = await startSyncServer(limits);
    server.addPlan("p");
    offs.push(() => server.stop());
  };
  const page = (cookie: string, network?: string) => {
    const client = new RawClient(server.url, { kind: "plan", key: "p" }, { cookie, ...(network ? { network } : {}) });
    offs.push(() => client.end());
    return client;
  };

  test("one person has so many, in words; another is not concerned, and a closed one makes room", async () => {
    await start({ limits: { socketsOfPerson: 3 } });
    const cookie = server.host.signIn("jonas");
    const open = [await page(cookie).synced(), await page(cookie).synced(), await page(cookie).synced()];
    expect(await page(server.host.signIn("jonas")).closed()).toBe(CLOSE.tooManyPages.code);
    const ines = await page(server.host.signIn("ines")).synced();
    expect(ines.closeCode).toBeUndefined();
    open[0]?.end();
    await eventually("its place is free", () => server.rooms.health().connections === 3);
    expect((await page(cookie).synced()).closeCode).toBeUndefined();
  });

  test("strangers of one network leave room for those of others", async () => {
    await start({ limits: { strangersOfNetwork: 3, strangerMs: 60_000 } });
    let decide: () => void = () => undefined;
    const decided = new Promise<void>((resolve) => {
      decide = resolve;
    });
    server.host.authenticating = () => decided;
    for (let n = 0; n < 3; n++) await page("nobody", "203.0.113.7").opened();
    const fourth = page("nobody", "203.0.113.7");
    expect(await eventually("it is refused", () => fourth.refusedStatus)).toBe(503);
    const elsewhere = await page(server.host.signIn("ines"), "203.0.113.8").opened();
    decide();
    await elsewhere.synced();
  });

  test("a place is counted off once, however often it is left", () => {
    const places = new ConcurrencyLimit(2);
    const [first] = [places.take("a"), places.take("a")];
    expect(places.take("a")).toBeUndefined();
    expect(places.take("b")).toBeDefined();
    first?.();
    first?.();
    expect(places.take("a")).toBeDefined();
    expect(places.take("a")).toBeUndefined();
  });
});

test("what is secret is its owner's alone, also when it was copied there by hand", () => {
  const folder = mkdtempSync(join(tmpdir(), "springline-modes-"));
  offs.push(() => rmSync(folder, { recursive: true }));
  writeFileSync(join(folder, "secret"), "a secret of enough characters for anybody", { mode: 0o644 });
  const env = readEnv("live", { SPRINGLINE_DATA: folder });
  const old = process.umask(0o022);
  offs.push(() => process.umask(old));
  openDatabase(env.databaseFile).close();
  const db = openDatabase(env.databaseFile);
  offs.push(() => db.close());
  const modes = ["secret", "springline.sqlite", "springline.sqlite-wal", "springline.sqlite-shm"].map(
    (name) => statSync(join(folder, name)).mode & 0o777,
  );
  expect(modes).toEqual([0o600, 0o600, 0o600, 0o600]);
});

test.each([
  ["127.0.0.1", "http://localhost:4310", false],
  ["::1", "http://[::1]:4310", false],
  ["0.0.0.0", "http://localhost:4310", true],
  ["192.168.1.20", "http://192.168.1.20:4310", true],
  ["127.0.0.1", "https://plans.quay.example", true],
])("listening on %s as %s asks for a set-up code: %s", (host, origin, asks) => {
  expect(needsSetUpCode({ host, origin })).toBe(asks);
});

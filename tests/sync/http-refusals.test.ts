/** The program started for real where it must not run: one sentence on standard error, exit 1, nothing else. */
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer, type Server } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { insertStudio, writePurpose } from "#db/repos/studio-repo.ts";
import { DEMO_SECRET } from "#server/base/env.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";

const BUNDLES = join(ROOT, "dist-tests/refusals");
beforeAll(() => bundleServer({ main: "server/main.ts" }, BUNDLES, "external"));
let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), "springline-refusals-"));
});
afterEach(() => rmSync(dir, { recursive: true }));

function start(settings: Record<string, string>, ...args: string[]): Promise<{ code: number | null; error: string }> {
  const command = [join(BUNDLES, "main.js"), ...args];
  const env = { ...process.env, NODE_ENV: "production" as const, SPRINGLINE_DATA: dir, SPRINGLINE_LOG: "silent" };
  const child = spawn(process.execPath, command, { cwd: ROOT, env: { ...env, ...settings } });
  let error = "";
  child.stderr.on("data", (chunk: Buffer) => {
    error += chunk;
  });
  child.stdout.resume();
  return new Promise((done) => child.on("close", (code) => done({ code, error })));
}

const database = () => join(dir, "springline.sqlite");
const oneLine = (sentence: RegExp) => expect.stringMatching(new RegExp(`^${sentence.source}[^\\n]*\\n$`));

test("with the demo's secret", async () => {
  const ended = await start({ SPRINGLINE_SECRET: DEMO_SECRET });
  expect(ended).toEqual({ code: 1, error: oneLine(/The demo's secret is public/) });
});

test("with a short secret", async () => {
  const ended = await start({ SPRINGLINE_SECRET: "short" });
  expect(ended).toEqual({ code: 1, error: oneLine(/The secret is too short/) });
});

test("on a database that the demo made", async () => {
  const db = openDatabase(database());
  writePurpose(db, "demo");
  db.close();
  const ended = await start({});
  expect(ended).toEqual({ code: 1, error: oneLine(/.*springline\.sqlite is the demo's database/) });
});

test("as the demo, on a real studio's database", async () => {
  const db = openDatabase(database());
  insertStudio(db, { name: "Slipway Strength", town: "", soleAuthorMaySign: false, at: 1 });
  db.close();
  const ended = await start({}, "--demo");
  expect(ended).toEqual({ code: 1, error: oneLine(/.*springline\.sqlite holds a real studio/) });
});

test("on a database that another process writes", async () => {
  const db = openDatabase(database());
  const ended = await start({});
  db.close();
  expect(ended).toEqual({ code: 1, error: oneLine(/Another process \(\d+\) is using the database/) });
});

test("on an address in use", async () => {
  const server: Server = createServer();
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const address = server.address();
  const port = typeof address === "object" && address ? address.port : 0;
  const ended = await start({ PORT: String(port) });
  server.close();
  expect(ended).toEqual({ code: 1, error: oneLine(/Port \d+ on 127\.0\.0\.1 is in use by another program/) });
});

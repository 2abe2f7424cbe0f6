/** The log serves whoever runs the studio; it is no way to fill the disk, and none to end the server. */
import { execFileSync, spawn } from "node:child_process";
import { existsSync, mkdtempSync, openSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { CLOSE } from "#lib/protocol/close.ts";
import { RefusalLog } from "#server/limits/refusal-log.ts";
import { eventually } from "../support/eventually.ts";
import { RawClient } from "../support/raw-client.ts";
import { type LogLine, startSyncServer, type TestServer } from "../support/sync-server.ts";

const ROOT = join(import.meta.dirname, "../..");
let server: TestServer | undefined;
afterEach(async () => {
  await server?.stop();
  server = undefined;
});

test("fifty thousand refused frames of a reader are one line, and its socket is closed after a few", async () => {
  const here = await startSyncServer({ limits: { refusalLogMs: 40 } });
  server = here;
  const name = here.addPlan("log");
  here.host.rights.set("sam", { writes: false });
  const open = (user: string) => new RawClient(here.url, name, { cookie: here.host.signIn(user) }).synced();
  const [reader, writer] = [await open("sam"), await open("ines")];
  for (let n = 0; n < 50_000; n++) reader.sendPresence([{ clientId: 5, clock: n, state: { item: null } }]);
  expect(await reader.closed()).toBe(CLOSE.turnedAway.code);
  writer.edit((doc) => doc.getMap("words").set("one", true));
  await writer.saved();
  await eventually("it is told", () => here.log.some((line) => line.message === "refused"));
  const told = here.log.filter((line) => line.level !== "info").map((line) => line.details as { count: number });
  expect(told.length).toBeLessThanOrEqual(2);
  expect(told[0]).toMatchObject({ cause: "a reader's presence", people: ["sam"] });
  expect(told.reduce((sum, line) => sum + line.count, 0)).toBeLessThanOrEqual(21);
  for (const client of [reader, writer]) client.end();
});

test("a stock page that shows itself now and then reads on", async () => {
  const here = await startSyncServer({ limits: { refusals: 3, refusalsMs: 30 } });
  server = here;
  const name = here.addPlan("stock");
  here.host.rights.set("sam", { writes: false });
  const reader = await new RawClient(here.url, name, { cookie: here.host.signIn("sam") }).synced();
  const { refused } = here.rooms.health();
  for (let n = 1; n <= 6; n++) {
    reader.sendPresence([{ clientId: 5, clock: n, state: {} }]);
    await eventually("it is counted", () => here.rooms.health().refused === refused + n);
    if (n % 2 === 0) await new Promise((done) => setTimeout(done, 40));
  }
  expect(reader.closeCode).toBeUndefined();
  reader.end();
});

test("each cause has its line, with how often and some of the names", () => {
  const lines: LogLine[] = [];
  const warn = (details: object, message: string) => void lines.push({ level: "warn", details, message });
  const refusals = new RefusalLog({ info: warn, warn, error: warn }, 60_000);
  for (let n = 0; n < 1000; n++) refusals.note(n % 2 ? "forged" : "erasing", 1, `u${n}`);
  expect(lines).toEqual([]);
  refusals.tell();
  expect(lines.map((line) => line.details)).toMatchObject([
    { cause: "erasing", count: 500, people: ["u0", "u2", "u4", "u6", "u8"] },
    { cause: "forged", count: 500 },
  ]);
  refusals.tell();
  expect(lines).toHaveLength(2);
  expect(refusals.total).toBe(1000);
});

/** Runs a process that logs 5 MB, with standard output as given, until it says that it lived through it. */
async function livesThrough(stdout: "pipe" | number, broken: (child: ReturnType<typeof spawn>) => void): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "springline-log-"));
  const sign = join(folder, "alive");
  const args = ["--import", "tsx", join(ROOT, "tests/support/loud-log.ts"), sign];
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ["ignore", stdout, "pipe"] });
  let complaint = "";
  child.stderr?.on("data", (chunk) => (complaint += String(chunk)));
  broken(child);
  try {
    await eventually(`it lives: ${complaint}`, () => existsSync(sign) || child.exitCode !== null, 25_000);
    expect([existsSync(sign), complaint]).toEqual([true, ""]);
  } finally {
    child.kill("SIGKILL");
    rmSync(folder, { recursive: true });
  }
}

test("a full disk under the log does not end the process", () => {
  expect(execFileSync("sh", ["-c", "test -c /dev/full && echo there"]).toString()).toContain("there");
  return livesThrough(openSync("/dev/full", "w"), () => undefined);
});
test("a reader of the log that has gone does not end the process", () =>
  livesThrough("pipe", (child) => child.stdout?.destroy()));
test("a reader of the log that has stopped reading does not hold the process", () =>
  livesThrough("pipe", (child) => child.stdout?.pause()));

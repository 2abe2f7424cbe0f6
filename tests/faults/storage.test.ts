/** The disk fails: nothing is acknowledged, nothing is lost, and it heals by itself. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { beforeEach, expect, test } from "vitest";
import * as Y from "yjs";
import { readStoredDoc } from "#db/repos/doc-log-repo.ts";
import { planParts } from "#lib/doc/layout.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeEach(async () => {
  server = await startSyncServer({ limits: { retryFirstMs: 20, retryLongestMs: 80, idleMs: 30 } });
  server.addPlan("full");
  return () => server.stop();
});

const name = { kind: "plan", key: "full" } as const;
const page = (user = "ines", key = "full") =>
  new RawClient(server.url, { kind: "plan", key }, { cookie: server.host.signIn(user) });
const notes = (doc: Y.Doc) => planParts(doc).notes.toString();
function onDisk(key = "full"): string {
  const stored = readStoredDoc(server.db, `plan/${key}`);
  const doc = new Y.Doc();
  for (const row of [...(stored?.snapshots ?? []), ...(stored?.rows ?? [])]) Y.applyUpdate(doc, row.bytes);
  return notes(doc);
}
/** From here on the database cannot grow: SQLite answers SQLITE_FULL, as a full disk does. */
function fillDisk(): void {
  const pages = server.db.raw.pragma("page_count", { simple: true });
  server.db.raw.pragma(`max_page_count = ${pages}`);
}
const clearDisk = () => server.db.raw.pragma("max_page_count = 1073741823");
const BIG = "y".repeat(90_000);

test("[INV-02] a full disk: not acknowledged, not sent on, said; retried and healed with nothing lost", async () => {
  const [writer, peer] = [await page().synced(), await page("marta").synced()];
  await writer.saved();
  fillDisk();
  writer.edit((doc) => planParts(doc).notes.insert(0, BIG));
  await eventually("it is said", () => peer.newsOf("storage").at(-1)?.failing === true);
  writer.edit((doc) => planParts(doc).notes.insert(0, "and more. "));
  peer.edit((doc) => planParts(doc).title.insert(0, "My "));
  await eventually("tried several times", () => server.rooms.health().failing.length === 1);
  writer.sendStep1(Y.encodeStateVector(new Y.Doc()));
  writer.sendPresence([{ clientId: 1, clock: 1, state: { item: "a" } }]);
  await eventually("presence still travels", () => peer.presence().some((p) => p.clientId === 1));
  expect(writer.savedCount).toBe(1);
  expect(notes(peer.doc)).toBe("");
  expect(writer.heard.filter((h) => h.kind === "step2").length).toBe(1);

  clearDisk();
  await Promise.all([writer.saved(), peer.saved()]);
  await eventually("it is said again", () => writer.newsOf("storage").at(-1)?.failing === false);
  expect(writer.newsOf("storage")).toEqual([
    { t: "storage", failing: true },
    { t: "storage", failing: false },
  ]);
  await eventually("the peer has it", () => notes(peer.doc) === `and more. ${BIG}`);
  await eventually("the asker is answered", () => writer.heard.filter((h) => h.kind === "step2").length === 2);
  expect(onDisk()).toBe(`and more. ${BIG}`);
  expect(server.rooms.health().failing).toEqual([]);
  writer.end();
  peer.end();
});

test("[INV-02] the last page leaves while the disk is full: the room stays, heals, and the next page reads it", async () => {
  const writer = await page().synced();
  await writer.saved();
  fillDisk();
  writer.edit((doc) => planParts(doc).notes.insert(0, BIG));
  await eventually("it fails", () => server.rooms.health().failing.length === 1);
  writer.end();
  await eventually("nobody is there", () => server.rooms.health().connections === 0);
  const joiner = page("marta");
  expect(await joiner.closed()).toBe(4503);
  expect(server.rooms.withDoc(name, notes)).toBe("");
  expect(server.rooms.health().rooms).toBe(1);
  clearDisk();
  await eventually("it heals and goes", () => server.rooms.health().rooms === 0);
  const next = await page("marta").synced();
  expect(notes(next.doc)).toBe(BIG);
  next.end();
});

test("a change by the server on a full disk has not happened", async () => {
  const client = await page().synced();
  fillDisk();
  const write = () => server.rooms.transact(name, "lead", (doc) => planParts(doc).notes.insert(0, BIG));
  expect(write).toThrow(/cannot be/);
  expect(server.rooms.withDoc(name, notes)).toBe("");
  clearDisk();
  write();
  await eventually("the page hears", () => notes(client.doc) === BIG);
  client.end();
});

test("another process in the way (SQLITE_BUSY) is waited out", async () => {
  const writer = await page().synced();
  await writer.saved();
  server.db.raw.pragma("busy_timeout = 0");
  const other = new Database(server.temp.file);
  other.exec("begin immediate");
  writer.edit((doc) => planParts(doc).notes.insert(0, "patient"));
  await eventually("it is said", () => writer.newsOf("storage").at(-1)?.failing === true);
  expect(writer.savedCount).toBe(1);
  other.exec("rollback");
  other.close();
  await writer.saved();
  expect(onDisk()).toBe("patient");
  writer.end();
});

test("one room's row that cannot be stored does not hold up another room of the same turn", async () => {
  server.addPlan("poor");
  const [good, poor] = [await page().synced(), await page("marta", "poor").synced()];
  await Promise.all([good.saved(), poor.saved()]);
  server.db.raw.exec(`create temp trigger poison before insert on doc_update when new.name = 'plan/poor'
    begin select raise(abort, 'poison'); end`);
  poor.edit((doc) => planParts(doc).notes.insert(0, "poor"));
  good.edit((doc) => planParts(doc).notes.insert(0, "good"));
  await good.saved();
  await eventually("only one fails", () => server.rooms.health().failing.join() === "plan/poor");
  expect(good.newsOf("storage")).toEqual([]);
  server.db.raw.exec("drop trigger poison");
  await poor.saved();
  expect(onDisk("poor")).toBe("poor");
  good.end();
  poor.end();
});

test("stopping saves what was still in memory", async () => {
  const writer = await page().synced();
  await writer.saved();
  fillDisk();
  writer.edit((doc) => planParts(doc).notes.insert(0, BIG));
  await eventually("it fails", () => server.rooms.health().failing.length === 1);
  const stopped = server.rooms.stop(5000);
  clearDisk();
  expect(await stopped).toEqual({ unsaved: [] });
  expect(onDisk()).toBe(BIG);
  expect(await writer.closed()).toBe(4505);
});

test("stopping with a disk that stays full ends in time and says what could not be saved", async () => {
  const writer = await page().synced();
  await writer.saved();
  fillDisk();
  writer.edit((doc) => planParts(doc).notes.insert(0, BIG));
  await eventually("it fails", () => server.rooms.health().failing.length === 1);
  const started = performance.now();
  expect(await server.rooms.stop(300)).toEqual({ unsaved: ["plan/full"] });
  expect(performance.now() - started).toBeLessThan(2000);
  writer.end();
});

const canMount = spawnSync("unshare", ["-rm", "mount", "-t", "tmpfs", "tmpfs", tmpdir()]).status === 0;
test.skipIf(!canMount)(
  "[INV-02] a disk that is full to the last block: refused in words, said on pages, whole once there is room",
  () => {
    const disk = mkdtempSync(join(tmpdir(), "springline-disk-"));
    const mounted = `mount -t tmpfs -o size=24m tmpfs "$0" && export TMPDIR="$0" && exec "$@"`;
    const child = [process.execPath, "--import", "tsx", "tests/support/full-disk.ts", disk];
    const said = spawnSync("unshare", ["-rm", "sh", "-c", mounted, disk, ...child], {
      cwd: join(import.meta.dirname, "../.."),
      encoding: "utf8",
    });
    rmSync(disk, { recursive: true, force: true });
    expect(said.stderr).toBe("");
    expect(JSON.parse(said.stdout)).toEqual({
      full: {
        ...{ free: 0, saved: 1, peerSees: 0, plans: 0, health: 503 },
        refused: "The server's disk is full. Nothing was changed; try again later.",
      },
      healed: { told: false, made: true, whole: ["ok", "ok"] },
    });
  },
  60_000,
);

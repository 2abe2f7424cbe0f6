/** Append, then acknowledge: what anybody else has seen, and what is called saved, stands on disk. */

import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { readStoredDoc } from "#db/repos/doc-log-repo.ts";
import { planParts } from "#lib/doc/layout.ts";
import { MONTH_DOC_VERSION } from "#lib/programme/layout.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeAll(async () => {
  server = await startSyncServer();
});
afterAll(() => server.stop());

const page = (key: string, user: string, options = {}) =>
  new RawClient(server.url, { kind: "plan", key }, { cookie: server.host.signIn(user), ...options });

function onDisk(key: string): Y.Doc {
  const stored = readStoredDoc(server.db, `plan/${key}`);
  const doc = new Y.Doc();
  for (const row of stored?.rows ?? []) Y.applyUpdate(doc, row.bytes);
  return doc;
}

test("when a peer hears of a change it is on disk already, and its writer is told so", async () => {
  server.addPlan("first");
  const writer = await page("first", "ines").synced();
  const peer = await page("first", "marta").synced();
  let diskWhenHeard = "";
  peer.doc.on("update", () => {
    diskWhenHeard = planParts(onDisk("first")).title.toString();
  });
  writer.edit((doc) => planParts(doc).title.insert(0, "Slow "));
  await eventually("the peer hears", () => diskWhenHeard !== "");
  expect(diskWhenHeard).toBe("Slow Pull and press");
  await writer.saved();
  expect(writer.savedCount).toBe(2);
  expect(writer.heard.some((h) => h.kind === "update")).toBe(false);
  writer.end();
  peer.end();
});

test("messages that change nothing count as saved all the same", async () => {
  server.addPlan("same");
  const writer = await page("same", "ines").synced();
  const before = readStoredDoc(server.db, "plan/same")?.rows.length;
  writer.sendUpdate(Y.encodeStateAsUpdate(writer.doc));
  writer.sendStep2(Y.encodeStateAsUpdate(writer.doc));
  await writer.saved();
  expect(writer.savedCount).toBe(3);
  expect(readStoredDoc(server.db, "plan/same")?.rows.length).toBe(before);
  writer.end();
});

test("what a writer typed in one turn is one row in their name, and makes them an author once", async () => {
  server.addPlan("author");
  const writer = await page("author", "jonas").synced();
  for (let i = 0; i < 5; i++) writer.edit((doc) => planParts(doc).notes.insert(0, `${i} `));
  await writer.saved();
  const authors = server.db.raw
    .prepare<[], string>("select user_id from plan_author where plan_id = 'author' order by user_id")
    .pluck()
    .all();
  expect(authors).toEqual(["jonas", "u-maker"]);
  const rows = server.db.raw
    .prepare("select 1 from doc_update where name = 'plan/author' and actor_id = 'jonas'")
    .all();
  expect(rows.length).toBeGreaterThanOrEqual(1);
  expect(rows.length).toBeLessThanOrEqual(5);
  writer.end();
});

test("a step 1 is answered with durable content even in the turn of an edit", async () => {
  server.addPlan("asked");
  const writer = await page("asked", "ines").synced();
  writer.edit((doc) => planParts(doc).title.insert(0, "New "));
  writer.heard.length = 0;
  writer.sendStep1(Y.encodeStateVector(new Y.Doc()));
  const answer = await eventually("an answer", () => writer.heard.find((h) => h.kind === "step2"));
  const copy = new Y.Doc();
  if (answer.kind === "step2") Y.applyUpdate(copy, answer.body);
  expect(planParts(copy).title.toString()).toBe("New Pull and press");
  expect(planParts(onDisk("asked")).title.toString()).toBe("New Pull and press");
  writer.end();
});

test("what was typed while the connection was opening is kept and counted once the rest has been offered", async () => {
  server.addPlan("early");
  const offline = new Y.Doc();
  Y.applyUpdate(offline, Y.encodeStateAsUpdate(onDisk("early")));
  planParts(offline).notes.insert(0, "written offline");
  const before = Y.encodeStateVector(offline);
  planParts(offline).notes.insert(0, "typed at once, ");
  const early = Y.encodeStateAsUpdate(offline, before);

  const client = await page("early", "ines", { syncs: false }).opened();
  client.sendUpdate(early);
  client.sendStep1(Y.encodeStateVector(offline));
  await eventually("an answer", () => client.heard.some((h) => h.kind === "step2"));
  expect(client.savedCount).toBe(0);
  client.sendStep2(Y.encodeStateAsUpdate(offline));
  await client.saved();
  expect(planParts(onDisk("early")).notes.toString()).toBe("typed at once, written offline");
  client.end();
});

test("a hole that the offer does not fill ends the connection, and nothing waits in the document", async () => {
  server.addPlan("hole");
  const client = await page("hole", "ines").synced();
  planParts(client.doc).notes.insert(0, "lost on the way");
  const before = Y.encodeStateVector(client.doc);
  planParts(client.doc).notes.insert(0, "x");
  client.sendUpdate(Y.encodeStateAsUpdate(client.doc, before));
  expect(await client.closed()).toBe(4500);
  expect(server.rooms.withDoc({ kind: "plan", key: "hole" }, (doc) => doc.store.pendingStructs)).toBe(null);
  client.end();
});

test("a month is made when it is first opened, once", async () => {
  const name = { kind: "month", key: "2031-05" } as const;
  const [a, b] = await Promise.all(
    ["ines", "marta"].map((user) =>
      new RawClient(server.url, name, { cookie: server.host.signIn(user), query: `d=${MONTH_DOC_VERSION}` }).synced(),
    ),
  );
  expect(server.rooms.generation(name)).toBeDefined();
  expect(readStoredDoc(server.db, "month/2031-05")?.rows.length).toBe(1);
  a?.end();
  b?.end();
});

test("[INV-01] a peer need not wait for the disk itself; saved is said only once the disk has it", async () => {
  let release = () => {};
  let refuse = true;
  const hard = new Promise<void>((resolve) => {
    release = resolve;
  });
  const slow = await startSyncServer({
    limits: { retryFirstMs: 5 },
    sync: async () => {
      await hard;
      if (!refuse) return;
      refuse = false;
      throw new Error("the disk says no, once");
    },
  });
  slow.addPlan("slow");
  const open = (user: string) =>
    new RawClient(slow.url, { kind: "plan", key: "slow" }, { cookie: slow.host.signIn(user) }).synced();
  const writer = await open("ines");
  const peer = await open("marta");
  writer.edit((doc) => planParts(doc).title.insert(0, "Slow "));
  await eventually("the peer hears", () => planParts(peer.doc).title.toString() === "Slow Pull and press");
  expect(writer.savedCount).toBe(0);
  release();
  await writer.saved();
  expect(refuse).toBe(false);
  expect(slow.log.map((line) => line.message)).toContain("the log could not be synced to the disk; retrying");
  writer.end();
  peer.end();
  await slow.stop();
});

test("answers that come close together share a sync, and every one comes", async () => {
  const syncEveryMs = 100;
  const began: number[] = [];
  const paced = await startSyncServer({
    limits: { syncEveryMs },
    sync: async () => {
      began.push(performance.now());
    },
  });
  paced.addPlan("paced");
  const open = (user: string) =>
    new RawClient(paced.url, { kind: "plan", key: "paced" }, { cookie: paced.host.signIn(user) }).synced();
  const writers = await Promise.all(["ines", "marta"].map(open));
  for (let n = 0; n < 12; n++) {
    for (const writer of writers) writer.edit((doc) => planParts(doc).notes.insert(0, "a"));
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  for (const writer of writers) await writer.saved();
  const gaps = began.slice(1).map((at, n) => at - (began[n] ?? 0));
  expect(began.length).toBeGreaterThan(1);
  // Timers of Node may be early by a millisecond.
  expect(Math.min(...gaps)).toBeGreaterThan(syncEveryMs - 2);
  for (const writer of writers) writer.end();
  await paced.stop();
});

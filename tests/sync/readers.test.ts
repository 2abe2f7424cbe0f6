/** Read-only is enforced by the server: update, step 2 and presence, whatever the page shows. */
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
const name = { kind: "plan", key: "held" } as const;
beforeAll(async () => {
  server = await startSyncServer();
  server.addPlan("held");
  server.host.rights.set("sam", { writes: false });
});
afterAll(() => server.stop());

let reader: RawClient;
let writer: RawClient;
beforeEach(async () => {
  reader = await new RawClient(server.url, name, { cookie: server.host.signIn("sam") }).synced();
  writer = await new RawClient(server.url, name, { cookie: server.host.signIn("ines") }).synced();
  await reader.saved();
  return () => {
    reader.end();
    writer.end();
  };
});

const title = () => server.rooms.withDoc(name, (doc) => planParts(doc).title.toString());
const refused = () => server.rooms.health().refused;

test("a reader reads, and is told what they may do", async () => {
  expect(planParts(reader.doc).title.toString()).toBe(title());
  expect(reader.newsOf("rights")).toEqual([{ t: "rights", writes: false, comments: true }]);
});

test("[INV-10] a reader's update is refused and closes; the same update of a writer is taken", async () => {
  const before = title();
  const count = refused();
  const update = reader.edit((doc) => planParts(doc).title.insert(0, "Mine! "));
  expect(await reader.closed()).toBe(4403);
  expect(title()).toBe(before);
  expect(refused()).toBe(count + 1);
  writer.sendUpdate(update);
  await writer.saved();
  expect(title()).toBe(`Mine! ${before}`);
});

test("[INV-10] a reader's step 2 with something new is refused; a writer's is taken", async () => {
  const before = title();
  planParts(reader.doc).title.insert(0, "Offered ");
  const offer = Y.encodeStateAsUpdate(reader.doc);
  reader.sendStep2(offer);
  expect(await reader.closed()).toBe(4403);
  expect(title()).toBe(before);
  writer.sendStep2(offer);
  await writer.saved();
  expect(title()).toBe(`Offered ${before}`);
});

test("a reader's deletion is something new as well", async () => {
  const before = title();
  reader.edit((doc) => planParts(doc).title.delete(0, 1));
  expect(await reader.closed()).toBe(4403);
  expect(title()).toBe(before);
});

test("a reader's step 2 and update with nothing new are no offence", async () => {
  reader.sendStep2(Y.encodeStateAsUpdate(reader.doc));
  reader.sendUpdate(Y.encodeStateAsUpdate(reader.doc));
  await reader.saved();
  expect(reader.savedCount).toBe(3);
  expect(reader.closeCode).toBeUndefined();
});

test("[INV-10] a reader's presence is shown to nobody, a writer's is; `present` names both", async () => {
  const count = refused();
  reader.sendPresence([{ clientId: 11, clock: 1, state: { item: "a" } }]);
  await eventually("it is counted", () => refused() === count + 1);
  writer.sendPresence([{ clientId: 12, clock: 1, state: { item: "b" } }]);
  await eventually("the writer is seen", () => reader.presence().some((p) => p.clientId === 12));
  expect(reader.closeCode).toBeUndefined();
  expect(writer.presence().some((p) => p.clientId === 11)).toBe(false);
  expect(writer.newsOf("present").at(-1)?.people).toEqual([
    { userId: "ines", name: "Name of ines", writes: true },
    { userId: "sam", name: "Name of sam", writes: false },
  ]);
});

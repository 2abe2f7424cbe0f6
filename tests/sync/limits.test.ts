/** What one message and one slow reader may cost, and that nothing else is lost by refusing them. */
import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeAll(async () => {
  server = await startSyncServer();
});
afterAll(() => server.stop());

const page = (key: string, user = "ines") =>
  new RawClient(server.url, { kind: "plan", key }, { cookie: server.host.signIn(user) }).synced();
const notes = (key: string) => server.rooms.withDoc({ kind: "plan", key }, (doc) => planParts(doc).notes.toString());

test("a message above 1 MiB is refused with 4413; what came before it is saved, and just below is taken", async () => {
  const large = server.addPlan("large");
  const client = await page("large");
  client.edit((doc) => planParts(doc).notes.insert(0, "before"));
  client.edit((doc) => planParts(doc).notes.insert(0, "x".repeat(1024 * 1024)));
  expect(await client.closed()).toBe(4413);
  expect(notes("large")).toBe("before");
  const other = await page("large");
  other.edit((doc) => doc.getText("elsewhere").insert(0, "y".repeat(1024 * 1024 - 200)));
  await other.saved();
  const length = server.rooms.withDoc(large, (doc) => doc.getText("elsewhere").length);
  expect(length).toBe(1024 * 1024 - 200);
  client.end();
  other.end();
});

test("a frame above 8 MiB is stopped by the socket layer, and the room goes on", async () => {
  server.addPlan("huge");
  const [client, other] = [await page("huge"), await page("huge", "marta")];
  client.sendUpdate(new Uint8Array(9 * 1024 * 1024));
  expect([1009, 1006]).toContain(await client.closed());
  other.edit((doc) => planParts(doc).notes.insert(0, "still here"));
  await other.saved();
  expect(notes("huge")).toBe("still here");
  client.end();
  other.end();
});

const MALFORMED: [string, (client: RawClient) => void][] = [
  ["an update of noise", (c) => c.sendUpdate(new Uint8Array([9, 200, 1, 255, 255, 3]))],
  ["a truncated update", (c) => c.sendUpdate(Y.encodeStateAsUpdate(c.doc).slice(0, -3))],
  ["an unknown message type", (c) => c.ws.send(new Uint8Array([77, 1]))],
  ["a sync message of unknown kind", (c) => c.ws.send(new Uint8Array([0, 9, 0]))],
  ["an empty frame", (c) => c.ws.send(new Uint8Array([]))],
  ["a text frame", (c) => c.ws.send("hello")],
  ["a state vector of noise", (c) => c.sendStep1(new Uint8Array([200, 200]))],
  ["an awareness update of noise", (c) => c.ws.send(new Uint8Array([1, 3, 5, 1, 2]))],
];
test.each(MALFORMED)("%s closes that page with 4400 and nobody else", async (label, send) => {
  const key = `bad-${MALFORMED.findIndex(([l]) => l === label)}`;
  server.addPlan(key);
  const [bad, good] = [await page(key), await page(key, "marta")];
  send(bad);
  expect(await bad.closed()).toBe(4400);
  good.edit((doc) => planParts(doc).notes.insert(0, "fine"));
  await good.saved();
  expect(notes(key)).toBe("fine");
  expect(good.closeCode).toBeUndefined();
  bad.end();
  good.end();
});

test("a reader that stops reading is cut off above 8 MiB; the writer and a reader that reads are not", async () => {
  server.addPlan("slow");
  const [writer, slow, quick] = [await page("slow"), await page("slow", "jonas"), await page("slow", "marta")];
  slow.ws.pause();
  const there = () =>
    writer
      .newsOf("present")
      .at(-1)
      ?.people.map((p) => p.userId) ?? [];
  expect(there()).toContain("jonas");
  for (let i = 0; i < 40 && there().includes("jonas"); i++) {
    // Replaced each time: the document stays small, the traffic does not.
    writer.edit((doc) => planParts(doc).head.set("blob", "z".repeat(900 * 1024)));
    await writer.saved();
  }
  await eventually("jonas is gone", () => !there().includes("jonas"));
  await eventually("the other has heard all", () => planParts(quick.doc).head.get("blob") !== undefined);
  expect(quick.closeCode).toBeUndefined();
  expect(writer.closeCode).toBeUndefined();
  for (const client of [writer, slow, quick]) client.end();
});

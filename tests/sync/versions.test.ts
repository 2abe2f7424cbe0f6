/** A page, a document and a history that do not fit this program are refused before a byte of the document is sent. */
import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
const name = { kind: "plan", key: "v" } as const;
beforeAll(async () => {
  server = await startSyncServer();
  server.addPlan("v");
});
afterAll(() => server.stop());

const open = (query: string, key = "v") =>
  new RawClient(server.url, { kind: "plan", key }, { cookie: server.host.signIn("ines"), query });

test.each(["", "d=1&e=3", "d=2", "d=2&e=2", "d=x&e=3", "d=3&e=3", "d=2&e=4"])(
  "a page of other versions (%s) must reload",
  async (query) => {
    const client = open(query);
    expect(await client.closed()).toBe(4426);
    expect(client.heard).toEqual([]);
  },
);

test("a page of these versions is let in, and hears which history it reads", async () => {
  const client = await open("d=2&e=3").synced();
  expect(client.newsOf("generation")).toEqual([{ t: "generation", generation: server.rooms.generation(name) }]);
  client.end();
});

test("a page that holds another history is refused; one of this history is not", async () => {
  const other = open("d=2&e=3&g=another");
  expect(await other.closed()).toBe(4410);
  expect(other.heard).toEqual([]);
  const own = await open(`d=2&e=3&g=${server.rooms.generation(name)}`).synced();
  own.end();
});

test("[INV-17] a document of a newer program is refused and left as it is", async () => {
  server.addPlan("newer");
  const newer = { kind: "plan", key: "newer" } as const;
  server.rooms.transact(newer, "u", (doc) => {
    planParts(doc).meta.set("version", 3);
    planParts(doc).meta.set("something-new", true);
  });
  const rows = () => server.db.raw.prepare("select count(*) from doc_update where name = 'plan/newer'").pluck().get();
  await server.rooms.stop();
  const again = await startSyncServer({ temp: { ...server.temp, open: () => server.db, remove: () => undefined } });
  const before = rows();
  const client = new RawClient(again.url, newer, { cookie: again.host.signIn("ines") });
  expect(await client.closed()).toBe(4409);
  expect(client.heard).toEqual([]);
  expect(rows()).toBe(before);
  expect(() => again.rooms.withDoc(newer, () => 1)).toThrow(/newer version/);
  const fine = await new RawClient(again.url, name, { cookie: again.host.signIn("ines") }).synced();
  fine.end();
  await again.halt();
});

test("an older document is carried forward, on disk, before anybody sees it", async () => {
  const fresh = await startSyncServer();
  const old = new Y.Doc();
  old.getText("title").insert(0, "From before");
  fresh.rooms.create({ kind: "plan", key: "old" }, old, "u");
  const client = new RawClient(fresh.url, { kind: "plan", key: "old" }, { cookie: fresh.host.signIn("ines") });
  await client.synced();
  expect(planParts(client.doc).meta.get("version")).toBe(2);
  const actors = fresh.db.raw.prepare("select actor_id from doc_update where name = 'plan/old'").pluck().all();
  expect(actors).toEqual(["u", "program"]);
  client.end();
  await fresh.stop();
});

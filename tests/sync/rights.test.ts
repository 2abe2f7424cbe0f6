/** Rights reach open sockets within a second: roles, sessions, sharing, deletion. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { planParts } from "#lib/doc/layout.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeAll(async () => {
  server = await startSyncServer();
});
afterAll(() => server.stop());

let plans = 0;
async function open(user: string) {
  const name = server.addPlan(`rights-${plans++}`);
  const cookie = server.host.signIn(user);
  const client = await new RawClient(server.url, name, { cookie }).synced();
  return { name, cookie, client };
}
const SECOND = 1000;

test("a session that ends in mid-edit closes its socket within a second; nothing after it is taken", async () => {
  const { name, cookie, client } = await open("ines");
  client.edit((doc) => planParts(doc).notes.insert(0, "kept"));
  await client.saved();
  server.host.ended.add(cookie);
  expect(await client.closed(SECOND)).toBe(4401);
  expect(server.rooms.withDoc(name, (doc) => planParts(doc).notes.toString())).toBe("kept");
  const again = new RawClient(server.url, name, { cookie });
  expect(await again.closed()).toBe(4401);
  const fresh = await new RawClient(server.url, name, { cookie: server.host.signIn("ines") }).synced();
  client.end();
  fresh.end();
});

test("who loses the right to read is closed with 4403 within a second, others stay", async () => {
  const { name, client } = await open("jonas");
  const other = await new RawClient(server.url, name, { cookie: server.host.signIn("marta") }).synced();
  server.host.rights.set("jonas", { reads: false });
  expect(await client.closed(SECOND)).toBe(4403);
  expect(other.closeCode).toBeUndefined();
  const again = new RawClient(server.url, name, { cookie: server.host.signIn("jonas") });
  expect(await again.closed()).toBe(4404);
  server.host.rights.delete("jonas");
  for (const c of [client, other, again]) c.end();
});

test("who loses the right to write hears so within a second, goes on reading, and is held to it", async () => {
  const { name, client } = await open("petra");
  client.sendPresence([{ clientId: 5, clock: 1, state: { item: "a" } }]);
  const other = await new RawClient(server.url, name, { cookie: server.host.signIn("marta") }).synced();
  await eventually("she is seen", () => other.presence().some((p) => p.clientId === 5));
  server.host.rights.set("petra", { writes: false });
  await eventually("she is told", () => client.newsOf("rights").at(-1)?.writes === false, SECOND);
  await eventually("her presence goes", () => other.presence().some((p) => p.clientId === 5 && p.state === null));
  other.edit((doc) => planParts(doc).notes.insert(0, "news"));
  await eventually("she still reads", () => planParts(client.doc).notes.toString() === "news");
  client.edit((doc) => planParts(doc).notes.insert(0, "too late"));
  expect(await client.closed()).toBe(4403);
  server.host.rights.delete("petra");
  client.end();
  other.end();
});

test("`refreshAccess` applies at once; gaining the right asks for what the page holds", async () => {
  server.host.rights.set("sam", { writes: false });
  const { name, client } = await open("sam");
  planParts(client.doc).notes.insert(0, "held back");
  client.heard.length = 0;
  server.host.rights.delete("sam");
  server.rooms.refreshAccess();
  await client.saved();
  expect(client.newsOf("rights")).toEqual([{ t: "rights", writes: true, comments: true }]);
  expect(server.rooms.withDoc(name, (doc) => planParts(doc).notes.toString())).toBe("held back");
  client.end();
});

test("a plan that is deleted closes its sockets", async () => {
  const { client } = await open("ines");
  server.host.rights.set("ines", { exists: false });
  expect(await client.closed(SECOND)).toBe(4404);
  server.host.rights.delete("ines");
  client.end();
});

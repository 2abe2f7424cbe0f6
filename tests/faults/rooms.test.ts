/** Code that throws and bytes that rot: they end one room or one opening, say so, and store nothing over anything. */
import { beforeEach, expect, test } from "vitest";
import { readStoredDoc } from "#db/repos/doc-log-repo.ts";
import { planParts } from "#lib/doc/layout.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeEach(async () => {
  server = await startSyncServer({ limits: { idleMs: 30 } });
  return () => server.stop();
});
const page = (key: string, user = "ines") =>
  new RawClient(server.url, { kind: "plan", key }, { cookie: server.host.signIn(user) });
const errors = () => server.log.filter((line) => line.level === "error").map((line) => line.message);

test("[INV-03] a listener that throws breaks its room only: pages reconnect, nothing is lost, the other room never notices", async () => {
  const broken = server.addPlan("broken");
  server.addPlan("well");
  const [ines, marta, other] = [
    await page("broken").synced(),
    await page("broken", "marta").synced(),
    await page("well").synced(),
  ];
  server.rooms.withDoc(broken, (doc) =>
    doc.on("update", () => {
      throw new Error("a listener failed");
    }),
  );
  ines.edit((doc) => planParts(doc).notes.insert(0, "typed into a breaking room"));
  expect(await ines.closed()).toBe(4500);
  expect(await marta.closed()).toBe(4500);
  expect(errors()).toEqual(["the room is broken and is read again from disk"]);

  const again = await page("broken", "marta").synced();
  expect(planParts(again.doc).notes.toString()).toBe("typed into a breaking room");
  again.edit((doc) => planParts(doc).notes.insert(0, "Now "));
  await again.saved();
  other.edit((doc) => planParts(doc).notes.insert(0, "well"));
  await other.saved();
  expect(other.closeCode).toBeUndefined();
  for (const client of [ines, marta, again, other]) client.end();
});

async function emptyRoom(key: string): Promise<void> {
  const client = await page(key).synced();
  client.edit((doc) => planParts(doc).notes.insert(0, "one "));
  await client.saved();
  client.edit((doc) => planParts(doc).notes.insert(4, "two"));
  await client.saved();
  client.end();
  await eventually("the room goes", () => server.rooms.health().rooms === 0);
}
/** Rows again in place of the snapshot that leaving made, so that there is a log to damage. */
const dropSnapshots = () => server.db.raw.prepare("delete from doc_snapshot").run();
const dump = () => JSON.stringify([readStoredDoc(server.db, "plan/rot")]);

const DAMAGE: [string, string][] = [
  [
    "cut in half",
    "update doc_update set bytes = substr(bytes, 1, length(bytes) / 2) where seq = (select max(seq) from doc_update)",
  ],
  [
    "overwritten with noise",
    "update doc_update set bytes = x'ffffffffffff03' where seq = (select max(seq) from doc_update)",
  ],
  ["emptied", "update doc_update set bytes = x'' where seq = (select max(seq) from doc_update)"],
  ["missing from the middle", "delete from doc_update where seq = (select max(seq) - 1 from doc_update)"],
];
test.each(DAMAGE)(
  "a log row %s: refused with a sentence, logged, and nothing is stored over it",
  async (_label, sql) => {
    const name = server.addPlan("rot");
    await emptyRoom("rot");
    dropSnapshots();
    server.db.raw.exec(sql);
    const before = dump();
    const client = page("rot");
    expect(await client.closed()).toBe(4411);
    expect(client.heard).toEqual([]);
    expect(errors()).toContain("the log is damaged");
    expect(() => server.rooms.withDoc(name, () => 1)).toThrow(/cannot be opened/);
    expect(() => server.rooms.transact(name, "u", (doc) => planParts(doc).notes.insert(0, "x"))).toThrow(
      /cannot be opened/,
    );
    expect(dump()).toBe(before);
    server.addPlan("whole");
    const other = await page("whole").synced();
    other.end();
  },
);

test("a damaged newest snapshot: the one before it and the rows since say the same", async () => {
  server.addPlan("rot");
  await emptyRoom("rot");
  const client = await page("rot").synced();
  client.edit((doc) => planParts(doc).notes.insert(7, " three"));
  await client.saved();
  client.end();
  await eventually("the room goes", () => server.rooms.health().rooms === 0);
  expect(readStoredDoc(server.db, "plan/rot")?.snapshots.length).toBe(2);
  server.db.raw.exec("update doc_snapshot set bytes = x'01ff' where seq = (select max(seq) from doc_snapshot)");
  const reader = await page("rot", "marta").synced();
  expect(planParts(reader.doc).notes.toString()).toBe("one two three");
  expect(errors()).toEqual(["a snapshot is damaged; the one before it was used"]);
  reader.end();
});

test("a host whose answers throw costs its own question only", async () => {
  server.addPlan("asked");
  const accessTo = server.host.accessTo.bind(server.host);
  const client = await page("asked").synced();
  server.host.accessTo = () => {
    throw new Error("the tables are away");
  };
  expect(await client.closed(1500)).toBe(4503);
  server.host.accessTo = accessTo;
  const again = await page("asked").synced();
  again.end();
});

test("a thousand refused pages leave no room, no timer and no socket behind", async () => {
  server.addPlan("refused");
  server.host.rights.set("sam", { reads: false });
  const cookie = server.host.signIn("sam");
  const timers = () => process.getActiveResourcesInfo().filter((kind) => kind === "Timeout").length;
  const before = timers();
  for (let batch = 0; batch < 10; batch++) {
    const pages = Array.from({ length: 100 }, (_, i) =>
      i % 2 ? page("refused-none") : new RawClient(server.url, { kind: "plan", key: "refused" }, { cookie }),
    );
    const codes = await Promise.all(pages.map((p) => p.closed(10_000)));
    expect(new Set(codes)).toEqual(new Set([4404]));
  }
  expect(server.rooms.health()).toMatchObject({ rooms: 0, connections: 0 });
  await eventually("timers are back to where they were", () => timers() <= before);
});

/** The log of a large document is folded on another thread: nothing that is typed meanwhile is lost, and nobody waits for it. */
import { afterEach, expect, test } from "vitest";
import { readStoredDoc } from "#db/repos/doc-log-repo.ts";
import { planParts } from "#lib/doc/layout.ts";
import { foldInThread } from "#server/doc-log/fold-in-thread.ts";
import { type Fold, loadDoc } from "#server/doc-log/stored-doc.ts";
import type { Limits } from "#server/sync/limits.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer | undefined;
afterEach(() => server?.stop());

const limits = { foldHerePieces: 1, compactRows: 20, compactQuietMs: 50 };
const start = async (fold: (file: string) => Fold, large: Partial<Limits> = {}): Promise<TestServer> => {
  server = await startSyncServer({ limits: { ...limits, ...large }, fold });
  server.addPlan("long");
  return server;
};
const writer = ({ url, host }: TestServer) =>
  new RawClient(url, { kind: "plan", key: "long" }, { cookie: host.signIn("ines") }).synced();

async function writeRows(client: RawClient, count: number): Promise<void> {
  for (let n = 0; n < count; n++) {
    client.edit((doc) => planParts(doc).notes.insert(0, "word "));
    await client.saved();
  }
}
const snapshots = ({ db }: TestServer) => readStoredDoc(db, "plan/long")?.snapshots.length ?? 0;
const onDisk = ({ db }: TestServer) => {
  const silent = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const doc = loadDoc(db, "plan/long", silent)?.doc;
  return doc ? planParts(doc).notes.toString() : "";
};

const LARGE = [
  ["pieces", {}],
  ["rows", { foldHerePieces: 5000, foldHereRows: 10 }],
] as const;
test.each(LARGE)(
  "by its %s: words that come while it is folded follow the snapshot",
  async (_, large) => {
    let folding = 0;
    let go: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      go = resolve;
    });
    const s = await start(
      (file) => async (mark) => {
        folding++;
        const bytes = await foldInThread(file)(mark);
        await held;
        return bytes;
      },
      large,
    );
    const client = await writer(s);
    await writeRows(client, 25);
    await eventually("it is being folded", () => folding === 1);
    await writeRows(client, 5);
    expect(snapshots(s)).toBe(0);
    go();
    await eventually("it is folded", () => snapshots(s) === 1, 20_000);
    expect(readStoredDoc(s.db, "plan/long")?.rows.length).toBeGreaterThanOrEqual(5);
    expect(onDisk(s)).toBe(planParts(client.doc).notes.toString());
    client.end();
  },
  30_000,
);

test("a log that does not say what its live copy says stays as it is, and is told of", async () => {
  const s = await start(foldInThread);
  const client = await writer(s);
  await writeRows(client, 19);
  // The last row but one is another one than was said.
  s.db.raw.exec("update doc_update set bytes = (select bytes from doc_update order by seq limit 1) where seq = 15");
  const before = readStoredDoc(s.db, "plan/long")?.rows.length ?? 0;
  await writeRows(client, 3);
  await eventually(
    "it is told of",
    () => s.log.some(({ message }) => message.includes("could not be compacted")),
    20_000,
  );
  expect(snapshots(s)).toBe(0);
  expect(readStoredDoc(s.db, "plan/long")?.rows.length).toBe(before + 3);
  client.end();
}, 30_000);

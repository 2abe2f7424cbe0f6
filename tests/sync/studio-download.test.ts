/** The export as a download: one at a time, of one moment while people write, for managers alone, and gone from the disk. */
import { createWriteStream, existsSync, readdirSync, writeFileSync } from "node:fs";
import { open } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { ReadableStream } from "node:stream/web";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openDatabase } from "#db/connection.ts";
import { workspaceTables } from "#db/file/table-rows.ts";
import { listPlanRows } from "#db/repos/plan-repo.ts";
import { addToRecord, recordHead } from "#db/repos/record-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { planParts } from "#lib/doc/layout.ts";
import type { Actor } from "#lib/policy/can.ts";
import { planDoc } from "#server/context/live-documents.ts";
import type { Springline } from "#server/context/springline.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { downloadStudio } from "#server/studio-files/download-studio.ts";
import { createExportRuns } from "#server/studio-files/export-runs.ts";
import { importStudio } from "#server/studio-files/import-studio.ts";
import { sentOnce } from "#server/studio-files/sent-once.ts";
import { personCalled } from "#tests/support/every-table.ts";
import { openSeeded, type SeededDatabase } from "#tests/support/seeded-database.ts";

let studio: SeededDatabase;
let app: Springline;
const actor = (email: string): Actor => ({ kind: "person", ...personCalled(app, email) });

beforeAll(async () => {
  studio = await openSeeded();
  const exports = createExportRuns({ app: studio.app });
  app = Object.create(studio.app, { care: { value: { ...studio.app.care, exports } } }) as Springline;
}, 60_000);
afterAll(() => studio.remove());

/** Something in a document, and a row of the record that says how many there are. */
function write(n: number): void {
  const marta = personCalled(app, "marta@tholepin.example").id;
  const plan = listPlanRows(app.db).find((row) => row.ownerId === marta)?.id ?? "";
  app.documents.transact(planDoc(plan), marta, (doc) => planParts(doc).head.set("written", n));
  const entry = { at: app.now(), actorId: marta, subject: `plan/${plan}`, kind: "written", body: { n } };
  inTransaction(app.db, () => addToRecord(app.db, entry));
}

test("one moment while people write; what is written later is not in it", async () => {
  const before = recordHead(app.db).seq;
  const making = downloadStudio(app, actor("petra@tholepin.example"));
  expect(await downloadStudio(app, actor("petra@tholepin.example"))).toMatchObject({ error: { code: "export-runs" } });
  let written = 0;
  const writer = setInterval(() => write(++written), 2);
  const made = await making.finally(() => clearInterval(writer));
  if (!made.ok) throw new Error(made.error.message);
  expect(made.value.fileName).toBe("tholepin-strength-2026-11-09.zip");
  expect(readdirSync(app.env.dataDir).filter((name) => name.startsWith(".download"))).toEqual([]);
  const file = join(studio.folder, "studio.zip");
  await pipeline(Readable.fromWeb(made.value.content as ReadableStream), createWriteStream(file));
  const dataDir = join(studio.folder, "two");
  const databaseFile = join(dataDir, "springline.sqlite");
  const manifest = await importStudio({ dataDir, databaseFile, givenSecret: undefined }, file);
  expect(written).toBeGreaterThan(20);
  expect(manifest.record.seq).toBeGreaterThan(before);
  expect(manifest.record.seq).toBeLessThan(recordHead(app.db).seq);
  const db = openDatabase(databaseFile, { readOnly: true });
  expect(proveRecord(db)).toEqual({ holds: true, head: manifest.record });
  expect(workspaceTables(db.raw).length).toBeGreaterThan(40);
  db.close();
}, 60_000);

test("nobody but a manager, and what went wrong is a sentence", async () => {
  for (const email of ["ines", "marta", "jonas", "sam"])
    expect(await downloadStudio(app, actor(`${email}@tholepin.example`))).toMatchObject({ error: { status: 403 } });
  expect(await downloadStudio(app, null)).toMatchObject({ error: { status: 403 } });
  expect(existsSync(join(studio.folder, "nothing"))).toBe(false);
  const lost = createExportRuns({
    app: { ...studio.app, env: { ...app.env, databaseFile: join(studio.folder, "no.sqlite") } },
  });
  const without = Object.create(app, { care: { value: { ...app.care, exports: lost } } }) as Springline;
  const said = await downloadStudio(without, actor("petra@tholepin.example"));
  expect(said).toMatchObject({
    error: { code: "not-exported", message: expect.stringContaining("There is no database") },
  });
  expect(lost.running()).toBe(false);
});

test("the file is closed at its end, on an error, when the reader cancels or leaves, and when nobody ever read", async () => {
  const file = join(studio.folder, "sent.bin");
  const bytes = Buffer.alloc(300_000, 7);
  writeFileSync(file, bytes);
  /** The number of a closed file is -1. */
  const closed = async (use: (content: ReadableStream<Uint8Array>, leave: () => void) => Promise<unknown>) => {
    const [handle, gone] = [await open(file, "r"), new AbortController()];
    const content = sentOnce(handle, gone.signal) as ReadableStream<Uint8Array>;
    await use(content, () => gone.abort());
    await new Promise((done) => setTimeout(done, 20));
    return handle.fd === -1;
  };
  const whole: Uint8Array[] = [];
  const readAll = async (content: ReadableStream<Uint8Array>) => {
    for await (const part of content) whole.push(part);
  };
  expect(await closed(readAll)).toBe(true);
  expect(Buffer.concat(whole).equals(bytes)).toBe(true);
  const readOne = async (content: ReadableStream<Uint8Array>) => {
    const reader = content.getReader();
    await reader.read();
    return reader;
  };
  expect(await closed(async (content) => (await readOne(content)).cancel())).toBe(true);
  expect(
    await closed(async (content, leave) => {
      const reader = await readOne(content);
      leave();
      await expect(reader.read()).rejects.toThrow(/abort/);
    }),
  ).toBe(true);
  expect(await closed(async (_, leave) => leave())).toBe(true);
  expect(await closed(async (content) => expect((await readOne(content)).closed).toBeDefined())).toBe(false);
});

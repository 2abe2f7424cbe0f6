/** Whatever people write in between, an export goes into an empty studio and comes out the same. */
import { randomUUID } from "node:crypto";
import { rmSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { newestEdition } from "#db/repos/edition-repo.ts";
import { listPlanRows, setPlanDeleted } from "#db/repos/plan-repo.ts";
import { addToRecord } from "#db/repos/record-repo.ts";
import { insertComment, insertThread } from "#db/repos/thread-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import { planParts } from "#lib/doc/layout.ts";
import { planDoc } from "#server/context/live-documents.ts";
import { compactDoc } from "#server/doc-log/stored-doc.ts";
import { duplicatePlan } from "#server/plans/duplicate-plan.ts";
import { exportStudio } from "#server/studio-files/export-studio.ts";
import { importStudio } from "#server/studio-files/import-studio.ts";
import { personCalled } from "#tests/support/every-table.ts";
import { often } from "#tests/support/long.ts";
import { openSeeded, type SeededDatabase } from "#tests/support/seeded-database.ts";

let studio: SeededDatabase;
beforeAll(async () => {
  studio = await openSeeded();
}, 60_000);
afterAll(() => studio.remove());

const words = fc.string({ unit: "grapheme", maxLength: 40 });
const edit = fc.oneof(
  fc.record({ act: fc.constantFrom("title", "note", "say", "record"), words }),
  fc.record({ act: fc.constantFrom("fold", "copy", "delete"), words: fc.constant("") }),
);

/** One thing that somebody does to one of the plans. */
function does({ act, words: said }: { act: string; words: string }, pick: number): void {
  const { app } = studio;
  const marta = personCalled(app, "marta@tholepin.example");
  const rows = listPlanRows(app.db).filter((row) => row.deletedAt === null && row.ownerId === marta.id);
  const id = rows[pick % rows.length]?.id ?? "";
  const at = app.now();
  const write = (key: string) =>
    app.documents.transact(planDoc(id), marta.id, (doc) => planParts(doc).head.set(key, said));
  if (act === "title" || act === "note") write(act === "title" ? "later-key" : "another-key");
  if (act === "say")
    inTransaction(app.db, () => {
      const threadId = randomUUID();
      insertThread(app.db, { id: threadId, planId: id, anchor: { kind: "plan" }, at });
      insertComment(app.db, { id: randomUUID(), threadId, authorId: marta.id, body: said, at });
    });
  if (act === "record")
    inTransaction(app.db, () =>
      addToRecord(app.db, { at, actorId: marta.id, subject: "studio", kind: "x", body: { said } }),
    );
  if (act === "fold") app.documents.withDoc(planDoc(id), (doc) => compactDoc(app.db, `plan/${id}`, doc, at));
  if (act === "copy" && rows.length < 6) duplicatePlan(app, { kind: "person", ...marta }, id);
  // A signed plan is never deleted.
  const last = rows.findLast((row) => !newestEdition(app.db, row.id));
  if (act === "delete" && rows.length > 3 && last) inTransaction(app.db, () => setPlanDeleted(app.db, last.id, at));
}

test("out, in and out again: the same files after any edits", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.tuple(edit, fc.nat(20)), { minLength: 1, maxLength: 15 }), async (edits) => {
      for (const [what, pick] of edits) does(what, pick);
      const { databaseFile, origin } = studio.app.env;
      const setup = { databaseFile, origin, secret: undefined, program: "0.1.0", at: 0 };
      const folders = ["out", "two", "again"].map((name) => join(studio.folder, name)) as [string, string, string];
      const first = exportStudio(setup, folders[0]);
      const imported = join(folders[1], "springline.sqlite");
      await importStudio({ dataDir: folders[1], databaseFile: imported, givenSecret: undefined }, folders[0]);
      expect(exportStudio({ ...setup, databaseFile: imported }, folders[2])).toEqual(first);
      for (const folder of folders) rmSync(folder, { recursive: true });
    }),
    { numRuns: often(3, 60) },
  );
}, 300_000);

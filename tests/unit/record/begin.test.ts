/** A database from before the record: at its first opening everything that was stored is put into a chain, once. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { listRecord, recordHead } from "#db/repos/record-repo.ts";
import { beginRecord } from "#db/repos/record-source-repo.ts";
import { sourceKeyOf } from "#lib/record/entries.ts";
import { createPlan } from "#server/plans/create-plan.ts";
import { proveRecord } from "#server/record/prove-record.ts";
import { must, openStudio, ROOMS } from "#tests/support/plan-studio.ts";
import { type RecordedStudio, recordedStudio } from "#tests/support/recorded-studio.ts";

let s: RecordedStudio;
let stored = 0;
beforeAll(async () => {
  s = await recordedStudio();
  stored = listRecord(s.db, 0, 1000).filter((row) => sourceKeyOf(row)).length;
  // As it was before there was a record.
  s.db.raw.exec("DROP TRIGGER record_never_deleted; DELETE FROM record; DELETE FROM studio_setting;");
  beginRecord(s.db, s.app.now());
});
afterAll(() => s.stop());

test("[INV-26] it begins with a row that says so, then everything that was stored, in order of time", () => {
  const [first, ...rest] = listRecord(s.db, 0, 1000);
  expect(first).toMatchObject({ seq: 1, kind: "begun", subject: "studio", actorId: "server", at: s.app.now() });
  expect(JSON.parse(first?.bodyJson ?? "")).toMatchObject({ earlier: { edition: 1, withdrawal: 1, "class log": 2 } });
  expect(rest.length).toBe(stored);
  expect(rest.map(({ at }) => at)).toEqual(rest.map(({ at }) => at).toSorted((a, b) => a - b));
  expect(proveRecord(s.db)).toMatchObject({ holds: true });
});

test("a second opening adds nothing, and what is done from then on goes on with the chain", () => {
  const head = recordHead(s.db);
  beginRecord(s.db, s.app.now());
  expect(recordHead(s.db)).toEqual(head);
  must(createPlan(s.app, s.people.jonas, { title: "Next", lengthSeconds: 600, roomId: ROOMS.harbour }));
  expect(recordHead(s.db).seq).toBe(head.seq + 1);
  expect(proveRecord(s.db)).toMatchObject({ holds: true });
});

test("[INV-26] a record of an older program is given the tables that it did not speak of, once", async () => {
  const older = await recordedStudio();
  // As it was: neither their entries nor the row that names the tables.
  older.db.raw.exec(`DROP TRIGGER record_never_deleted; DELETE FROM record; DELETE FROM studio_setting;
    CREATE TEMP TABLE kept AS SELECT * FROM marks; DROP TRIGGER marks_never_deleted; DELETE FROM marks;`);
  beginRecord(older.db, older.app.now());
  older.db.raw.exec(`DROP TRIGGER record_never_updated;
    UPDATE record SET body_json = '{"earlier":{}}' WHERE seq = 1; INSERT INTO marks SELECT * FROM kept;`);
  const before = recordHead(older.db).seq;
  beginRecord(older.db, older.app.now());
  const added = listRecord(older.db, before, 1000);
  expect(added[0]).toMatchObject({ kind: "tables-added", actorId: "server" });
  expect(added.some(({ kind }) => kind === "marks")).toBe(true);
  const head = recordHead(older.db);
  beginRecord(older.db, older.app.now());
  expect(recordHead(older.db)).toEqual(head);
  await older.stop();
});

test("rows keep the order of their table where the clock was set back", async () => {
  const back = openStudio();
  const made = (title: string) =>
    must(createPlan(back.app, back.people.jonas, { title, lengthSeconds: 600, roomId: ROOMS.harbour }));
  made("One");
  back.advance(-3_600_000);
  made("Two");
  back.db.raw.exec("DROP TRIGGER record_never_deleted; DELETE FROM record; DELETE FROM studio_setting;");
  beginRecord(back.db, back.app.now());
  expect(proveRecord(back.db)).toMatchObject({ holds: true, head: { seq: 3 } });
  await back.stop();
});

test("an empty database begins with that one row", async () => {
  const fresh = openStudio();
  beginRecord(fresh.db, 5);
  expect(listRecord(fresh.db, 0, 10)).toMatchObject([{ seq: 1, kind: "begun" }]);
  await fresh.stop();
});

/** Every column that names a person is decided about: gone with their account, or kept with their pseudonym. */
import Database from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { expect, test } from "vitest";
import { defaultMigrations, runMigrations } from "#db/file/migrations.ts";
import { tableColumns, workspaceTables } from "#db/file/table-rows.ts";
import { PERSON_COLUMNS } from "#db/repos/delete-person-repo.ts";

/** How columns are called that hold the id of a person. */
const NAMES = /(^|_)(user|actor|owner|author|reader|coach|inviter|by)_id$|_by$/;

test("each column is decided about (db/repos/delete-person-repo.ts)", () => {
  const raw = new Database(":memory:");
  runMigrations(raw, drizzle(raw), defaultMigrations());
  const there = workspaceTables(raw).flatMap((table) =>
    tableColumns(raw, table).flatMap(({ name }) => (NAMES.test(name) ? [`${table}.${name}`] : [])),
  );
  expect(Object.keys(PERSON_COLUMNS).sort()).toEqual(there.sort());
  raw.close();
});

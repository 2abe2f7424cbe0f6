/** Every table, column and setting is decided about: what nobody thought of would be lost, or would leave unseen. */
import Database from "better-sqlite3";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { expect, test } from "vitest";
import { defaultMigrations, runMigrations } from "#db/file/migrations.ts";
import { tableColumns, workspaceTables } from "#db/file/table-rows.ts";
import { TABLES } from "#server/studio-files/tables.ts";

const raw = new Database(":memory:");
runMigrations(raw, drizzle(raw), defaultMigrations());

test("each table of the database travels or stays, by a decision (server/studio-files/tables.ts)", () => {
  expect(Object.keys(TABLES).sort()).toEqual(workspaceTables(raw));
});

test("each column of a table that travels is written, or stays with a reason", () => {
  for (const [table, decided] of Object.entries(TABLES)) {
    if (!("columns" in decided)) continue;
    const known = [...decided.columns, ...Object.keys(decided.stay ?? {})].sort();
    expect(known, table).toEqual(
      tableColumns(raw, table)
        .map(({ name }) => name)
        .sort(),
    );
  }
});

test("nothing travels whose name says that it opens something", () => {
  const told = Object.entries(TABLES).flatMap(([table, decided]) =>
    "columns" in decided ? decided.columns.map((name) => `${table}.${name}`) : [],
  );
  expect(told.filter((name) => /password|token|secret|private|code_/.test(name))).toEqual([]);
});

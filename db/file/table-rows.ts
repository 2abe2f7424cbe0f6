/** Rows of any table, column by column: for files that hold the whole studio, and to build a database from them. */
import type Database from "better-sqlite3";

/** A value as SQLite holds it. */
export type Cell = string | number | null | Uint8Array;
export type TableRow = Readonly<Record<string, Cell>>;

export interface TableColumn {
  readonly name: string;
  readonly type: "INTEGER" | "TEXT" | "BLOB";
  readonly notNull: boolean;
  /** May be left out of a new row. */
  readonly optional: boolean;
}

/** Rows that are read at once: a text that many people write is a few hundred bytes a row. */
const PAGE = 200;

/** The tables of the workspace, without SQLite's own and the list of migrations, in order of name. */
export const workspaceTables = (raw: Database.Database): string[] =>
  raw
    .prepare<[], string>(
      `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE '\\_\\_%' ESCAPE '\\'
        ORDER BY name`,
    )
    .pluck()
    .all();

export function tableColumns(raw: Database.Database, table: string): TableColumn[] {
  const rows = raw
    .prepare<[string], { name: string; type: string; notNull: number; byDefault: number }>(
      `SELECT name, upper(type) AS type, "notnull" OR pk > 0 AS "notNull", dflt_value IS NOT NULL AS "byDefault" FROM pragma_table_info(?) ORDER BY cid`,
    )
    .all(table);
  return rows.map(({ name, type, notNull, byDefault }) => ({
    ...{ name, type: type as TableColumn["type"], notNull: notNull === 1 },
    optional: notNull === 0 || byDefault === 1,
  }));
}

/** In the order of writing, which the record goes by. Read page by page, so that other statements can run in between. */
export function* tableRows(raw: Database.Database, table: string, columns: readonly string[]): Generator<TableRow> {
  const page = raw.prepare<[bigint, number], TableRow & { readonly _place: bigint }>(
    `SELECT rowid AS _place, ${columns.map(quoted).join(", ")} FROM ${quoted(table)} WHERE rowid > ? ORDER BY rowid LIMIT ?`,
  );
  page.safeIntegers(true);
  for (let last = -(2n ** 63n); ; ) {
    const rows = page.all(last, PAGE);
    for (const { _place, ...row } of rows) {
      last = _place;
      yield Object.fromEntries(Object.entries(row).map(([name, cell]) => [name, plain(cell)]));
    }
    if (rows.length < PAGE) return;
  }
}

const plain = (cell: Cell | bigint): Cell => (typeof cell === "bigint" ? Number(cell) : cell);
const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** Puts rows in, one at a time, in order. Throws what SQLite says. */
export function rowPutter(raw: Database.Database, table: string, columns: readonly string[]): (row: TableRow) => void {
  const marks = columns.map(() => "?").join(", ");
  const put = raw.prepare(`INSERT INTO ${quoted(table)} (${columns.map(quoted).join(", ")}) VALUES (${marks})`);
  return (row) => void put.run(columns.map((name) => row[name] ?? null));
}

/** The last number that each counting table has given: a number whose row is gone is never given again. */
export const tableCounters = (raw: Database.Database): Record<string, number> =>
  Object.fromEntries(
    raw.prepare<[], [string, number]>("SELECT name, seq FROM sqlite_sequence ORDER BY name").raw().all(),
  );

/** Never goes back behind what the rows themselves have. */
export function setTableCounter(raw: Database.Database, table: string, last: number): void {
  const changed = raw.prepare("UPDATE sqlite_sequence SET seq = max(seq, ?) WHERE name = ?").run(last, table).changes;
  if (changed === 0) raw.prepare("INSERT INTO sqlite_sequence (name, seq) VALUES (?, ?)").run(table, last);
}

/** Rows that name a row of another table that is not there. */
export const brokenReferences = (raw: Database.Database): number =>
  (raw.pragma("foreign_key_check") as unknown[]).length;

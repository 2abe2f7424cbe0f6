/** Fills a new database with the tables of an export, in one transaction, and proves what it holds before it counts. */
import { join } from "node:path";
import type { Db } from "#db/connection.ts";
import {
  brokenReferences,
  type Cell,
  rowPutter,
  setTableCounter,
  type TableRow,
  tableColumns,
} from "#db/file/table-rows.ts";
import { listMembers } from "#db/repos/people-repo.ts";
import { recordHead } from "#db/repos/record-repo.ts";
import { listSigningKeys } from "#db/repos/signing-key-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { sealedTrust } from "#server/signing/keys.ts";
import { checkRow } from "./check-row.ts";
import type { StudioManifest } from "./manifest.ts";
import { rowsOfFile } from "./read-rows.ts";
import { StudioFilesRefused } from "./refused.ts";
import { studioFaults } from "./studio-faults.ts";
import { travellingTables, travels } from "./tables.ts";

export interface Filling {
  readonly folder: string;
  readonly manifest: StudioManifest;
  /** The secret of the server that will open it. */
  readonly secret: string;
}

/** Throws StudioFilesRefused with one sentence; then nothing is in the database. */
export function fillDatabase(db: Db, filling: Filling): void {
  db.raw.pragma("foreign_keys = OFF");
  db.raw.exec("BEGIN IMMEDIATE");
  try {
    for (const table of travellingTables()) fillTable(db, table, filling);
    for (const [table, last] of Object.entries(filling.manifest.counters))
      if (travels(table)) setTableCounter(db.raw, table, last);
    prove(db, filling.manifest);
    db.raw.exec("COMMIT");
  } catch (error) {
    db.raw.exec("ROLLBACK");
    throw error;
  }
}

function fillTable(db: Db, table: string, { folder, manifest, secret }: Filling): void {
  const meant = manifest.tables[table];
  // An export of an older program has no file for a table that came later.
  if (meant === undefined) return;
  const path = `tables/${table}.jsonl`;
  const allowed = new Set(travels(table)?.columns);
  const columns = tableColumns(db.raw, table).filter(({ name }) => allowed.has(name));
  const putters = new Map<string, (row: TableRow) => void>();
  let rows = 0;
  for (const row of rowsOfFile(join(folder, "tables", `${table}.jsonl`), path, columns)) {
    rows++;
    checkRow(table, row, `${path}, line ${rows}`);
    const whole = { ...row, ...madeAnew(table, row, secret) };
    const names = Object.keys(whole);
    const put = putters.get(names.join()) ?? rowPutter(db.raw, table, names);
    putters.set(names.join(), put);
    refusing(`${path}, line ${rows}`, () => put(whole));
    if (table === "member") refusing(`${path}, line ${rows}`, () => giveAccount(db, row));
  }
  if (rows !== meant)
    throw new StudioFilesRefused(
      `${path} has ${rows} rows instead of ${meant}. Nothing was imported. Export the studio again.`,
    );
}

/** What the database itself refuses: a row that is there twice, one that a rule of its tables forbids. */
function refusing(where: string, put: () => void): void {
  try {
    put();
  } catch (error) {
    if (!(error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_CONSTRAINT"))) throw error;
    throw new StudioFilesRefused(`${where}: this row does not fit (${error.message}). Nothing was imported.`);
  }
}

/** Columns that do not travel and may not be empty. */
function madeAnew(table: string, row: TableRow, secret: string): Readonly<Record<string, Cell>> {
  if (table === "signing_key")
    return { sealed_private_key: sealedTrust(secret, { id: String(row.id), publicKey: String(row.public_key) }) };
  // No secret has this as its hash, so the address answers nobody until it is renewed.
  if (table === "calendar_feed") return { secret_hash: `not since the import: ${row.id}` };
  return {};
}

/** An account without a password, which a reset link gives one. */
function giveAccount(db: Db, { user_id, created_at }: TableRow): void {
  const row = {
    id: user_id,
    account_id: user_id,
    provider_id: "credential",
    user_id,
    created_at,
    updated_at: created_at,
  };
  const filled = Object.fromEntries(Object.entries(row).map(([name, cell]) => [name, cell ?? null]));
  rowPutter(db.raw, "account", Object.keys(filled))(filled);
}

function prove(db: Db, manifest: StudioManifest): void {
  if (!readStudio(db) || !listMembers(db).some(({ roles }) => roles.includes("manager")))
    throw new StudioFilesRefused("This export has no studio with a manager in it. Nothing was imported.");
  if (brokenReferences(db.raw) > 0)
    throw new StudioFilesRefused(
      "Rows of this export name others that are not in it. Nothing was imported. Export the studio again.",
    );
  const head = recordHead(db);
  if (head.seq !== manifest.record.seq || head.hash !== manifest.record.hash)
    throw new StudioFilesRefused(
      "The record does not end as the export says. Nothing was imported. Export the studio again.",
    );
  const known = new Set(manifest.faults);
  const fault = studioFaults(db, listSigningKeys(db)).find((says) => !known.has(says));
  if (fault !== undefined) throw new StudioFilesRefused(`${fault} Nothing was imported. Export the studio again.`);
}

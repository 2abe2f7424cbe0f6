/**
 * Writes the whole studio as open files into a new folder, or into one zip file. The server may be running: everything is read
 * inside one read transaction, which is one moment, while people go on writing. Synchronous: for a command or a thread.
 */
import { createHash } from "node:crypto";
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeSync,
} from "node:fs";
import { dirname, join, resolve } from "node:path";
import { type Db, openDatabase } from "#db/connection.ts";
import { tableCounters, tableRows } from "#db/file/table-rows.ts";
import { listRecord, recordHead } from "#db/repos/record-repo.ts";
import { listSigningKeys } from "#db/repos/signing-key-repo.ts";
import { readStudio } from "#db/repos/studio-repo.ts";
import { ownKeys } from "#server/signing/keys.ts";
import { classLogFiles } from "./class-log-files.ts";
import { type ExportedFile, textFile } from "./exported-file.ts";
import {
  FORMAT_NAME,
  FORMAT_VERSION,
  MANIFEST,
  type ManifestFile,
  manifestText,
  type StudioManifest,
} from "./manifest.ts";
import { monthFiles } from "./month-files.ts";
import { editionFiles, type LeftOut, type PublicKey, planFiles } from "./plan-files.ts";
import { readmeText } from "./readme-text.ts";
import { StudioFilesRefused } from "./refused.ts";
import { studioFaults } from "./studio-faults.ts";
import { studioParts } from "./studio-parts.ts";
import { type StudioReader, studioReader } from "./studio-reader.ts";
import { lineOfRow, rowTravels, travellingTables, travels } from "./tables.ts";

/** Plain data: it is sent to a thread. */
export interface ExportSetup {
  readonly databaseFile: string;
  /** The address that links begin with. */
  readonly origin: string;
  /** The server's secret, by which forged keys are told; undefined where it is not known. */
  readonly secret: string | undefined;
  /** The program's version. */
  readonly program: string;
  /** ms since the epoch. */
  readonly at: number;
}

/**
 * `target` must not exist, or be an empty folder. It appears complete or not at all. Throws StudioFilesRefused or
 * DatabaseRefused with one sentence.
 */
export function exportStudio(setup: ExportSetup, target: string): StudioManifest {
  const folder = resolve(target);
  refuseFull(folder);
  mkdirSync(dirname(folder), { recursive: true });
  const work = mkdtempSync(join(dirname(folder), ".export-"));
  try {
    const manifest = writeStudio(setup, work);
    if (existsSync(folder)) rmdirSync(folder);
    renameSync(work, folder);
    return manifest;
  } catch (error) {
    rmSync(work, { recursive: true, force: true });
    throw error;
  }
}

function refuseFull(folder: string): void {
  if (!existsSync(folder)) return;
  let names: string[] = [];
  try {
    names = readdirSync(folder);
  } catch {
    throw new StudioFilesRefused(`${folder} is a file. Name a new folder, or a new file that ends in .zip.`);
  }
  if (names.length > 0)
    throw new StudioFilesRefused(`${folder} is not empty. An export never overwrites anything: name a new folder.`);
}

function writeStudio(setup: ExportSetup, folder: string): StudioManifest {
  const db = openDatabase(setup.databaseFile, { readOnly: true });
  try {
    db.raw.exec("BEGIN");
    const studio = readStudio(db);
    if (!studio) throw new StudioFilesRefused("There is no studio here yet, so there is nothing to export.");
    const keys = keysOf(db, setup.secret);
    // The newest row of the record is the studio's now: the same studio gives the same files on another day.
    const reader = studioReader(db, setup.origin, lastActOf(db));
    const leftOut: LeftOut[] = [];
    const files: ManifestFile[] = [];
    const tables: Record<string, number> = {};
    for (const file of filesOf(reader, { keys, leftOut, tables, studio: studio.name }))
      files.push(written(folder, file));
    const manifest: StudioManifest = {
      ...{ format: FORMAT_NAME, version: FORMAT_VERSION, program: setup.program },
      ...{ madeAt: new Date(setup.at).toISOString(), studio: studio.name, address: setup.origin },
      ...{ tables, counters: countersOf(db), record: recordHead(db), faults: studioFaults(db, keys), leftOut },
      files: files.sort((a, b) => (a.path < b.path ? -1 : 1)),
    };
    written(folder, textFile(MANIFEST, manifestText(manifest)));
    return manifest;
  } finally {
    db.close();
  }
}

interface Parts {
  readonly keys: readonly PublicKey[];
  readonly leftOut: LeftOut[];
  /** Counted as they are written. */
  readonly tables: Record<string, number>;
  readonly studio: string;
}

function* filesOf(reader: StudioReader, { keys, leftOut, tables, studio }: Parts): Generator<ExportedFile> {
  yield textFile("README.txt", readmeText(studio));
  yield* planFiles(reader, leftOut);
  yield* editionFiles(reader, keys);
  yield* monthFiles(reader, leftOut);
  yield* studioParts(reader);
  yield* classLogFiles(reader);
  for (const table of travellingTables())
    yield { path: `tables/${table}.jsonl`, chunks: () => tableLines(reader.db, table, { keys, tables }) };
}

function* tableLines(db: Db, table: string, { keys, tables }: Pick<Parts, "keys" | "tables">): Generator<string> {
  const own = new Set(keys.map(({ id }) => id));
  let rows = 0;
  for (const row of tableRows(db.raw, table, travels(table)?.columns ?? [])) {
    if (!rowTravels(table, row) || (table === "signing_key" && !own.has(String(row.id)))) continue;
    rows++;
    yield lineOfRow(row);
  }
  tables[table] = rows;
}

function keysOf(db: Db, secret: string | undefined): PublicKey[] {
  const keys = listSigningKeys(db);
  const own = secret === undefined ? keys : ownKeys(secret, keys);
  return own.map(({ id, publicKey }) => ({ id, publicKey }));
}

function lastActOf(db: Db): number {
  const { seq } = recordHead(db);
  return listRecord(db, seq - 1, 1)[0]?.at ?? 0;
}

/** Of tables that travel: the others begin anew. */
const countersOf = (db: Db): Record<string, number> =>
  Object.fromEntries(Object.entries(tableCounters(db.raw)).filter(([table]) => travels(table)));

function written(folder: string, { path, chunks }: ExportedFile): ManifestFile {
  const name = join(folder, ...path.split("/"));
  mkdirSync(dirname(name), { recursive: true, mode: 0o700 });
  const hash = createHash("sha256");
  const file = openSync(name, "wx", 0o600);
  let bytes = 0;
  try {
    for (const chunk of chunks()) {
      const part = Buffer.from(chunk, "utf8");
      writeAll(file, part);
      hash.update(part);
      bytes += part.length;
    }
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  return { path, bytes, sha256: hash.digest("hex") };
}

function writeAll(file: number, part: Uint8Array): void {
  for (let done = 0; done < part.length; ) done += writeSync(file, part, done);
}

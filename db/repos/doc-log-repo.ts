/**
 * The log of shared documents: headers, updates and snapshots. Prepared raw statements, since these run for every burst of
 * typing. Every function is synchronous and joins the caller's transaction if there is one.
 */
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";

export interface LogRow {
  readonly seq: number;
  readonly bytes: Uint8Array;
}
export interface NewLogRow {
  /** `plan/<id>` or `month/<yyyy-mm>`. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly actorId: string;
  /** ms since the epoch, UTC. */
  readonly at: number;
}
/** A document as it is on disk. */
export interface StoredDoc {
  readonly generation: string;
  /** Newest first; the older one is used when the newer one cannot be read. */
  readonly snapshots: readonly LogRow[];
  /** Every row after the oldest kept snapshot, in order. */
  readonly rows: readonly LogRow[];
}

/** How many snapshots are kept, together with the rows after the oldest of them. */
const KEPT_SNAPSHOTS = 2;

function prepareAll(db: Db) {
  const { raw } = db;
  return {
    names: raw.prepare<[], string>("select name from document order by name").pluck(),
    header: raw.prepare<[string], string>("select generation from document where name = ?").pluck(),
    addHeader: raw.prepare("insert into document (name, generation, created_at) values (?, ?, ?)"),
    snapshots: raw.prepare<[string], LogRow>("select seq, bytes from doc_snapshot where name = ? order by seq desc"),
    rows: raw.prepare<[string, number], LogRow>(
      "select seq, bytes from doc_update where name = ? and seq > ? order by seq",
    ),
    lastRow: raw.prepare<[string], number | null>("select max(seq) from doc_update where name = ?").pluck(),
    writers: raw
      .prepare<[string, number], string>(
        "select actor_id from doc_update where name = ? and seq > ? group by actor_id order by max(seq)",
      )
      .pluck(),
    lastSnapshot: raw.prepare<[string], number | null>("select max(seq) from doc_snapshot where name = ?").pluck(),
    firstSnapshot: raw.prepare<[string], number | null>("select min(seq) from doc_snapshot where name = ?").pluck(),
    count: raw
      .prepare<[string, string], number>(
        `select count(*) from doc_update where name = ?
         and seq > coalesce((select max(seq) from doc_snapshot where name = ?), 0)`,
      )
      .pluck(),
    add: raw.prepare<[NewLogRow]>(
      `insert into doc_update (name, bytes, actor_id, at) select @name, @bytes, @actorId, @at
       where exists (select 1 from document where name = @name)`,
    ),
    addSnapshot: raw.prepare("insert into doc_snapshot (name, seq, bytes, at) values (?, ?, ?, ?)"),
    oldestKept: raw
      .prepare<[string, number], number>(
        "select seq from doc_snapshot where name = ? order by seq desc limit 1 offset ?",
      )
      .pluck(),
    dropSnapshots: raw.prepare("delete from doc_snapshot where name = ? and seq < ?"),
    dropRows: raw.prepare("delete from doc_update where name = ? and seq <= ?"),
  };
}

const statements = oncePerDatabase(prepareAll);

/** Every document, in order of name. */
export const listDocumentNames = (db: Db): string[] => statements(db).names.all();

export function readGeneration(db: Db, name: string): string | undefined {
  return statements(db).header.get(name);
}

/** Undefined when there is no such document. */
export function readStoredDoc(db: Db, name: string): StoredDoc | undefined {
  const s = statements(db);
  const generation = s.header.get(name);
  if (generation === undefined) return undefined;
  const snapshots = s.snapshots.all(name);
  return { generation, snapshots, rows: s.rows.all(name, snapshots.at(-1)?.seq ?? 0) };
}

/** The log's last row, which together with the generation identifies one state of the document. 0 without rows. */
export function lastSeq(db: Db, name: string): number {
  const s = statements(db);
  return Math.max(s.lastRow.get(name) ?? 0, s.lastSnapshot.get(name) ?? 0);
}

/** Who has written after a row, the last one last; without those whose rows have been folded into a snapshot since. */
export const writersAfter = (db: Db, name: string, seq: number): string[] => statements(db).writers.all(name, seq);

/** The rows after a row, in order; undefined when some of them have been folded into a snapshot since. */
export function rowsAfter(db: Db, name: string, seq: number): LogRow[] | undefined {
  const s = statements(db);
  return seq < (s.firstSnapshot.get(name) ?? 0) ? undefined : s.rows.all(name, seq);
}

/** Rows since the newest snapshot. */
export function countRows(db: Db, name: string): number {
  return statements(db).count.get(name, name) ?? 0;
}

/** Throws (UNIQUE) when the document exists. */
export function insertHeader(db: Db, name: string, generation: string, at: number): void {
  statements(db).addHeader.run(name, generation, at);
}

/** A row was to be added to a document that has been deleted, or never was. */
export class NoSuchDocument extends Error {
  override readonly name = "NoSuchDocument";
}

/** Throws NoSuchDocument: a row without a header would be read by nobody and yet be in every copy. */
export function appendRow(db: Db, row: NewLogRow): void {
  if (statements(db).add.run(row).changes === 0) throw new NoSuchDocument(`There is no document ${row.name}.`);
}

/** Names under which there are rows or snapshots but no document, in order. */
export const listOrphanedLogs = (db: Db): string[] =>
  db.raw
    .prepare<[], string>(
      `select name from doc_update where name not in (select name from document)
       union select name from doc_snapshot where name not in (select name from document) order by name`,
    )
    .pluck()
    .all();

/**
 * Adds a snapshot and deletes what no kept snapshot needs. Call it inside a transaction, with bytes that have been verified:
 * the rows are gone for good.
 */
export function replaceBySnapshot(db: Db, name: string, snapshot: LogRow, at: number): void {
  const s = statements(db);
  s.addSnapshot.run(name, snapshot.seq, snapshot.bytes, at);
  const oldest = s.oldestKept.get(name, KEPT_SNAPSHOTS - 1);
  if (oldest === undefined) return;
  s.dropSnapshots.run(name, oldest);
  s.dropRows.run(name, oldest);
}

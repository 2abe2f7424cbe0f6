/**
 * The record of everything that counts, as a chain: each row holds the hash of the one before it and its own, so that a
 * row that is changed, removed, inserted or moved later shows (INV-26). Append-only; the database refuses anything else.
 */
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { BROKEN_END, FIRST_PREVIOUS, type RecordHead, type RecordRow, recordJson, rowHash } from "#lib/record/chain.ts";
import { type EntryOfRow, entryOf } from "#lib/record/entries.ts";
import { ERASABLE, ERASED_BODY, PERSON_DELETED } from "#lib/record/erased.ts";
import type { SourceColumns, SourceName } from "#lib/record/sources.ts";

export interface RecordEntry {
  /** ms since the epoch. */
  readonly at: number;
  readonly actorId: string;
  /** "plan/<id>", "month/<yyyy-mm>", "class/<id>", "move/<id>", "room/<id>", "rule/<id>", "person/<id>", "device/<id>" or "studio". */
  readonly subject: string;
  readonly kind: string;
  /** Plain data. */
  readonly body: unknown;
}

const COLUMNS =
  "seq, at, actor_id AS actorId, subject, kind, body_json AS bodyJson, previous_hash AS previousHash, hash";
/** Where the end of the record is kept a second time: a last row that was removed or added leaves no gap in the chain. */
const END = "record-head";

const statements = oncePerDatabase(({ raw }) => ({
  newest: raw.prepare<[], RecordHead>("SELECT seq, hash FROM record ORDER BY seq DESC LIMIT 1"),
  add: raw.prepare<[RecordRow]>(
    `INSERT INTO record (seq, at, actor_id, subject, kind, body_json, previous_hash, hash)
      VALUES (@seq, @at, @actorId, @subject, @kind, @bodyJson, @previousHash, @hash)`,
  ),
  keepEnd: raw.prepare<[string, string, number]>(
    `INSERT INTO studio_setting (name, data_json, updated_at) VALUES (?, ?, ?)
      ON CONFLICT (name) DO UPDATE SET data_json = excluded.data_json, updated_at = excluded.updated_at`,
  ),
  keptEnd: raw.prepare<[string], string>("SELECT data_json FROM studio_setting WHERE name = ?").pluck(),
  deletions: raw.prepare<[string], RecordRow>(`SELECT ${COLUMNS} FROM record WHERE kind = ? ORDER BY seq`),
  erasable: raw.prepare<[string, string], RecordRow>(
    `SELECT ${COLUMNS} FROM record WHERE kind IN (SELECT value FROM json_each(?)) AND body_json <> ? ORDER BY seq`,
  ),
  erase: raw.prepare<[string, number]>("UPDATE record SET body_json = ? WHERE seq = ?"),
  after: raw.prepare<[number, number], RecordRow>(`SELECT ${COLUMNS} FROM record WHERE seq > ? ORDER BY seq LIMIT ?`),
}));

/** The end of the chain. Whoever knows it can tell later whether anything before it was touched. */
export const recordHead = (db: Db): RecordHead => statements(db).newest.get() ?? { seq: 0, hash: FIRST_PREVIOUS };

/** Call inside the transaction that does what is recorded. */
export function addToRecord(db: Db, { body, ...entry }: RecordEntry): RecordHead {
  return chain(db, { ...entry, bodyJson: recordJson(body) });
}

/** Adds what the record says about a row of another table. Call inside the transaction that stored the row. */
export function addSourceToRecord<N extends SourceName>(db: Db, name: N, row: SourceColumns[N]): RecordHead {
  return chain(db, entryOf(name, row));
}

/**
 * Goes on from the last row. Where that is not the row that was written last, a row that says so comes first: otherwise the
 * next entry would hide what was taken away or put in its place.
 */
function chain(db: Db, entry: EntryOfRow): RecordHead {
  const [found, kept] = [recordHead(db), keptRecordEnd(db)];
  const asWritten = kept === undefined || (kept.seq === found.seq && kept.hash === found.hash);
  if (asWritten) return add(db, entry, found);
  const broken = { actorId: "server", subject: "studio", kind: BROKEN_END, bodyJson: recordJson({ found, kept }) };
  return add(db, entry, add(db, { ...broken, at: entry.at }, found));
}

function add(db: Db, entry: EntryOfRow, before: RecordHead): RecordHead {
  const row = { ...entry, seq: before.seq + 1, previousHash: before.hash };
  const hash = rowHash(row);
  statements(db).add.run({ ...row, hash });
  const head = { seq: row.seq, hash };
  statements(db).keepEnd.run(END, recordJson(head), entry.at);
  return head;
}

/** The end of the record as it was last written; undefined before the first row. */
export function keptRecordEnd(db: Db): RecordHead | undefined {
  const kept = statements(db).keptEnd.get(END);
  return kept === undefined ? undefined : (JSON.parse(kept) as RecordHead); // written by add only
}

/** At most `limit` rows after `after`, in order. */
export const listRecord = (db: Db, after: number, limit: number): RecordRow[] => statements(db).after.all(after, limit);

/** Rows that tell of a deleted account, in order. */
export const listDeletions = (db: Db): RecordRow[] => statements(db).deletions.all(PERSON_DELETED);

/** Rows whose words hold names or addresses of people, in order. */
export const listErasable = (db: Db): RecordRow[] => statements(db).erasable.all(JSON.stringify(ERASABLE), ERASED_BODY);

/** Takes the words out of a row. Call inside the transaction that adds the row which tells of it (lib/record/erased.ts). */
export const eraseWords = (db: Db, seq: number): void => void statements(db).erase.run(ERASED_BODY, seq);

export interface RecordFilter {
  /** "plan/<id>" and the like. */
  readonly subject?: string | undefined;
  /** Who did it, or whom it is about. */
  readonly personId?: string | undefined;
  readonly kinds?: readonly string[] | undefined;
  /** All kinds but these. */
  readonly otherKinds?: readonly string[] | undefined;
  /** What its subject begins with. */
  readonly about?: string | undefined;
  /** ms since the epoch, included. */
  readonly from?: number | undefined;
  /** ms since the epoch, not included. */
  readonly until?: number | undefined;
}

/** At most `limit` rows with `after < seq < before` that pass, the newest first. */
export function findRecord(
  db: Db,
  { subject, personId, kinds, otherKinds, about, from, until }: RecordFilter,
  { after, before, limit }: { readonly after: number; readonly before: number; readonly limit: number },
): RecordRow[] {
  const given = { after, before, limit, subject, personId, self: `person/${personId}`, about, from, until };
  const tests = [
    "seq > @after AND seq < @before",
    subject !== undefined && "subject = @subject",
    personId !== undefined && "(actor_id = @personId OR subject = @self)",
    kinds !== undefined && "kind IN (SELECT value FROM json_each(@kinds))",
    otherKinds !== undefined && "kind NOT IN (SELECT value FROM json_each(@otherKinds))",
    about !== undefined && "substr(subject, 1, length(@about)) = @about",
    from !== undefined && "at >= @from",
    until !== undefined && "at < @until",
  ].filter((test) => test !== false);
  return db.raw
    .prepare<[object], RecordRow>(
      `SELECT ${COLUMNS} FROM record WHERE ${tests.join(" AND ")} ORDER BY seq DESC LIMIT @limit`,
    )
    .all({ ...given, kinds: JSON.stringify(kinds ?? []), otherKinds: JSON.stringify(otherKinds ?? []) });
}

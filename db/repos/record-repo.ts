/**
 * The record of everything that counts, as a chain: each row holds the hash of the one before it and its own, so that a
 * row that is changed, removed, inserted or moved later shows (INV-26). Append-only; the database refuses anything else.
 */
import { asc, desc, gt } from "drizzle-orm";
import type { Db } from "#db/connection.ts";
import { oncePerDatabase } from "#db/once-per-database.ts";
import { recordTable } from "#db/review-schema.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { FIRST_PREVIOUS, type RecordRow, rowHash } from "#lib/record/chain.ts";

export interface RecordEntry {
  /** ms since the epoch. */
  readonly at: number;
  readonly actorId: string;
  /** "plan/<id>", "move/<id>", "room/<id>", "rule/<id>", "person/<id>" or "studio". */
  readonly subject: string;
  readonly kind: string;
  /** Plain data. */
  readonly body: unknown;
}

export interface RecordHead {
  /** 0 while the record is empty. */
  readonly seq: number;
  readonly hash: string;
}

const newest = oncePerDatabase(({ orm }) =>
  orm
    .select({ seq: recordTable.seq, hash: recordTable.hash })
    .from(recordTable)
    .orderBy(desc(recordTable.seq))
    .limit(1)
    .prepare(),
);

/** The end of the chain. Whoever knows it can tell later whether anything before it was touched. */
export const recordHead = (db: Db): RecordHead => newest(db).get() ?? { seq: 0, hash: FIRST_PREVIOUS };

/** Call inside the transaction that does what is recorded. */
export function addToRecord(db: Db, { body, ...entry }: RecordEntry): RecordHead {
  const head = recordHead(db);
  const row = { ...entry, seq: head.seq + 1, bodyJson: canonicalJson(body ?? null), previousHash: head.hash };
  const hash = rowHash(row);
  db.orm
    .insert(recordTable)
    .values({ ...row, hash })
    .run();
  return { seq: row.seq, hash };
}

/** At most `limit` rows after `after`, in order. */
export function listRecord(db: Db, after: number, limit: number): RecordRow[] {
  const rows = db.orm.select().from(recordTable).where(gt(recordTable.seq, after));
  return rows.orderBy(asc(recordTable.seq)).limit(limit).all();
}

/**
 * Proves the whole record: the chain itself, that each entry says what the row it is about says, and that no such row is
 * without its entry. Names the first thing that does not hold (INV-26).
 */
import { createHash } from "node:crypto";
import type { Db } from "#db/connection.ts";
import { keptRecordEnd, listDeletions, listRecord, recordHead } from "#db/repos/record-repo.ts";
import { readSource, sourceBetween } from "#db/repos/record-source-repo.ts";
import { type Digest, FIRST_PREVIOUS, headText, type RecordHead, type RecordRow } from "#lib/record/chain.ts";
import { entryOf, type SourceKey, sourceKeyOf } from "#lib/record/entries.ts";
import { erasedIn } from "#lib/record/erased.ts";
import { SOURCE_NAMES, type SourceName } from "#lib/record/sources.ts";
import { ChainProof, type RecordFault } from "#lib/record/verify.ts";

export type RecordProof =
  | { readonly holds: true; readonly head: RecordHead }
  | { readonly holds: false; readonly fault: RecordFault };

/** Much faster than the one of `lib`, which also runs in a browser. */
const digest: Digest = (text) => createHash("sha256").update(text, "utf8").digest("hex");

/** Rows that are read at once. */
const PAGE = 200;

/**
 * Yields after each row, with the number of rows that held so far. Rows may be added meanwhile.
 * `printed` is a head from paper, which has to be a row of this chain.
 */
export function* proofInSlices(db: Db, printed?: RecordHead): Generator<number, RecordProof> {
  const proof = new ChainProof(digest, undefined, erasedIn(listDeletions(db)));
  const sources = new Sources(db);
  for (;;) {
    const rows = listRecord(db, proof.head.seq, PAGE);
    for (const row of rows) {
      const fault = proof.take(row) ?? sources.take(row) ?? otherThanPrinted(row, printed);
      if (fault) return { holds: false, fault };
      yield row.seq;
    }
    if (rows.length > 0) continue;
    // In the same step as finding the end, so that nothing is added in between.
    const fault = endFault(proof.head, keptRecordEnd(db)) ?? sources.end() ?? beyondEnd(proof.head, printed);
    return fault ? { holds: false, fault } : { holds: true, head: proof.head };
  }
}

/** At once. For a database that nobody else uses the thread for, and for a snapshot. */
export function proveRecord(db: Db, printed?: RecordHead): RecordProof {
  const slices = proofInSlices(db, printed);
  for (;;) {
    const step = slices.next();
    if (step.done) return step.value;
  }
}

/** Compares entries with the rows they are about. Both are in the order of writing, so a row without an entry is a gap. */
class Sources {
  private readonly db: Db;
  private readonly last = new Map<SourceName, number>();

  constructor(db: Db) {
    this.db = db;
  }

  take(row: RecordRow): RecordFault | undefined {
    const key = sourceKeyOf(row);
    if (!key) return undefined;
    const { seq } = row;
    const found = readSource(this.db, key);
    const what = nameOf(key);
    if (!found) return { seq, say: `Row ${seq} is about ${what}, which is no longer in the database.` };
    const last = this.last.get(key.of) ?? null;
    if (last !== null && found.place <= last) return { seq, say: `Row ${seq} tells of ${what} a second time.` };
    const before = last !== null && found.place === last + 1 ? undefined : this.withoutEntry(key.of, last, found.place);
    if (before) return before;
    this.last.set(key.of, found.place);
    const now = entryOf(key.of, found.columns, digest);
    const same = (["at", "actorId", "subject", "kind", "bodyJson"] as const).every((name) => now[name] === row[name]);
    return same ? undefined : { seq, say: `Row ${seq} tells of ${what}, which was changed after it was recorded.` };
  }

  /** Rows after the last that an entry was about. */
  end(): RecordFault | undefined {
    for (const name of SOURCE_NAMES) {
      const fault = this.withoutEntry(name, this.last.get(name) ?? null, null);
      if (fault) return fault;
    }
    return undefined;
  }

  private withoutEntry(name: SourceName, after: number | null, before: number | null): RecordFault | undefined {
    const found = sourceBetween(this.db, name, after, before);
    return found === undefined
      ? undefined
      : { seq: null, say: `${found} is in the database, but the record does not hold it: it was inserted.` };
  }
}

function nameOf({ of, planId, row, number, session, id, month, edition }: SourceKey): string {
  switch (of) {
    case "edition":
      return `edition ${number} of plan ${planId}`;
    case "withdrawal":
      return `the withdrawal of edition ${number} of plan ${planId}`;
    case "class log":
      return `class log ${session}`;
    case "marks":
      return `marks ${id}`;
    case "acceptance":
      return `accepted finding ${id}`;
    case "month edition":
      return `edition ${edition} of the month ${month}`;
    case "class log remark":
      return `remark ${row} on a class log`;
    default:
      return `${of} ${row}`;
  }
}

function otherThanPrinted(row: RecordRow, printed: RecordHead | undefined): RecordFault | undefined {
  if (printed?.seq !== row.seq || row.hash.startsWith(printed.hash)) return undefined;
  const { seq } = row;
  return { seq, say: `Row ${seq} is not the one that was printed: it is ${headText(row)}. The record was rewritten.` };
}

const beyondEnd = (head: RecordHead, printed: RecordHead | undefined): RecordFault | undefined =>
  printed && printed.seq > head.seq
    ? {
        seq: head.seq + 1,
        say: `Row ${printed.seq}, which was printed, is missing: the record ends with row ${head.seq}.`,
      }
    : undefined;

/** The last row itself, which nothing follows, against the end as it was kept. */
function endFault(head: RecordHead, kept: RecordHead | undefined): RecordFault | undefined {
  const { seq, hash } = kept ?? { seq: 0, hash: FIRST_PREVIOUS };
  if (head.seq < seq)
    return { seq: head.seq + 1, say: `Row ${head.seq + 1} is missing: the record was written up to row ${seq}.` };
  if (head.seq > seq)
    return { seq: seq + 1, say: `Row ${seq + 1} was inserted: the record was written up to row ${seq}.` };
  return head.hash === hash ? undefined : { seq, say: `Row ${seq} was replaced: it is not the row that was written.` };
}

/** How far a proof of this database has to go. */
export const rowsToProve = (db: Db): number => recordHead(db).seq;

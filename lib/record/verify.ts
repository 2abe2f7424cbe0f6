/** Proves a chain row by row: which row is the first that does not hold, and why in a sentence (INV-26). */
import { sha256Hex } from "#lib/canonical/canonical.ts";
import { BROKEN_END, type Digest, FIRST_PREVIOUS, type RecordHead, type RecordRow, rowHash } from "./chain.ts";
import { ERASABLE, ERASED_BODY, erasedDigest, erasedIn } from "./erased.ts";

/** The first thing that does not hold. */
export interface RecordFault {
  /** The row of the record; null when it is about a row that the record does not hold. */
  readonly seq: number | null;
  /** One sentence. */
  readonly say: string;
}

/** Takes the rows of a chain in order and remembers only the last: a million rows need no more memory than one. */
export class ChainProof {
  private last: RecordHead;
  private readonly digest: Digest;
  private readonly erased: ReadonlyMap<number, string>;

  /** `erased`: rows whose words were erased, with the digests of what is left, as `erasedIn` reads them. */
  constructor(
    digest: Digest = sha256Hex,
    from: RecordHead = { seq: 0, hash: FIRST_PREVIOUS },
    erased: ReadonlyMap<number, string> = new Map(),
  ) {
    this.digest = digest;
    this.last = from;
    this.erased = erased;
  }

  /** The last row that held. */
  get head(): RecordHead {
    return this.last;
  }

  /** Undefined when the row holds. */
  take(row: RecordRow): RecordFault | undefined {
    const fault = placeFault(row, this.last.seq) ?? this.contentFault(row);
    if (!fault) this.last = { seq: row.seq, hash: row.hash };
    return fault ?? endFaultOf(row);
  }

  private contentFault(row: RecordRow): RecordFault | undefined {
    const { seq } = row;
    if (hashOf(row, this.digest) !== row.hash && !this.wasErased(row))
      return { seq, say: `Row ${seq} was changed, or moved to another place: its hash is not that of what it says.` };
    if (row.previousHash !== this.last.hash) {
      const before = seq === 1 ? "it is not the first row that was written" : `it does not continue row ${seq - 1}`;
      return { seq, say: `Row ${seq} does not hold: ${before}. A row was replaced, inserted or removed here.` };
    }
    return undefined;
  }

  private wasErased(row: RecordRow): boolean {
    if (row.bodyJson !== ERASED_BODY || !ERASABLE.includes(row.kind)) return false;
    return this.erased.get(row.seq) === erasedDigest(row, this.digest);
  }
}

/** Whoever went on after a record that had lost or changed its last row noted it. */
function endFaultOf({ seq, kind }: RecordRow): RecordFault | undefined {
  if (kind !== BROKEN_END) return undefined;
  return {
    seq,
    say: `Row ${seq} notes that the record before it did not end as it had been written: its last rows were removed, replaced or added to.`,
  };
}

function placeFault({ seq }: RecordRow, last: number): RecordFault | undefined {
  const next = last + 1;
  if (seq === next) return undefined;
  if (!Number.isSafeInteger(seq) || seq < next)
    return { seq, say: `Row ${seq} stands in the wrong place: after row ${last} there should be row ${next}.` };
  const missing = seq - 1 === next ? `Row ${next} is missing` : `Rows ${next} to ${seq - 1} are missing`;
  return { seq: next, say: `${missing}: row ${seq} follows ${last === 0 ? "the beginning" : `row ${last}`}.` };
}

/** A column of another type than it was written with cannot have its hash taken. */
function hashOf(row: RecordRow, digest: Digest): string | null {
  try {
    return rowHash(row, digest);
  } catch {
    return null;
  }
}

/** The first of these rows that does not hold, from the first row of the record on; undefined when all do. */
export function firstFault(rows: readonly RecordRow[], digest: Digest = sha256Hex): RecordFault | undefined {
  const proof = new ChainProof(digest, undefined, erasedIn(rows));
  for (const row of rows) {
    const fault = proof.take(row);
    if (fault) return fault;
  }
  return undefined;
}

/**
 * A document between disk and memory: rebuilding it from its log, and compacting the log into a snapshot ("folding"). A
 * log that cannot be read completely is an alarm: the document is not opened, and nothing is stored over it.
 */

import * as Y from "yjs";
import type { Db } from "#db/connection.ts";
import {
  countRows,
  type LogRow,
  lastSeq,
  readGeneration,
  readStoredDoc,
  replaceBySnapshot,
  type StoredDoc,
} from "#db/repos/doc-log-repo.ts";
import { inTransaction } from "#db/transaction.ts";
import type { EventLog } from "#server/base/log.ts";

export interface LoadedDoc {
  readonly doc: Y.Doc;
  readonly generation: string;
  /** Rows since the newest snapshot. */
  readonly rows: number;
}

/** The log of a document has a gap, or bytes that are not an update. */
export class DamagedLog extends Error {
  override readonly name = "DamagedLog";
}

/** True when a document is missing content that its updates depend on; yjs silently keeps such updates aside. */
export const hasGap = (doc: Y.Doc): boolean => doc.store.pendingStructs !== null || doc.store.pendingDs !== null;

/** Undefined when there is no such document. Throws DamagedLog. */
export function loadDoc(db: Db, name: string, log: EventLog): LoadedDoc | undefined {
  const stored = readStoredDoc(db, name);
  if (!stored) return undefined;
  return { ...rebuild(stored, name, log), generation: stored.generation };
}

/** Tries the newest snapshot first; if it is damaged, the older one with all rows since, which gives the same content. */
function rebuild(stored: StoredDoc, name: string, log: EventLog): { doc: Y.Doc; rows: number } {
  const starts: (LogRow | undefined)[] = stored.snapshots.length > 0 ? [...stored.snapshots] : [undefined];
  let failure: unknown;
  for (const start of starts) {
    const rows = stored.rows.filter((row) => row.seq > (start?.seq ?? 0));
    try {
      const doc = buildDoc([...(start ? [start.bytes] : []), ...rows.map((row) => row.bytes)]);
      if (failure) log.error({ document: name, err: failure }, "a snapshot is damaged; the one before it was used");
      return { doc, rows: rows.length };
    } catch (error) {
      failure ??= error;
    }
  }
  throw new DamagedLog(`The log of ${name} cannot be read completely.`, { cause: failure });
}

/** Builds a document from updates. Throws when one is malformed or something between them is missing. */
function buildDoc(updates: readonly Uint8Array[]): Y.Doc {
  const doc = new Y.Doc();
  try {
    doc.transact(() => {
      for (const update of updates) Y.applyUpdate(doc, update);
    });
    if (hasGap(doc)) throw new DamagedLog("something between the updates is missing");
    return doc;
  } catch (error) {
    doc.destroy();
    throw error;
  }
}

/** The state of a document that is to be folded: its last row, and what the live copy held at that moment. */
export interface FoldPoint {
  readonly name: string;
  readonly generation: string;
  readonly seq: number;
  /** A yjs snapshot of the live copy: the insertions and deletions of every writer. */
  readonly snapshot: Uint8Array;
}

/** Folds on another thread; gives undefined when the program ends meanwhile. */
export type Fold = (mark: FoldPoint) => Promise<Uint8Array | undefined>;

/** The live copy must be completely on disk. Undefined when there is nothing to fold. */
export function foldPointOf(db: Db, name: string, live: Y.Doc): FoldPoint | undefined {
  const generation = readGeneration(db, name);
  const seq = lastSeq(db, name);
  if (generation === undefined || countRows(db, name) === 0) return undefined;
  return { name, generation, seq, snapshot: Y.encodeSnapshot(Y.snapshot(live)) };
}

/**
 * The bytes of a snapshot of that state. The document is rebuilt from them and compared with the log and the live copy;
 * throws when they differ. Only reads.
 */
export function foldState(db: Db, { name, seq, snapshot }: FoldPoint): Uint8Array {
  const stored = readStoredDoc(db, name);
  const start = stored?.snapshots[0];
  const rows = (stored?.rows ?? []).filter((row) => row.seq > (start?.seq ?? 0) && row.seq <= seq);
  const fromLog = buildDoc([...(start ? [start.bytes] : []), ...rows.map((row) => row.bytes)]);
  const bytes = Y.encodeStateAsUpdate(fromLog);
  const fromBytes = buildDoc([bytes]);
  const said = Y.snapshot(fromLog);
  const same = Y.equalSnapshots(said, Y.snapshot(fromBytes)) && Y.equalSnapshots(said, Y.decodeSnapshot(snapshot));
  fromLog.destroy();
  fromBytes.destroy();
  if (!same) throw new DamagedLog(`The snapshot of ${name} would differ from its log or its live copy.`);
  return bytes;
}

/** Replaces the rows by the folded state, in one transaction, unless the document's history has changed since. */
export function keepFolded(db: Db, { name, generation, seq }: FoldPoint, bytes: Uint8Array, at: number): void {
  inTransaction(db, () => {
    if (readGeneration(db, name) === generation) replaceBySnapshot(db, name, { seq, bytes }, at);
  });
}

/** Folds the rows of a document into a snapshot, on this thread. Throws, with nothing changed, when something differs. */
export function compactDoc(db: Db, name: string, live: Y.Doc, at: number): void {
  inTransaction(db, () => {
    const mark = foldPointOf(db, name, live);
    if (mark) keepFolded(db, mark, foldState(db, mark), at);
  });
}

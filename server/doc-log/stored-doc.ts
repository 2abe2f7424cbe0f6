/**
 * A document between disk and memory: rebuilding it from its log, and folding the log into a snapshot. A log that
 * cannot be read whole is an alarm: nothing is opened, and nothing is ever stored over it.
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

/** The log of a document has a hole or bytes that are no update. */
export class DamagedLog extends Error {
  override readonly name = "DamagedLog";
}

/** True when a document waits for content that has not come (yjs keeps such updates aside without a word). */
export const hasGap = (doc: Y.Doc): boolean => doc.store.pendingStructs !== null || doc.store.pendingDs !== null;

/** Undefined when there is no such document. Throws DamagedLog. */
export function loadDoc(db: Db, name: string, log: EventLog): LoadedDoc | undefined {
  const stored = readStoredDoc(db, name);
  if (!stored) return undefined;
  return { ...rebuild(stored, name, log), generation: stored.generation };
}

/** Newest snapshot first; when that one is damaged, the older one and the rows since, which say the same. */
function rebuild(stored: StoredDoc, name: string, log: EventLog): { doc: Y.Doc; rows: number } {
  const starts: (LogRow | undefined)[] = stored.snapshots.length > 0 ? [...stored.snapshots] : [undefined];
  let failure: unknown;
  for (const start of starts) {
    const rows = stored.rows.filter((row) => row.seq > (start?.seq ?? 0));
    try {
      const doc = buildDoc([...(start ? [start.bytes] : []), ...rows.map((row) => row.bytes)]);
      if (failure) log.error({ document: name, err: failure }, "a snapshot is damaged: the one before it was used");
      return { doc, rows: rows.length };
    } catch (error) {
      failure ??= error;
    }
  }
  throw new DamagedLog(`The log of ${name} cannot be read whole.`, { cause: failure });
}

/** A document made of updates. Throws when one is malformed or when something is missing between them. */
export function buildDoc(updates: readonly Uint8Array[]): Y.Doc {
  const doc = new Y.Doc();
  try {
    doc.transact(() => {
      for (const update of updates) Y.applyUpdate(doc, update);
    });
    if (hasGap(doc)) throw new DamagedLog("something is missing between the updates");
    return doc;
  } catch (error) {
    doc.destroy();
    throw error;
  }
}

/** One state of a document: the row it was read to, and what the live copy said then. */
export interface FoldPoint {
  readonly name: string;
  readonly generation: string;
  readonly seq: number;
  /** Insertions and deletions of every writer, as yjs encodes a snapshot. */
  readonly snapshot: Uint8Array;
}

/** Folds a state on another thread; undefined when the program ends meanwhile. */
export type Fold = (mark: FoldPoint) => Promise<Uint8Array | undefined>;

/** Of a document whose live copy is all on disk. Undefined when there is nothing to fold. */
export function foldPointOf(db: Db, name: string, live: Y.Doc): FoldPoint | undefined {
  const generation = readGeneration(db, name);
  const seq = lastSeq(db, name);
  if (generation === undefined || countRows(db, name) === 0) return undefined;
  return { name, generation, seq, snapshot: Y.encodeSnapshot(Y.snapshot(live)) };
}

/**
 * The bytes of a snapshot of that state, after rebuilding the document from them and comparing it with what the log says and
 * with the live copy. Throws when they differ. Only reads.
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
  if (!same) throw new DamagedLog(`The snapshot of ${name} would not say what its log and its live copy say.`);
  return bytes;
}

/** Puts a folded state in the place of its rows, in one transaction, where the document goes on from it. */
export function keepFolded(db: Db, { name, generation, seq }: FoldPoint, bytes: Uint8Array, at: number): void {
  inTransaction(db, () => {
    if (readGeneration(db, name) === generation) replaceBySnapshot(db, name, { seq, bytes }, at);
  });
}

/** Folds the rows of a document into a snapshot here and now. Throws, with nothing changed, when something differs. */
export function compactDoc(db: Db, name: string, live: Y.Doc, at: number): void {
  inTransaction(db, () => {
    const mark = foldPointOf(db, name, live);
    if (mark) keepFolded(db, mark, foldState(db, mark), at);
  });
}

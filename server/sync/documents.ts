/** Stored documents behind the rooms: creating one, reading one that nobody has open, changing one by the server. */

import * as Y from "yjs";
import type { Db } from "#db/connection.ts";
import { appendRow, insertHeader, NoSuchDocument } from "#db/repos/doc-log-repo.ts";
import { inTransaction, isInTransaction } from "#db/transaction.ts";
import { type DocName, formatDocName } from "#lib/protocol/messages.ts";
import type { EventLog } from "#server/base/log.ts";
import { DocUnavailable } from "#server/context/live-documents.ts";
import type { Fold } from "#server/doc-log/stored-doc.ts";
import { DamagedLog, hasGap, type LoadedDoc, loadDoc } from "#server/doc-log/stored-doc.ts";
import { mergeUpdates } from "#server/doc-log/updates.ts";
import type { SyncHost } from "./host.ts";
import type { Limits } from "./limits.ts";
import type { SyncMeter } from "./meter.ts";
import { type DocumentRoom, PROGRAM_ACTOR } from "./room.ts";

/** What everything in this folder works with. */
export interface RegistryContext {
  readonly db: Db;
  readonly host: SyncHost;
  readonly log: EventLog;
  readonly limits: Limits;
  /** ms since the epoch, UTC. */
  readonly now: () => number;
  readonly newId: () => string;
  /** Syncs what was committed to the disk. */
  readonly sync: () => Promise<void>;
  readonly fold?: Fold;
  readonly meter: SyncMeter;
}

export interface OpenedDoc extends LoadedDoc {
  /** What the migration changed: not on disk yet. */
  readonly migration?: Uint8Array;
}

/** The document from disk, migrated to this program's version. Throws DocUnavailable. */
export function loadOrCreate(context: RegistryContext, name: DocName): OpenedDoc {
  const found = tryLoad(context, name);
  if (found) return found;
  const made = context.host.kinds[name.kind].create?.(name.key);
  if (!made) throw new DocUnavailable("unknownDocument", `There is no document ${formatDocName(name)}.`);
  guardStorage(context, name, () => createDoc(context, name, { doc: made, actorId: PROGRAM_ACTOR }));
  made.destroy();
  return loadOrCreate(context, name);
}

/** Stores header and first update in one transaction. The update's bytes are stored, never rebuilt from data (INV-04). */
export function createDoc(context: RegistryContext, name: DocName, first: { doc: Y.Doc; actorId: string }): void {
  if (hasGap(first.doc)) throw new Error("a new document must not have missing parts");
  const key = formatDocName(name);
  const at = context.now();
  inTransaction(context.db, () => {
    insertHeader(context.db, key, context.newId(), at);
    appendAs(context, name, { bytes: Y.encodeStateAsUpdate(first.doc), actorId: first.actorId, at });
  });
}

/** Reads a document that nobody has open. One that opening would create is created in memory only. */
export function readClosed<T>(context: RegistryContext, name: DocName, fn: (doc: Y.Doc) => T): T {
  const doc = tryLoad(context, name)?.doc ?? context.host.kinds[name.kind].create?.(name.key);
  if (!doc) throw new DocUnavailable("unknownDocument", `There is no document ${formatDocName(name)}.`);
  try {
    return settled(fn(doc));
  } finally {
    doc.destroy();
  }
}

/** Changes the document of a room with nothing unsaved: on a copy, then on disk, then for everybody. */
export function transactIn<T>(
  context: RegistryContext,
  room: DocumentRoom,
  change: { actorId: string; fn: (doc: Y.Doc) => T },
): T {
  if (isInTransaction(context.db)) throw new Error("a document cannot be changed inside a database transaction");
  const copy = new Y.Doc();
  try {
    Y.applyUpdate(copy, Y.encodeStateAsUpdate(room.doc));
    const updates: Uint8Array[] = [];
    copy.on("update", (update: Uint8Array) => updates.push(update));
    const result = settled(copy.transact(() => change.fn(copy), "server"));
    if (updates.length === 0) return result;
    const bytes = mergeUpdates(updates);
    guardStorage(context, room.name, () =>
      inTransaction(context.db, () =>
        appendAs(context, room.name, { bytes, actorId: change.actorId, at: context.now() }),
      ),
    );
    room.applyStored(bytes);
    return result;
  } finally {
    copy.destroy();
  }
}

function appendAs(
  { db, host }: RegistryContext,
  name: DocName,
  row: { bytes: Uint8Array; actorId: string; at: number },
): void {
  appendRow(db, { name: formatDocName(name), ...row });
  if (row.actorId !== PROGRAM_ACTOR) host.kinds[name.kind].wrote?.(name.key, row.actorId, row.at);
}

function tryLoad(context: RegistryContext, name: DocName): OpenedDoc | undefined {
  const loaded = guardStorage(context, name, () => loadDoc(context.db, formatDocName(name), context.log));
  return loaded && carryForward(context, name, loaded);
}

function carryForward(context: RegistryContext, name: DocName, loaded: LoadedDoc): OpenedDoc {
  const updates: Uint8Array[] = [];
  const collect = (update: Uint8Array) => updates.push(update);
  loaded.doc.on("update", collect);
  const migration = context.host.kinds[name.kind].migrate(loaded.doc);
  loaded.doc.off("update", collect);
  if (migration.kind === "newer") {
    loaded.doc.destroy();
    context.log.warn(
      { document: formatDocName(name), version: migration.version },
      "a document of a newer program was not opened",
    );
    throw new DocUnavailable("newerDocument", `${formatDocName(name)} was written by a newer version of the program.`);
  }
  return updates.length === 0 ? loaded : { ...loaded, migration: mergeUpdates(updates) };
}

/** Turns an error of the disk into one that people can be told. */
function guardStorage<T>(context: RegistryContext, name: DocName, work: () => T): T {
  try {
    return work();
  } catch (error) {
    const document = formatDocName(name);
    if (error instanceof NoSuchDocument)
      throw new DocUnavailable("unknownDocument", `There is no document ${document}.`, { cause: error });
    const reason = error instanceof DamagedLog ? "damaged" : "storageFailing";
    context.log.error({ document, err: error }, reason === "damaged" ? "the log is damaged" : "the disk failed");
    throw new DocUnavailable(reason, `${document} cannot be opened or written at the moment.`, { cause: error });
  }
}

/** Refuses a promise: it would go on reading or writing after the document has changed. */
export function settled<T>(value: T): T {
  const isPromise = typeof value === "object" && value !== null && "then" in value;
  if (isPromise) throw new TypeError("work on a document must not return a promise");
  return value;
}

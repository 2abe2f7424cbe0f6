/** Creates the live documents: the registry that sockets join, and the `LiveDocuments` that commands use. */

import { randomUUID } from "node:crypto";
import type { Db } from "#db/connection.ts";
import { syncLog } from "#db/file/log-sync.ts";
import { readGeneration } from "#db/repos/doc-log-repo.ts";
import { formatDocName } from "#lib/protocol/messages.ts";
import type { EventLog } from "#server/base/log.ts";
import { DocUnavailable, type LiveDocuments } from "#server/context/live-documents.ts";
import type { Fold } from "#server/doc-log/stored-doc.ts";
import { syncedUnlessDamaged } from "./damaged.ts";
import { createDoc, readClosed, settled, transactIn } from "./documents.ts";
import type { SyncHost } from "./host.ts";
import { LIMITS, type Limits } from "./limits.ts";
import { NO_METER, type SyncMeter } from "./meter.ts";
import { RoomRegistry } from "./registry.ts";

export interface DocumentRoomsOptions {
  readonly db: Db;
  readonly host: SyncHost;
  readonly log: EventLog;
  /** ms since the epoch, UTC. */
  readonly now?: () => number;
  readonly newId?: () => string;
  readonly limits?: Partial<Limits>;
  /** Syncs what was committed to the disk; a test may replace it. */
  readonly sync?: () => Promise<void>;
  /** Compacts large documents on another thread; left out: on this one. */
  readonly fold?: Fold;
  /** Left out: nothing is measured. */
  readonly meter?: SyncMeter;
}

/** `LiveDocuments` for the program, with the registry for `attachSync`. */
export interface DocumentRooms extends LiveDocuments {
  readonly registry: RoomRegistry;
}

/** One per database: nothing else may write its document log. Starts timers; `stop()` ends them. */
export function createDocumentRooms(options: DocumentRoomsOptions): DocumentRooms {
  const { db, host, log, now = Date.now, newId = randomUUID, sync = () => syncLog(db) } = options;
  const whole = () => syncedUnlessDamaged(db, sync);
  const { fold, meter = NO_METER } = options;
  const context = {
    ...{ db, host, log, now, newId, meter, sync: whole, limits: { ...LIMITS, ...options.limits } },
    ...(fold ? { fold } : {}),
  };
  const registry = new RoomRegistry(context);
  db.damage.onFound(() => registry.tellDamage());
  return {
    registry,
    create: (name, doc, actorId) => createDoc(context, name, { doc, actorId }),
    withDoc(name, fn) {
      const room = registry.find(name);
      if (room && !room.isClean) registry.flush();
      return room?.isClean && !room.broken ? settled(fn(room.doc)) : readClosed(context, name, fn);
    },
    transact(name, actorId, fn) {
      const room = registry.open(name);
      registry.flush();
      if (!room.isClean || room.broken)
        throw new DocUnavailable("storageFailing", "The server cannot save at the moment.");
      return transactIn(context, room, { actorId, fn });
    },
    announce: (name, news) => registry.find(name)?.announce(news),
    announceEach: (name, newsFor) => registry.find(name)?.announceEach(newsFor),
    opened: (kind) => registry.opened(kind),
    generation: (name) => readGeneration(db, formatDocName(name)),
    inTurn: (userId, work) => registry.scheduler.inTurn(userId, work),
    drop: (name) => registry.drop(name),
    refreshAccess: () => registry.refreshAccess(),
    stop: async (limitMs = context.limits.stopMs) => ({ unsaved: await registry.stop(limitMs) }),
    health: () => registry.health(),
  };
}

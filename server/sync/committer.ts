/**
 * Append, relay, sync, acknowledge. What the rooms queued in one turn of the event loop is committed in one transaction at
 * its end. Only then does each room send it on, and only once it is synced to the disk are its writers told that it is
 * saved. When a commit fails nothing is sent or called saved: it is retried, more and more slowly, for ever.
 */

import type { Db } from "#db/connection.ts";
import { appendRow, NoSuchDocument } from "#db/repos/doc-log-repo.ts";
import { appendTransaction, isInTransaction } from "#db/transaction.ts";
import type { EventLog } from "#server/base/log.ts";
import { Hardener } from "./hardener.ts";
import type { SyncHost } from "./host.ts";
import type { Limits } from "./limits.ts";
import type { SyncMeter } from "./meter.ts";
import { type DocumentRoom, PROGRAM_ACTOR } from "./room.ts";

export interface CommitterOptions {
  readonly db: Db;
  readonly host: SyncHost;
  readonly log: EventLog;
  readonly limits: Limits;
  readonly now: () => number;
  readonly meter: SyncMeter;
  /** Syncs what was committed to the disk. */
  readonly sync: () => Promise<void>;
  /** Called for a room whose changes could not be saved, once they are. */
  readonly healed: (room: DocumentRoom) => void;
  /** Called for a room whose document has been deleted: its changes belong to nothing. */
  readonly gone: (room: DocumentRoom) => void;
}

export class Committer {
  private readonly awake = new Set<DocumentRoom>();
  private readonly failing = new Set<DocumentRoom>();
  private turn: NodeJS.Immediate | undefined;
  private retry: NodeJS.Timeout | undefined;
  private waitMs: number;
  private readonly hardener: Hardener;
  private readonly options: CommitterOptions;

  constructor(options: CommitterOptions) {
    this.options = options;
    this.waitMs = options.limits.retryFirstMs;
    this.hardener = new Hardener({
      ...options,
      retryMs: options.limits.retryFirstMs,
      everyMs: options.limits.syncEveryMs,
    });
  }

  get failingRooms(): readonly DocumentRoom[] {
    return [...this.failing];
  }

  wake(room: DocumentRoom): void {
    this.awake.add(room);
    this.turn ??= setImmediate(() => this.endTurn());
  }

  forget(room: DocumentRoom): void {
    this.awake.delete(room);
    this.failing.delete(room);
  }

  /**
   * Commits what is queued, now. Never throws: a room that could not be saved is `failing` afterwards. Inside somebody
   * else's transaction it does nothing, since that could still be rolled back; the end of the turn comes soon enough.
   */
  flush(): void {
    if (isInTransaction(this.options.db)) return;
    for (const room of this.awake) room.takeHeard();
    const rooms = [...this.awake].filter((room) => !room.failing && !room.isClean);
    if (rooms.length > 0) this.commit(rooms);
  }

  /** Retries the failing rooms at once, without waiting for the back-off. */
  retryNow(): void {
    clearTimeout(this.retry);
    this.retry = undefined;
    if (this.failing.size > 0) this.commit([...this.failing]);
  }

  /** Commits, passes on and syncs what is here, and tells its writers; gives up on the disk after `limitMs`. */
  async finish(limitMs: number): Promise<void> {
    clearImmediate(this.turn);
    this.endTurn();
    await this.hardener.settled(limitMs);
  }

  stop(): void {
    this.hardener.stop();
    clearImmediate(this.turn);
    clearTimeout(this.retry);
  }

  private endTurn(): void {
    this.turn = undefined;
    for (const room of this.awake) room.takeHeard();
    const unsaved = [...this.awake].filter((room) => !room.failing && !room.isClean);
    if (unsaved.length > 0) this.commit(unsaved);
    // Sending may wake rooms again (a slow page is disconnected): that is work for the next turn.
    const rooms = [...this.awake];
    this.awake.clear();
    for (const room of rooms) {
      if (room.isClean && !room.failing) this.hardener.owe(room.settle());
      room.sendMoves();
    }
  }

  private commit(rooms: readonly DocumentRoom[]): void {
    const outcome = this.tryCommit(rooms);
    if (outcome === "stored") for (const room of rooms) this.succeeded(room);
    else if (rooms.length === 1) for (const room of rooms) this.failed(room, outcome.cause);
    // One room's bad row must not block the others.
    else for (const room of rooms) this.commit([room]);
  }

  private tryCommit(rooms: readonly DocumentRoom[]): "stored" | { readonly cause: unknown } {
    try {
      if (isInTransaction(this.options.db))
        throw new Error("a transaction was left open across turns of the event loop");
      appendTransaction(this.options.db, () => {
        for (const room of rooms) this.store(room);
      });
      for (const room of rooms)
        for (const { bytes } of room.waiting.together()) this.options.meter.stored(bytes.length);
      return "stored";
    } catch (cause) {
      return { cause };
    }
  }

  private store(room: DocumentRoom): void {
    const at = this.options.now();
    room.owners.store(at);
    for (const { actorId, bytes } of room.waiting.together()) {
      appendRow(this.options.db, { name: room.key, bytes, actorId, at });
      if (actorId !== PROGRAM_ACTOR && !room.authors.has(actorId))
        this.options.host.kinds[room.name.kind].wrote?.(room.name.key, actorId, at);
    }
  }

  private succeeded(room: DocumentRoom): void {
    room.markStored();
    this.waitMs = this.options.limits.retryFirstMs;
    if (!room.failing) return;
    room.failing = false;
    this.failing.delete(room);
    this.options.log.info({ document: room.key }, "the document is saved again");
    this.hardener.owe(room.settle());
    room.announce({ t: "storage", failing: false });
    this.options.healed(room);
  }

  private failed(room: DocumentRoom, cause: unknown): void {
    if (cause instanceof NoSuchDocument) {
      this.options.gone(room);
      return;
    }
    if (!room.failing) {
      this.options.log.error({ document: room.key, err: cause }, "changes cannot be saved; they are kept and retried");
      room.failing = true;
      this.failing.add(room);
      room.announce({ t: "storage", failing: true });
    }
    if (this.retry) return;
    this.retry = setTimeout(() => this.retryNow(), this.waitMs);
    this.waitMs = Math.min(this.waitMs * 2, this.options.limits.retryLongestMs);
  }
}

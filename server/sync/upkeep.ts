/** What a room needs besides its edits, each on its own timer: follow-up work after a burst, compaction, unloading. */

import type { Db } from "#db/connection.ts";
import { countPieces } from "#lib/doc/bounds.ts";
import { Burst } from "#server/base/burst.ts";
import type { EventLog } from "#server/base/log.ts";
import { compactDoc, type Fold, foldPointOf, keepFolded } from "#server/doc-log/stored-doc.ts";
import type { Limits } from "./limits.ts";
import type { DocumentRoom } from "./room.ts";

export interface UpkeepOptions {
  readonly db: Db;
  readonly log: EventLog;
  readonly limits: Limits;
  readonly now: () => number;
  readonly fold?: Fold;
  readonly afterChange: (room: DocumentRoom) => void;
  readonly idle: (room: DocumentRoom) => void;
}

export class Upkeep {
  private readonly room: DocumentRoom;
  private readonly options: UpkeepOptions;
  private readonly burst: Burst;
  private compaction: NodeJS.Timeout | undefined;
  private farewell: NodeJS.Timeout | undefined;
  private folding = false;
  /** After a failure: ms since the epoch. */
  private notBefore = 0;

  constructor(room: DocumentRoom, options: UpkeepOptions) {
    this.room = room;
    this.options = options;
    const { burstQuietMs: quiet, burstLongestMs: longest } = options.limits;
    this.burst = new Burst(() => this.afterBurst(), { quiet, longest });
  }

  /** Changes have been stored and sent on. */
  changed(): void {
    this.burst.note();
    const { compactRows, compactRowsBusy, compactQuietMs } = this.options.limits;
    if (this.room.rows >= compactRowsBusy) this.compact();
    else if (this.compaction) this.compaction.refresh();
    // Compaction rebuilds the document: it waits for a pause in the typing.
    else if (this.room.rows >= compactRows) this.compaction = setTimeout(() => this.compact(), compactQuietMs).unref();
  }

  emptied(): void {
    clearTimeout(this.farewell);
    this.farewell = setTimeout(() => this.options.idle(this.room), this.options.limits.idleMs).unref();
  }

  joined(): void {
    clearTimeout(this.farewell);
    this.farewell = undefined;
  }

  settleBurst(): void {
    this.burst.settle();
  }

  /**
   * Compacts the log into a snapshot if there is anything to compact. A failure changes nothing. A large document is
   * compacted on another thread, if one is available.
   */
  compact(): void {
    clearTimeout(this.compaction);
    this.compaction = undefined;
    const { room, options } = this;
    if (room.rows === 0 || !room.isClean || room.broken || this.folding || options.now() < this.notBefore) return;
    const { fold } = options;
    const { foldHerePieces, foldHereRows } = options.limits;
    if (fold && (room.rows > foldHereRows || countPieces(room.doc) > foldHerePieces)) void this.compactBeside(fold);
    else
      this.attempt(() => {
        compactDoc(options.db, room.key, room.doc, options.now());
        room.rows = 0;
      });
  }

  private async compactBeside(fold: Fold): Promise<void> {
    const { room, options } = this;
    const { rows } = room;
    this.folding = true;
    try {
      const mark = foldPointOf(options.db, room.key, room.doc);
      const bytes = mark && (await fold(mark));
      if (!mark || !bytes || !options.db.raw.open) return;
      keepFolded(options.db, mark, bytes, options.now());
      room.rows -= rows;
    } catch (error) {
      this.couldNot(error);
    } finally {
      this.folding = false;
    }
  }

  private attempt(act: () => void): void {
    try {
      act();
    } catch (error) {
      this.couldNot(error);
    }
  }

  private couldNot(error: unknown): void {
    this.notBefore = this.options.now() + this.options.limits.foldAgainMs;
    this.options.log.error(
      { document: this.room.key, err: error },
      "the log could not be compacted and stays as it is",
    );
  }

  close(): void {
    this.burst.cancel();
    clearTimeout(this.compaction);
    clearTimeout(this.farewell);
  }

  private afterBurst(): void {
    try {
      this.options.afterChange(this.room);
    } catch (error) {
      this.options.log.error({ document: this.room.key, err: error }, "the follow-up work of a change failed");
    }
  }
}

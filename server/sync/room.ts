/**
 * One live document and everybody in it. Changes are applied, queued by the document's own `update` event, and handed
 * to the registry, which commits the queues of all rooms once a turn of the event loop; only then does `settle` send
 * them on and tell each writer. Nothing here may throw out of a listener: yjs would stop emitting for good.
 */
import * as Y from "yjs";
import { type DocName, formatDocName, type News } from "#lib/protocol/messages.ts";
import { hasGap } from "#server/doc-log/stored-doc.ts";
import { decodeUpdate, putTogether } from "#server/doc-log/updates.ts";
import { type Frame, isEmptyVector, newsFrame, step1Frame, step2Frame, updateFrame } from "./frames.ts";
import type { Owed } from "./hardener.ts";
import { judgeUpdate, ownPart, type UpdateFault, type UpdateJudge } from "./judge.ts";
import type { LoadedRoom } from "./loaded-room.ts";
import type { Owners } from "./owners.ts";
import type { PageConnection } from "./page-connection.ts";
import { Presence } from "./presence.ts";
import { peopleOf } from "./present.ts";
import { DocSize } from "./size.ts";
import { UpdateQueue } from "./update-queue.ts";
import type { WholeStates } from "./whole.ts";

/** Who the log names for what the program itself changes: migrations. Never a person's id. */
export const PROGRAM_ACTOR = "program";
/** Origin of changes that are on disk before they are applied. */
const STORED = Symbol("stored");

/** What became of a page's update. */
export type UpdateOutcome = UpdateFault | "applied" | "gap" | "broken";

/** What a room asks of the registry. */
export interface RoomKeeper {
  readonly wholes: WholeStates<DocumentRoom>;
  /** There is something to do at the end of this turn. */
  wake(room: DocumentRoom): void;
  /** Commit now. */
  flush(): void;
  /** The room's memory cannot be trusted any more. */
  broke(room: DocumentRoom, cause: unknown): void;
  emptied(room: DocumentRoom): void;
  changed(room: DocumentRoom): void;
  noteRefused(connection: PageConnection, cause: string, count: number): void;
}

export class DocumentRoom {
  readonly name: DocName;
  readonly key: string;
  readonly doc: Y.Doc;
  readonly generation: string;
  private readonly carryLate: () => void;
  private readonly court: UpdateJudge;
  readonly owners: Owners;
  readonly connections = new Set<PageConnection>();
  readonly waiting = new UpdateQueue();
  /** People already noted as authors on disk. */
  readonly authors = new Set<string>();
  /** Rows on disk since the newest snapshot. */
  rows: number;
  failing = false;
  broken = false;
  private readonly keeper: RoomKeeper;
  private readonly presence: Presence;
  private readonly hearing = new Set<PageConnection>();
  private readonly owed = new Set<PageConnection>();
  private readonly asking = new Map<PageConnection, Uint8Array>();
  private peopleChanged = false;
  private origin: PageConnection | null = null;

  constructor(name: DocName, loaded: LoadedRoom, keeper: RoomKeeper) {
    this.name = name;
    this.key = formatDocName(name);
    this.doc = loaded.doc;
    this.carryLate = loaded.carryLate?.(loaded.doc) ?? (() => undefined);
    this.owners = loaded.owners;
    this.presence = new Presence((clientId) => this.owners.of(clientId));
    this.court = {
      doc: loaded.doc,
      holdOf: loaded.holds(loaded.doc),
      size: new DocSize(loaded.doc, loaded.bounds),
      ownerOf: (clientId) => this.owners.of(clientId) ?? this.presence.userOf(clientId),
    };
    this.generation = loaded.generation;
    this.rows = loaded.rows;
    this.keeper = keeper;
    this.doc.on("update", (bytes: Uint8Array, origin: unknown) => {
      this.keeper.wholes.forget(this);
      if (origin === STORED) return;
      const from = this.origin;
      this.waiting.push({ bytes, actorId: from?.session.userId ?? PROGRAM_ACTOR, from });
      this.keeper.wake(this);
    });
  }

  get isClean(): boolean {
    return this.waiting.isEmpty;
  }

  /** Applies a page's update. `gap`: it lacks something that the server has never seen; nothing of it is kept waiting. */
  apply(from: PageConnection, update: Uint8Array): UpdateOutcome {
    const judged = judgeUpdate(this.court, from.session.userId, update);
    if (typeof judged === "string") return judged;
    const { bytes, speakers } = judged;
    try {
      this.origin = from;
      this.owners.note(speakers, from.session.userId);
      Y.applyUpdate(this.doc, bytes, from);
    } catch (error) {
      return this.judgeFailure(from, bytes, error);
    } finally {
      this.origin = null;
    }
    this.carryLate();
    if (!hasGap(this.doc)) return "applied";
    // Kept aside by yjs it would count as said, be in nobody's log, and surface at some later time.
    this.doc.store.pendingStructs = null;
    this.doc.store.pendingDs = null;
    return "gap";
  }

  /** Applies what a page said in one turn as one update, or nothing of it: false when each must be judged by itself. */
  applyTogether(from: PageConnection, updates: readonly Uint8Array[]): boolean {
    const together = putTogether(updates);
    return together !== undefined && this.apply(from, together) === "applied";
  }

  /** The page has said something that the room takes at the end of this turn. */
  hears(connection: PageConnection): void {
    this.hearing.add(connection);
    this.keeper.wake(this);
  }

  /** Takes what the pages have said. */
  takeHeard(): void {
    for (const connection of this.hearing) {
      this.hearing.delete(connection);
      if (!this.broken) connection.takeHeard();
    }
  }

  /** What of an update is not under the client ids of other people's pages. */
  ownPart = (from: PageConnection, update: Uint8Array): Uint8Array => ownPart(this.court, from.session.userId, update);

  /**
   * Something threw inside a transaction: yjs emits no update of this document any more, whoever is to blame. When a
   * fresh copy chokes on the update as well, its sender is.
   */
  private judgeFailure(from: PageConnection, update: Uint8Array, cause: unknown): "malformed" | "broken" {
    const innocent = new Y.Doc();
    try {
      Y.applyUpdate(innocent, Y.encodeStateAsUpdate(this.doc));
      Y.applyUpdate(innocent, update);
      return "broken";
    } catch {
      // Its sender is told so and does not come back with it; the others only reconnect.
      from.close("badMessage");
      return "malformed";
    } finally {
      innocent.destroy();
      this.keeper.broke(this, cause);
    }
  }

  /** What carrying the loaded document forward has changed: stored before anybody sees it. */
  takeMigration(bytes: Uint8Array): void {
    this.waiting.push({ bytes, actorId: PROGRAM_ACTOR, from: null });
    this.keeper.wake(this);
  }

  /** True when an update says nothing that the document does not already hold. */
  holds(update: Uint8Array): boolean {
    if (!decodeUpdate(update)) return false;
    return Y.snapshotContainsUpdate(Y.snapshot(this.doc), update);
  }

  /** Applies what is already on disk and sends it on. */
  applyStored(update: Uint8Array): void {
    try {
      Y.applyUpdate(this.doc, update, STORED);
      this.rows++;
      this.relay(updateFrame(update), null);
      this.keeper.changed(this);
    } catch (error) {
      this.keeper.broke(this, error);
    }
  }

  /** Answers step 1 with what is on disk, now or as soon as it is. */
  answer(connection: PageConnection, stateVector: Uint8Array): void {
    Y.decodeStateVector(stateVector);
    if (!this.isClean) this.keeper.flush();
    if (this.isClean) connection.send(this.answerTo(stateVector));
    else this.asking.set(connection, stateVector);
  }

  private answerTo(stateVector: Uint8Array): Frame {
    const make = () => step2Frame(this.doc, stateVector);
    return isEmptyVector(stateVector) ? this.keeper.wholes.of(this, make) : make();
  }

  join(connection: PageConnection, news: readonly News[]): void {
    this.connections.add(connection);
    // First of all: a page answers with what it holds, so that it has offered everything before it counts as synced.
    connection.send(step1Frame(this.doc));
    connection.sendNews({ t: "generation", generation: this.generation });
    connection.sendNews({ t: "rights", writes: connection.access.writes, comments: connection.access.comments });
    for (const item of news) connection.sendNews(item);
    this.sendEverybody(connection);
    this.peopleMoved();
  }

  leave(connection: PageConnection): void {
    if (!this.connections.delete(connection)) return;
    this.owed.delete(connection);
    this.asking.delete(connection);
    this.presence.drop(connection);
    this.peopleMoved();
    if (this.connections.size === 0) this.keeper.emptied(this);
  }

  /** Somebody came, went, or may now do something else. */
  peopleMoved(): void {
    this.peopleChanged = true;
    this.keeper.wake(this);
  }

  takePresence(connection: PageConnection, update: Uint8Array): number {
    const refused = this.presence.take(connection, update);
    if (this.presence.hasNews) this.keeper.wake(this);
    return refused;
  }

  hidePresence(connection: PageConnection): void {
    this.presence.drop(connection);
    this.keeper.wake(this);
  }

  sendEverybody(connection: PageConnection): void {
    const frame = this.presence.everybody();
    if (frame) connection.send(frame);
  }

  /** The page is to hear how many of its messages are on disk, at the end of this turn. */
  owesAnswer(connection: PageConnection): void {
    this.owed.add(connection);
    this.keeper.wake(this);
  }

  noteRefused(connection: PageConnection, cause: string, count: number): void {
    this.keeper.noteRefused(connection, cause, count);
  }

  announce(news: News): void {
    const frame = newsFrame(news);
    for (const connection of this.connections) connection.send(frame);
  }

  announceEach(newsFor: (userId: string) => News): void {
    const frames = new Map<string, Uint8Array>();
    for (const connection of this.connections) {
      const { userId } = connection.session;
      const frame = frames.get(userId) ?? newsFrame(newsFor(userId));
      frames.set(userId, frame);
      connection.send(frame);
    }
  }

  /** All that waited for the log has just been committed. */
  markStored(): void {
    for (const { actorId } of this.waiting.markStored()) {
      this.authors.add(actorId);
      this.rows++;
    }
    this.owners.stored();
  }

  /** Nothing waits for the log: sends on what was stored, answers who asked, and gives whom to tell once it is hard. */
  settle(): Owed[] {
    const stored = this.waiting.takeStored();
    if (stored) {
      this.relay(updateFrame(stored.bytes), stored.from);
      this.keeper.changed(this);
    }
    const owed = [...this.owed].map((connection) => ({ connection, count: connection.counted }));
    this.owed.clear();
    for (const [connection, stateVector] of this.asking) connection.send(this.answerTo(stateVector));
    this.asking.clear();
    return owed;
  }

  /** Presence travels whether or not the disk works. */
  sendMoves(): void {
    if (this.presence.hasNews) {
      const frameFor = this.presence.takeNews();
      for (const connection of this.connections) {
        const frame = frameFor(connection);
        if (frame) connection.send(frame);
      }
    }
    if (!this.peopleChanged) return;
    this.peopleChanged = false;
    this.announce({ t: "present", people: peopleOf(this.connections) });
  }

  private relay(frame: Uint8Array, except: PageConnection | null): void {
    for (const connection of this.connections) if (connection !== except) connection.send(frame);
  }
}

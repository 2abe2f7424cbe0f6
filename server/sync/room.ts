/**
 * One live document and everybody in it. Changes are applied, then queued by the document's `update` event. The registry
 * commits the queues of all rooms once per turn of the event loop; only then does `settle` send the changes on and answer
 * their writers. No listener may throw: yjs would stop emitting updates for good (INV-03).
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

/** The actor in the log for what the program itself changes, such as migrations. Never a person's id. */
export const PROGRAM_ACTOR = "program";
/** The origin of changes that are on disk before they are applied. */
const STORED = Symbol("stored");

/** The result of a page's update. */
export type UpdateOutcome = UpdateFault | "applied" | "gap" | "broken";

/** What a room needs of the registry. */
export interface RoomKeeper {
  readonly wholes: WholeStates<DocumentRoom>;
  /** The room has work for the end of this turn. */
  wake(room: DocumentRoom): void;
  /** Commit now. */
  flush(): void;
  /** The document in memory cannot be trusted any more. */
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
  /** People already stored as authors. */
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

  /** Applies a page's update. `gap`: it depends on something that the server does not have, so nothing of it is kept. */
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
    // yjs would keep it aside: it would count as saved, be in no log, and appear at some later time.
    this.doc.store.pendingStructs = null;
    this.doc.store.pendingDs = null;
    return "gap";
  }

  /** Applies a page's updates of one turn as one, or none of them: false when each has to be applied by itself. */
  applyTogether(from: PageConnection, updates: readonly Uint8Array[]): boolean {
    const together = putTogether(updates);
    return together !== undefined && this.apply(from, together) === "applied";
  }

  /** The page has sent something that the room takes at the end of this turn. */
  hears(connection: PageConnection): void {
    this.hearing.add(connection);
    this.keeper.wake(this);
  }

  /** Takes what the pages have sent in this turn. */
  takeHeard(): void {
    for (const connection of this.hearing) {
      this.hearing.delete(connection);
      if (!this.broken) connection.takeHeard();
    }
  }

  /** The part of an update that is not under the client ids of other people's pages. */
  ownPart = (from: PageConnection, update: Uint8Array): Uint8Array => ownPart(this.court, from.session.userId, update);

  /**
   * Something threw inside a transaction, after which yjs emits no more updates of this document. If a fresh copy fails on
   * the update as well, the update is at fault.
   */
  private judgeFailure(from: PageConnection, update: Uint8Array, cause: unknown): "malformed" | "broken" {
    const innocent = new Y.Doc();
    try {
      Y.applyUpdate(innocent, Y.encodeStateAsUpdate(this.doc));
      Y.applyUpdate(innocent, update);
      return "broken";
    } catch {
      // The sender is told and does not send it again; the others only reconnect.
      from.close("badMessage");
      return "malformed";
    } finally {
      innocent.destroy();
      this.keeper.broke(this, cause);
    }
  }

  /** The changes of a migration: stored before anybody sees them. */
  takeMigration(bytes: Uint8Array): void {
    this.waiting.push({ bytes, actorId: PROGRAM_ACTOR, from: null });
    this.keeper.wake(this);
  }

  /** True when the document already holds everything in the update. */
  holds(update: Uint8Array): boolean {
    if (!decodeUpdate(update)) return false;
    return Y.snapshotContainsUpdate(Y.snapshot(this.doc), update);
  }

  /** Applies a change that is already on disk and sends it on. */
  applyStored(update: Uint8Array): void {
    try {
      Y.applyUpdate(this.doc, update, STORED);
      this.rows++;
      this.relay(updateFrame(update), null);
      this.keeper.changed(this);
      this.carryLate();
    } catch (error) {
      this.keeper.broke(this, error);
    }
  }

  /** Answers sync step 1 with what is on disk, as soon as everything is. */
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
    // First of all, so that the page has sent everything it holds before it counts as synced.
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

  /** Somebody joined, left, or has other rights now. */
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

  /** At the end of this turn the page is to be told how many of its messages are on disk. */
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

  /** Everything in the queue has just been committed. */
  markStored(): void {
    for (const { actorId } of this.waiting.markStored()) {
      this.authors.add(actorId);
      this.rows++;
    }
    this.owners.stored();
  }

  /** The queue is empty: sends on what was stored, answers sync requests, and returns whom to tell once it is synced. */
  settle(): Owed[] {
    const stored = this.waiting.takeStored();
    if (stored) {
      this.relay(updateFrame(stored.bytes), stored.from);
      this.keeper.changed(this);
    }
    const owed = [...this.owed].map((connection) => ({
      ...{ connection, count: connection.counted, arrived: connection.takeArrival() },
    }));
    this.owed.clear();
    for (const [connection, stateVector] of this.asking) connection.send(this.answerTo(stateVector));
    this.asking.clear();
    return owed;
  }

  /** Presence is sent whether or not the disk works. */
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

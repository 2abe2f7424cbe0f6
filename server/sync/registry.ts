/**
 * The live rooms of the process. It opens each document at most once, keeps it while anybody is there or anything is
 * unsaved, and lets sockets in. Loading is synchronous, like SQLite here, so two pages that open the same document cannot
 * race.
 */
import type { WebSocket } from "ws";
import type { CloseName } from "#lib/protocol/close.ts";
import { type DocKind, type DocName, formatDocName, type News } from "#lib/protocol/messages.ts";
import { DocUnavailable } from "#server/context/live-documents.ts";
import { RefusalLog } from "#server/limits/refusal-log.ts";
import { accessOf, sameRights } from "./access.ts";
import { Committer } from "./committer.ts";
import { Connection, closeSocket } from "./connection.ts";
import { DAMAGED, damageNews, notSaving } from "./damaged.ts";
import { loadOrCreate, type RegistryContext } from "./documents.ts";
import type { FrameLane } from "./frame-scheduler.ts";
import { FrameScheduler } from "./frame-scheduler.ts";
import type { DocAccess, SessionInfo } from "./host.ts";
import { Owners } from "./owners.ts";
import { type PageClaims, refuseGeneration, refusePerson, refuseVersions } from "./page-claims.ts";
import type { PageConnection } from "./page-connection.ts";
import { DocumentRoom, type RoomKeeper } from "./room.ts";
import { Sweep } from "./sweep.ts";
import { Upkeep } from "./upkeep.ts";
import { WholeStates } from "./whole.ts";

export class RoomRegistry implements RoomKeeper {
  readonly context: RegistryContext;
  private readonly table = new Map<string, DocumentRoom>();
  private readonly upkeep = new Map<DocumentRoom, Upkeep>();
  private readonly committer: Committer;
  private readonly timers: readonly NodeJS.Timeout[];
  private readonly sweep = new Sweep<DocumentRoom>();
  /** Runs while a room is loaded: an idle studio would wake twenty times a second for nothing. */
  private sweeping: NodeJS.Timeout | undefined;
  private stopping = false;
  readonly refusals: RefusalLog;
  /** Of the sockets and of what comes over HTTP: a person has one share of the time. */
  readonly scheduler: FrameScheduler;
  readonly wholes = new WholeStates<DocumentRoom>();

  constructor(context: RegistryContext) {
    this.context = context;
    this.scheduler = new FrameScheduler(context.limits);
    this.refusals = new RefusalLog(context.log, context.limits.refusalLogMs, context.meter.refused);
    this.committer = new Committer({
      ...context,
      healed: (room) => this.healed(room),
      gone: (room) => this.gone(room),
    });
    const { pingMs, murmurMs } = context.limits;
    const each = (act: (connection: PageConnection) => void, ms: number) =>
      setInterval(() => this.connections().forEach(act), ms).unref();
    this.timers = [
      each((connection) => connection.ping(), pingMs),
      each((connection) => connection.murmur(), murmurMs),
    ];
  }

  /** The live room; loads it if necessary. Throws DocUnavailable. */
  open(name: DocName): DocumentRoom {
    const key = formatDocName(name);
    const found = this.table.get(key);
    if (found) return found;
    const loaded = loadOrCreate(this.context, name);
    const { holds, bounds, carryLate } = this.context.host.kinds[name.kind];
    const owners = new Owners(this.context.db, key);
    const room = new DocumentRoom(
      name,
      { ...loaded, holds, bounds, owners, ...(carryLate ? { carryLate } : {}) },
      this,
    );
    if (loaded.migration) room.takeMigration(loaded.migration);
    this.table.set(key, room);
    this.sweepWhileLoaded();
    this.upkeep.set(room, this.careFor(room));
    this.committer.flush();
    this.emptied(room);
    return room;
  }

  find(name: DocName): DocumentRoom | undefined {
    return this.table.get(formatDocName(name));
  }

  opened(kind: DocKind): DocName[] {
    return [...this.table.values()].map((room) => room.name).filter((name) => name.kind === kind);
  }

  /** Lets the socket of a known person in, or closes it with the reason. */
  join(ws: WebSocket, name: DocName, who: Joining): Connection | undefined {
    const entry = this.admit(name, who);
    if (typeof entry === "string") {
      closeSocket(ws, entry, this.context.limits.closeMs);
      return undefined;
    }
    const { room, access } = entry;
    const { limits, meter } = this.context;
    const connection = new Connection(ws, room, { session: who.session, lane: who.lane, access, meter }, limits);
    ws.on("close", () => connection.ended());
    this.upkeep.get(room)?.joined();
    room.join(connection, this.welcomeFor(name, who.session));
    return connection;
  }

  private admit(
    name: DocName,
    who: { session: SessionInfo; page: PageClaims },
  ): CloseName | { room: DocumentRoom; access: DocAccess } {
    if (this.stopping) return "stopping";
    const access = accessOf(this.context, name)(who.session);
    // As over HTTP, who may not see a document is not told that it is there; who had it open is told of the right.
    if (access === "noRight") return "unknownDocument";
    if (typeof access === "string") return access;
    const { page, session } = who;
    const refused = refusePerson(page, session.userId) ?? refuseVersions(page, this.context.host.kinds[name.kind]);
    if (refused) return refused;
    try {
      const room = this.open(name);
      if (room.failing || room.broken) return notSaving(this.context.db);
      const refusedHere = refuseGeneration(page, room.generation);
      if (refusedHere) return refusedHere;
      // Before anything is exchanged: the changes of two pages under one client id would be taken for each other's.
      const mayWriteAs =
        !access.writes ||
        page.clientId === null ||
        room.owners.claim(page.clientId, session.userId, this.context.now());
      return mayWriteAs ? { room, access } : "idTaken";
    } catch (error) {
      if (error instanceof DocUnavailable) return error.reason;
      this.context.log.error({ document: formatDocName(name), err: error }, "the document could not be opened");
      return "storageFailing";
    }
  }

  private welcomeFor(name: DocName, session: SessionInfo): readonly News[] {
    try {
      return [...(this.context.host.welcome?.(name, session) ?? []), ...damageNews(this.context.db)];
    } catch (error) {
      this.context.log.error(
        { document: formatDocName(name), err: error },
        "the news for a joining page could not be collected",
      );
      return [];
    }
  }

  tellDamage(): void {
    for (const room of this.table.values()) room.announce(DAMAGED);
  }

  refreshAccess(): void {
    this.refreshRooms([...this.table.values()]);
  }

  private sweepWhileLoaded(): void {
    if (this.table.size === 0) {
      clearInterval(this.sweeping);
      this.sweeping = undefined;
      return;
    }
    const look = () => this.refreshRooms(this.sweep.next([...this.table.values()]));
    this.sweeping ??= setInterval(look, this.context.limits.accessSweepMs / Sweep.PARTS).unref();
  }

  private refreshRooms(rooms: readonly DocumentRoom[]): void {
    for (const room of rooms) {
      const ask = accessOf(this.context, room.name);
      const asked = new Map<string, CloseName | DocAccess>();
      for (const connection of room.connections) {
        const { session } = connection;
        const access = asked.get(session.sessionId) ?? ask(session);
        asked.set(session.sessionId, access);
        if (typeof access === "string") connection.close(access);
        else if (!sameRights(connection.access, access)) this.changeRights(room, connection, access);
      }
    }
  }

  private changeRights(room: DocumentRoom, connection: PageConnection, access: DocAccess): void {
    connection.setAccess(access);
    if (!access.writes) room.hidePresence(connection);
    room.peopleMoved();
  }

  wake(room: DocumentRoom): void {
    this.committer.wake(room);
  }

  flush(): void {
    this.committer.flush();
  }

  changed(room: DocumentRoom): void {
    this.upkeep.get(room)?.changed();
  }

  emptied(room: DocumentRoom): void {
    if (!room.broken) this.upkeep.get(room)?.emptied();
  }

  noteRefused({ session }: PageConnection, cause: string, count: number): void {
    this.refusals.note(cause, count, session.userId);
  }

  broke(room: DocumentRoom, cause: unknown): void {
    if (room.broken) return;
    room.broken = true;
    this.context.log.error({ document: room.key, err: cause }, "the room is broken and is read again from disk");
    this.committer.flush();
    for (const connection of room.connections) connection.close("roomReloaded");
    if (room.isClean) this.discard(room);
  }

  /** Ends everything; resolves with the documents that could not be saved within `limitMs`. */
  async stop(limitMs: number): Promise<readonly string[]> {
    this.stopping = true;
    for (const timer of [...this.timers, this.sweeping]) clearInterval(timer);
    // A damaged database takes no writes, so there is nothing to wait for: the pages keep their changes.
    const waitMs = this.context.db.damage.known === null ? limitMs : 0;
    // What has arrived is passed on and called saved before its pages are told to come back.
    await this.committer.finish(Math.min(waitMs, FINISH_MS));
    for (const connection of this.connections()) connection.close("stopping");
    this.committer.flush();
    for (let left = waitMs; this.committer.failingRooms.length > 0 && left > 0; left -= STOP_STEP_MS) {
      await new Promise((resolve) => setTimeout(resolve, Math.min(left, STOP_STEP_MS)));
      this.committer.retryNow();
    }
    const unsaved = this.committer.failingRooms.map((room) => room.key);
    if (unsaved.length > 0) this.context.log.error({ unsaved }, "stopped with changes that could not be saved");
    this.committer.stop();
    this.refusals.tell();
    for (const room of [...this.table.values()]) {
      this.upkeep.get(room)?.settleBurst();
      this.discard(room);
    }
    return unsaved;
  }

  health(): { rooms: number; connections: number; failing: string[]; refused: number } {
    const failing = this.committer.failingRooms.map((room) => room.key);
    return { rooms: this.table.size, connections: this.connections().length, failing, refused: this.refusals.total };
  }

  private connections(): PageConnection[] {
    return [...this.table.values()].flatMap((room) => [...room.connections]);
  }

  private careFor(room: DocumentRoom): Upkeep {
    return new Upkeep(room, {
      ...this.context,
      afterChange: () => this.afterChange(room),
      idle: () => this.unload(room),
    });
  }

  private afterChange(room: DocumentRoom): void {
    this.committer.flush();
    // While the disk fails this is skipped; it runs again once the room is saved.
    if (room.isClean && !room.broken) this.context.host.kinds[room.name.kind].afterChange?.(room.name, room.doc);
  }

  /** Nobody is there: unloads the room if everything is on disk. */
  private unload(room: DocumentRoom): void {
    if (room.connections.size > 0 || this.table.get(room.key) !== room) return;
    this.committer.flush();
    if (!room.isClean) return;
    this.upkeep.get(room)?.settleBurst();
    this.upkeep.get(room)?.compact();
    this.discard(room);
  }

  private healed(room: DocumentRoom): void {
    if (room.broken) this.discard(room);
    else if (room.connections.size === 0) this.emptied(room);
  }

  /** The document was deleted for good: what is not stored is dropped, since there is nothing that it could belong to. */
  drop(name: DocName): void {
    const room = this.find(name);
    if (room) this.gone(room);
  }

  private gone(room: DocumentRoom): void {
    if (room.broken) return;
    // Nothing more is taken from the pages or put on the disk.
    room.broken = true;
    for (const connection of room.connections) connection.close("unknownDocument");
    this.discard(room);
  }

  private discard(room: DocumentRoom): void {
    this.table.delete(room.key);
    this.sweepWhileLoaded();
    this.upkeep.get(room)?.close();
    this.upkeep.delete(room);
    this.committer.forget(room);
    this.wholes.forget(room);
    room.doc.destroy();
  }
}

/** Who joins, what their page says about itself, and the lane that its work runs in. */
interface Joining {
  readonly session: SessionInfo;
  readonly page: PageClaims;
  readonly lane: FrameLane;
}

const STOP_STEP_MS = 50;
/** How long pages wait for the disk before they are told to come back, ms. Our own choice. */
const FINISH_MS = 2000;

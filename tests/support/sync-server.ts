/** A real sync server on its own port and database, with a host whose answers a test sets. */

import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import type * as Y from "yjs";
import type { Db } from "#db/connection.ts";
import { noteAuthor } from "#db/repos/plan-repo.ts";
import { MONTH_BOUNDS, PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { carryLateThemes } from "#lib/doc/late-theme.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { migrate } from "#lib/doc/migrate.ts";
import { planProtection } from "#lib/doc/protected-parts.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { createMonthDoc } from "#lib/programme/create.ts";
import { MONTH_DOC_VERSION } from "#lib/programme/layout.ts";
import { migrateMonth } from "#lib/programme/migrate.ts";
import { monthProtection } from "#lib/programme/protected-parts.ts";
import type { DocKind, DocName, News } from "#lib/protocol/messages.ts";
import type { EventLog } from "#server/base/log.ts";
import type { Fold } from "#server/doc-log/stored-doc.ts";
import { type AttachOptions, attachSync, type SyncDoor } from "#server/sync/attach.ts";
import { createDocumentRooms, type DocumentRooms } from "#server/sync/document-rooms.ts";
import type { DocAccess, KindHooks, SessionInfo, SyncHost } from "#server/sync/host.ts";
import type { Limits } from "#server/sync/limits.ts";
import { type TempDb, tempDb } from "./temp-db.ts";

export interface LogLine {
  readonly level: "info" | "warn" | "error";
  readonly message: string;
  readonly details: object;
}

/** Answers from tables that a test may change while the server runs. */
export class TestHost implements SyncHost {
  /** By cookie value. */
  readonly sessions = new Map<string, SessionInfo>();
  /** Ids of sessions that have ended. */
  readonly ended = new Set<string>();
  /** By user id; anybody not listed may write. */
  readonly rights = new Map<string, Partial<DocAccess>>();
  readonly afterChange: { name: DocName; doc: Y.Doc }[] = [];
  news: readonly News[] = [];
  authenticating: () => Promise<void> = async () => undefined;
  onAfterChange: () => void = () => undefined;
  private readonly exists: (name: DocName) => boolean;
  private readonly db: Db;

  constructor(db: Db, exists: (name: DocName) => boolean) {
    this.db = db;
    this.exists = exists;
  }

  signIn(userId: string): string {
    const sessionId = `s-${userId}-${this.sessions.size}`;
    this.sessions.set(sessionId, { sessionId, userId, name: `Name of ${userId}` });
    return sessionId;
  }

  async authenticate(headers: Headers): Promise<SessionInfo | null> {
    await this.authenticating();
    const session = this.sessions.get(/session=([^;]+)/.exec(headers.get("cookie") ?? "")?.[1] ?? "");
    return session && !this.ended.has(session.sessionId) ? session : null;
  }

  accessTo(name: DocName) {
    const exists = name.kind === "month" || this.exists(name);
    return (session: SessionInfo): DocAccess | null => {
      if (this.ended.has(session.sessionId)) return null;
      return { exists, reads: true, writes: true, comments: true, ...this.rights.get(session.userId) };
    };
  }

  welcome(): readonly News[] {
    return this.news;
  }

  readonly kinds: Record<DocKind, KindHooks> = {
    plan: {
      currentVersion: PLAN_DOC_VERSION,
      editorVersion: EDITOR_VERSION,
      migrate,
      carryLate: carryLateThemes,
      holds: planProtection,
      bounds: PLAN_BOUNDS,
      wrote: (key, userId, at) => noteAuthor(this.db, key, userId, at),
      afterChange: (name, doc) => {
        this.afterChange.push({ name, doc });
        this.onAfterChange();
      },
    },
    month: {
      currentVersion: MONTH_DOC_VERSION,
      migrate: migrateMonth,
      holds: monthProtection,
      bounds: MONTH_BOUNDS,
      create: createMonthDoc,
    },
  };
}

export interface TestServer {
  readonly host: TestHost;
  readonly rooms: DocumentRooms;
  readonly db: Db;
  readonly temp: TempDb;
  readonly log: LogLine[];
  /** `ws://127.0.0.1:<port>` */
  readonly url: string;
  readonly http: Server;
  /** Stores a plan and returns its name. */
  addPlan(key: string, plan?: Plan): DocName;
  /** Ends rooms, gate and HTTP server but keeps the database, for a restart on the same file. */
  halt(limitMs?: number): Promise<readonly string[]>;
  /** `halt` and remove everything. */
  stop(): Promise<void>;
}

export interface TestServerOptions {
  readonly limits?: Partial<Limits>;
  readonly temp?: TempDb;
  /** Any free one when not given. */
  readonly port?: number;
  readonly isOriginAllowed?: AttachOptions["isOriginAllowed"];
  /** Stands between a commit and "saved". */
  readonly sync?: () => Promise<void>;
  /** Folds large documents on a thread; gets the database's file. */
  readonly fold?: (databaseFile: string) => Fold;
  /** In place of the list that the server gives. */
  readonly log?: EventLog;
}

export async function startSyncServer(options: TestServerOptions = {}): Promise<TestServer> {
  const temp = options.temp ?? tempDb();
  const db = temp.open();
  const log: LogLine[] = [];
  const host: TestHost = new TestHost(db, (name) => rooms.generation(name) !== undefined);
  const { limits, sync } = options;
  const fold = options.fold?.(db.file);
  const rooms = createDocumentRooms({
    db,
    host,
    log: options.log ?? listLog(log),
    limits,
    sync,
    ...(fold ? { fold } : {}),
  });
  const http = createServer((_request, response) => response.writeHead(404).end());
  const door = attachSync({ rooms, server: http, isOriginAllowed: options.isOriginAllowed });
  await new Promise<void>((resolve) => http.listen(options.port ?? 0, "127.0.0.1", resolve));
  const { port } = http.address() as AddressInfo;
  const halt = haltOnce({ rooms, door, http, db });
  return {
    host,
    rooms,
    db,
    temp,
    log,
    http,
    url: `ws://127.0.0.1:${port}`,
    addPlan(key, plan = SMALL_PLAN) {
      const doc = createPlanDoc(plan, { carry: true });
      rooms.create({ kind: "plan", key }, doc, "u-maker");
      doc.destroy();
      return { kind: "plan", key };
    },
    halt,
    async stop() {
      await halt();
      temp.remove();
    },
  };
}

function haltOnce(parts: { rooms: DocumentRooms; door: SyncDoor; http: Server; db: Db }) {
  let halted: Promise<readonly string[]> | undefined;
  return (limitMs?: number) => {
    halted ??= (async () => {
      const { unsaved } = await parts.rooms.stop(limitMs);
      parts.door.detach();
      parts.http.closeAllConnections();
      await new Promise((resolve) => parts.http.close(resolve));
      if (parts.db.raw.open) parts.db.close();
      return unsaved;
    })();
    return halted;
  };
}

function listLog(lines: LogLine[]): EventLog {
  const at = (level: LogLine["level"]) => (details: object, message: string) => {
    lines.push({ level, message, details });
  };
  return { info: at("info"), warn: at("warn"), error: at("error") };
}

/** Two moves and a pause, with everything a plan needs. */
export const SMALL_PLAN: Plan = {
  format: "springline.plan/1",
  title: "Pull and press",
  lengthSeconds: 300,
  equipment: {
    name: "Loft machines",
    carriageTravelMm: 1000,
    springs: [{ id: "firm", label: "firm", count: 2, stiffnessNPerMm: 0.4, preloadN: 20 }],
  },
  moves: {
    "kneeling-row": {
      name: "Kneeling row",
      station: "carriage",
      position: "kneeling",
      facing: "front",
      hands: "handles",
      feet: "carriage",
      sides: "both",
      pattern: "pull",
      muscles: { "upper-back": 1, biceps: 0.5 },
      resistance: "springs",
      tempo: { outSeconds: 2, backSeconds: 2 },
    },
  },
  items: [
    { id: "a", kind: "move", move: "kneeling-row", side: "both", seconds: 60, springs: { firm: 1 } },
    { id: "rest", kind: "pause", seconds: 20, text: "Water" },
    {
      id: "b",
      kind: "move",
      move: "kneeling-row",
      side: "both",
      seconds: 60,
      springs: { firm: 2 },
      script: [{ kind: "setup", text: "Two firm springs" }],
    },
  ],
};

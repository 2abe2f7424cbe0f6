/** Lets pages into documents: `/sync/plan/<id>` and `/sync/month/<yyyy-mm>`. Other paths are left to the caller. */
import type { IncomingMessage, Server } from "node:http";
import type { Duplex } from "node:stream";
import { type DocName, parseDocName } from "#lib/protocol/messages.ts";
import { ConcurrencyLimit } from "#server/limits/concurrency-limit.ts";
import { bytesOf } from "#server/sockets/close-socket.ts";
import { type Caller, createSocketGate } from "#server/sockets/socket-gate.ts";
import { type Connection, closeSocket } from "./connection.ts";
import type { DocumentRooms } from "./document-rooms.ts";
import type { FrameScheduler } from "./frame-scheduler.ts";
import { readClaims } from "./page-claims.ts";
import { admitStranger } from "./stranger.ts";

const PATH = "/sync/";

export interface AttachOptions {
  readonly rooms: DocumentRooms;
  /** Whether a page of this origin may open a socket. Default: the origin's host is the Host the request was sent to. */
  readonly isOriginAllowed?: (origin: string, request: IncomingMessage) => boolean;
  /** Hears with which code each socket closed. */
  readonly onClosed?: (code: number) => void;
  /** Attaches to its `upgrade` event. Other paths are not touched. */
  readonly server?: Server;
}

export interface SyncDoor {
  /** True when the request was for a document and has been dealt with. */
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): boolean;
  /** Lets nobody in any more. Open sockets belong to the rooms. */
  detach(): void;
}

export function attachSync({ rooms, server, onClosed, isOriginAllowed = isSameHost }: AttachOptions): SyncDoor {
  const { limits } = rooms.registry.context;
  const door: Door = {
    rooms,
    people: new ConcurrencyLimit(limits.socketsOfPerson),
    scheduler: rooms.registry.scheduler,
  };
  const gate = createSocketGate({
    isOwnPath: (path) => path.startsWith(PATH),
    isOriginAllowed,
    maxMessageBytes: limits.frameBytes,
    maxUnknown: limits.strangers,
    maxUnknownOfNetwork: limits.strangersOfNetwork,
    ...(onClosed ? { onClosed } : {}),
    admit: (caller) => void greet(door, caller).finally(caller.known),
  });
  server?.on("upgrade", gate.handleUpgrade);
  return {
    handleUpgrade: gate.handleUpgrade,
    detach() {
      server?.off("upgrade", gate.handleUpgrade);
      gate.close();
    },
  };
}

interface Door {
  readonly rooms: DocumentRooms;
  readonly people: ConcurrencyLimit;
  readonly scheduler: FrameScheduler;
}

async function greet(door: Door, caller: Caller): Promise<void> {
  const { registry } = door.rooms;
  caller.ws.on("error", () => registry.refusals.note("broken frames"));
  const name = parseDocName(caller.url.pathname.slice(PATH.length));
  if (name) await meet(door, name, caller);
  else closeSocket(caller.ws, "unknownDocument", registry.context.limits.closeMs);
}

/** Finds out who it is, then lets them into the room with what they have sent meanwhile. */
async function meet({ rooms, people, scheduler }: Door, name: DocName, caller: Caller): Promise<void> {
  const { registry } = rooms;
  const { host, limits, log } = registry.context;
  const { ws } = caller;
  const who = await admitStranger(caller, limits, () =>
    host.authenticate(headersOf(caller.request)).catch((error: unknown) => {
      log.error({ err: error }, "the session of a socket could not be looked up");
      return null;
    }),
  );
  if (!who) return;
  const leave = people.take(who.session.userId);
  if (!leave) {
    closeSocket(ws, "tooManyPages", limits.closeMs);
    return;
  }
  ws.once("close", leave);
  const { session, sent } = who;
  const lane = scheduler.lane(ws, session.userId);
  ws.once("close", () => lane.end());
  let connection: Connection | undefined;
  // Joining is charged as well: a page that keeps coming and going waits like one that never stops writing.
  lane.take(() => {
    // A dozen small frames leave in one packet.
    caller.socket.cork();
    process.nextTick(() => caller.socket.uncork());
    connection = registry.join(ws, name, { session, lane, page: readClaims(caller.url.searchParams) });
  });
  const take = (data: Uint8Array, isBinary: boolean) => {
    const at = performance.now();
    lane.take(() => connection?.receive(data, isBinary, at));
  };
  for (const { data, isBinary } of sent) take(data, isBinary);
  ws.on("message", (data, isBinary) => take(bytesOf(data), isBinary));
}

function isSameHost(origin: string, request: IncomingMessage): boolean {
  return URL.canParse(origin) && new URL(origin).host === request.headers.host;
}

function headersOf(request: IncomingMessage): Headers {
  const headers = new Headers();
  for (const [key, value] of Object.entries(request.headers)) {
    if (typeof value === "string") headers.set(key, value);
    else for (const one of value ?? []) headers.append(key, one);
  }
  return headers;
}

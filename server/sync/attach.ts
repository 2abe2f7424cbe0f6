/**
 * The door: takes upgrade requests for `/sync/...`, leaves every other to its caller, and keeps strangers on a short
 * rope until the host knows them. A browser cannot see an HTTP status on a socket, so whoever may come at all is let
 * in and told by close code; only a foreign page (Origin) is turned away before.
 */
import type { IncomingMessage, Server } from "node:http";
import type { Duplex } from "node:stream";
import { type WebSocket, WebSocketServer } from "ws";
import { type DocName, parseDocName } from "#lib/protocol/messages.ts";
import { CLIENT_NETWORK_HEADER } from "#server/http/network.ts";
import { Places } from "#server/http/places.ts";
import { bytesOf, type Connection, closeSocket } from "./connection.ts";
import type { LiveRooms } from "./create-rooms.ts";
import { readClaims } from "./gate.ts";
import { Pace } from "./pace.ts";
import { admitStranger } from "./stranger.ts";

const PATH = "/sync/";
/** Only to read a path by: no request ever goes there. */
const BASE = "http://localhost";

export interface AttachOptions {
  readonly rooms: LiveRooms;
  /**
   * Whether a page of this origin may open a socket. A request without an Origin comes from no browser and needs a
   * session like any other. Default: the origin's host is the Host the request was sent to.
   */
  readonly isOriginAllowed?: (origin: string, request: IncomingMessage) => boolean;
  /** Attaches to its `upgrade` event. Other paths are not touched. */
  readonly server?: Server;
}

export interface SyncDoor {
  /** True when the request was for this door, and has been dealt with. */
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): boolean;
  /** Stops listening. Open sockets belong to the rooms. */
  detach(): void;
}

export function attachSync(options: AttachOptions): SyncDoor {
  const { limits } = options.rooms.registry.context;
  const wss = new WebSocketServer({ noServer: true, maxPayload: limits.frameBytes, perMessageDeflate: false });
  const people = new Places(limits.socketsOfPerson);
  const pace = new Pace(limits);
  const networks = new Places(limits.strangersOfNetwork);
  let strangers = 0;
  const door: SyncDoor = {
    handleUpgrade(request, socket, head) {
      const url = addressOf(request);
      if (url && !url.pathname.startsWith(PATH)) return false;
      socket.on("error", () => socket.destroy());
      if (!url) refuse(socket, "400 Bad Request");
      else if (!originAllowed(options, request)) refuse(socket, "403 Forbidden");
      else if (strangers >= limits.strangers) refuse(socket, "503 Service Unavailable");
      else {
        const leave = placeOf(networks, request);
        if (!leave) {
          refuse(socket, "503 Service Unavailable");
          return true;
        }
        strangers++;
        // A handshake that is refused never calls back: the socket's end counts it off as well, once.
        let counted = true;
        const known = () => {
          if (counted) strangers--;
          counted = false;
          leave();
        };
        socket.once("close", known);
        wss.handleUpgrade(request, socket, head, (ws) => {
          greet(ws, { request, socket, headBytes: head.length, url }).finally(known);
        });
      }
      return true;
    },
    detach() {
      options.server?.off("upgrade", door.handleUpgrade);
      wss.close();
    },
  };
  const greet = async (ws: WebSocket, caller: Caller): Promise<void> => {
    ws.on("error", () => options.rooms.registry.refusals.note("broken frames"));
    const name = parseDocName(caller.url.pathname.slice(PATH.length));
    if (name) await meet({ rooms: options.rooms, people, pace }, ws, name, caller);
    else closeSocket(ws, "unknownDocument", limits.closeMs);
  };
  options.server?.on("upgrade", door.handleUpgrade);
  return door;
}

interface Caller {
  readonly request: IncomingMessage;
  readonly socket: Duplex;
  readonly headBytes: number;
  readonly url: URL;
}

interface House {
  readonly rooms: LiveRooms;
  readonly people: Places;
  readonly pace: Pace;
}

/** Finds out who it is, then lets them into the room with what they have said meanwhile. */
async function meet({ rooms, people, pace }: House, ws: WebSocket, name: DocName, caller: Caller): Promise<void> {
  const { registry } = rooms;
  const { host, limits, log } = registry.context;
  const who = await admitStranger({ ws, socket: caller.socket, headBytes: caller.headBytes, limits }, () =>
    host.authenticate(headersOf(caller.request)).catch((error: unknown) => {
      log.error({ err: error }, "a session could not be asked for");
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
  const { session, said } = who;
  const lane = pace.lane(ws, session.userId);
  ws.once("close", () => lane.end());
  let connection: Connection | undefined;
  // Coming in costs as well: a page that comes and goes all the time waits like one that never stops writing.
  lane.take(() => {
    // A dozen small frames leave in one go.
    caller.socket.cork();
    process.nextTick(() => caller.socket.uncork());
    connection = registry.join(ws, name, { session, lane, page: readClaims(caller.url.searchParams) });
  });
  for (const { data, isBinary } of said) lane.take(() => connection?.receive(data, isBinary));
  ws.on("message", (data, isBinary) => lane.take(() => connection?.receive(bytesOf(data), isBinary)));
}

/** Where networks cannot be told apart, only all strangers together are counted. */
function placeOf(networks: Places, request: IncomingMessage): (() => void) | undefined {
  const network = request.headers[CLIENT_NETWORK_HEADER];
  return typeof network === "string" ? networks.take(network) : () => undefined;
}

/** Undefined when what stands in the request line is no address of this server. */
function addressOf(request: IncomingMessage): URL | undefined {
  const address = request.url ?? "/";
  return address.startsWith("/") && URL.canParse(address, BASE) ? new URL(address, BASE) : undefined;
}

function originAllowed(options: AttachOptions, request: IncomingMessage): boolean {
  const { origin, host } = request.headers;
  if (origin === undefined) return true;
  if (options.isOriginAllowed) return options.isOriginAllowed(origin, request);
  return URL.canParse(origin) && new URL(origin).host === host;
}

function refuse(socket: Duplex, status: string): void {
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}

function headersOf(request: IncomingMessage): Headers {
  const headers = new Headers();
  for (const [key, value] of Object.entries(request.headers)) {
    if (typeof value === "string") headers.set(key, value);
    else for (const one of value ?? []) headers.append(key, one);
  }
  return headers;
}

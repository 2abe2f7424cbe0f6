/**
 * The HTTP server of the process: the gate, then Next. Socket upgrades are handled here alone, so that no listener of Next
 * can end them.
 */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { Duplex } from "node:stream";
import { BUILD_HEADER } from "#lib/client/newer-build.ts";
import type { Env } from "#server/base/env.ts";
import type { Log } from "#server/base/log.ts";
import { ConcurrencyLimit } from "#server/limits/concurrency-limit.ts";
import { CLIENT_NETWORK_HEADER } from "#server/limits/network.ts";
import { refuseUpgrade } from "#server/sockets/close-socket.ts";
import { type HearAnswered, newRequestId, REQUEST_ID_HEADER, whenAnswered, whenSocketEnds } from "./answered.ts";
import { ALLOW, cleanHeaders, type Gate } from "./gate.ts";
import { listen } from "./listen.ts";
import { loggedPath } from "./logged-path.ts";
import { noteForwarded } from "./proxy-signs.ts";

const ALLOW_HEADER = `Allow: ${ALLOW}\r\n`;

export interface ServeSetup {
  readonly env: Pick<Env, "host" | "port" | "origin" | "trustProxy"> & Partial<Pick<Env, "build">>;
  readonly log: Log;
  readonly gate: Gate;
  handle(request: IncomingMessage, response: ServerResponse): unknown;
  /** Returns true when it has taken over the upgrade; all others are refused. */
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): boolean;
  /** Hears of every request once it has been answered, and of every socket once it has ended. */
  readonly answered?: HearAnswered;
}

const NAMES = { host: "HOST", port: "PORT" };

/**
 * Longer than a proxy keeps a connection that nothing uses, 60 s for most: one that the server closes first loses the request
 * that is just sent on it. Our own choice.
 */
const KEEP_ALIVE_MS = 65_000;

/** Between two looks for connections that have become idle while the server stops, ms. */
const IDLE_LOOK_MS = 20;

/** Sockets per network, enough for a whole team behind one address, each with several pages. Our own choice. */
const SOCKETS_PER_NETWORK = 400;

export interface Serving {
  readonly server: Server;
  /** The actual port: differs from the setting when that is 0. */
  readonly port: number;
  /** Accepts no new requests, lets running ones end within `limitMs`, then closes what is left. */
  close(limitMs: number): Promise<void>;
}

/** Starts to listen. Throws CannotListen. */
export async function serve(setup: ServeSetup): Promise<Serving> {
  const server = createServer((request, response) => answer(setup, request, response));
  server.keepAliveTimeout = KEEP_ALIVE_MS;
  const places = new ConcurrencyLimit(SOCKETS_PER_NETWORK);
  server.on("upgrade", (request, socket, head) => upgrade(setup, places, { request, socket, head }));
  server.on("clientError", (error, socket) => {
    const unknown = "code" in error && error.code === "HPE_INVALID_METHOD";
    if (!socket.writable) return;
    if (unknown) refuseUpgrade(socket, "405 Method Not Allowed", ALLOW_HEADER);
    else refuseUpgrade(socket, "400 Bad Request");
  });
  // Without a listener Node would cut the socket without an answer.
  server.on("connect", (_request, socket) => {
    refuseUpgrade(socket, "405 Method Not Allowed", ALLOW_HEADER);
  });
  const port = await listen(server, { ...setup.env, names: NAMES });
  server.on("error", (err) => setup.log.error({ err }, "http server"));
  return { server, port, close: (limitMs) => close(server, limitMs) };
}

function answer(setup: ServeSetup, request: IncomingMessage, response: ServerResponse): void {
  const id = newRequestId();
  if (setup.answered) whenAnswered(request, response, id, setup.answered);
  response.setHeader("x-request-id", id);
  if (setup.env.build) response.setHeader(BUILD_HEADER, setup.env.build);
  const broken = (err: unknown) => {
    setup.log.error({ id, err, method: request.method, path: loggedPath(request.url ?? "") }, "request failed");
    if (!response.headersSent) response.writeHead(500, { "content-type": "text/plain; charset=utf-8" });
    response.end("Something went wrong on the server.");
  };
  try {
    noteForwarded(setup, request);
    if (setup.gate(request, response)) return;
    request.headers[REQUEST_ID_HEADER] = id;
    Promise.resolve(setup.handle(request, response)).catch(broken);
  } catch (err) {
    broken(err);
  }
}

interface Upgrade {
  readonly request: IncomingMessage;
  readonly socket: Duplex;
  readonly head: Buffer;
}

function upgrade(setup: ServeSetup, places: ConcurrencyLimit, { request, socket, head }: Upgrade): void {
  // A socket error that nobody listens for would end the process.
  socket.on("error", (err) => setup.log.debug({ err }, "socket broke"));
  const id = newRequestId();
  if (setup.answered) whenSocketEnds(request, socket, id, setup.answered);
  noteForwarded(setup, request);
  cleanHeaders(request, setup.env);
  // Where networks cannot be told apart, everybody would share one network's limit: there is none then.
  const network = request.headers[CLIENT_NETWORK_HEADER];
  const leave = typeof network === "string" ? places.take(network) : () => undefined;
  if (!leave) {
    refuseUpgrade(socket, "503 Service Unavailable");
    return;
  }
  socket.once("close", leave);
  if (setup.upgrade(request, socket, head)) return;
  refuseUpgrade(socket, "404 Not Found");
}

function close(server: Server, limitMs: number): Promise<void> {
  return new Promise((resolve) => {
    const limit = setTimeout(() => server.closeAllConnections(), limitMs);
    // A connection whose last answer has gone is not kept for another request.
    const idle = setInterval(() => server.closeIdleConnections(), IDLE_LOOK_MS);
    server.close(() => {
      clearTimeout(limit);
      clearInterval(idle);
      resolve();
    });
    server.closeIdleConnections();
  });
}

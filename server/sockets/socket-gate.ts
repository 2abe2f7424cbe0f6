/**
 * The gate that every socket passes, documents and floor screens alike. It takes the upgrade requests for its own paths,
 * refuses pages of another origin, and limits how many callers may be unknown at once, in all and per network. A browser
 * cannot see an HTTP status on a socket, so everybody else gets a socket and is told by its close code.
 */
import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { type WebSocket, WebSocketServer } from "ws";
import { ConcurrencyLimit } from "#server/limits/concurrency-limit.ts";
import { CLIENT_NETWORK_HEADER } from "#server/limits/network.ts";
import { refuseUpgrade } from "./close-socket.ts";

/** Only needed to parse a path: no request is ever sent there. */
const BASE = "http://localhost";

/** A socket that has been let in, before it is known who holds it. */
export interface Caller {
  readonly ws: WebSocket;
  readonly request: IncomingMessage;
  readonly socket: Duplex;
  /** Bytes that arrived together with the upgrade request. */
  readonly headBytes: number;
  readonly url: URL;
  /** To be called once it is clear who holds the socket: it no longer counts as unknown. Also happens when it closes. */
  known(): void;
}

export interface SocketGateOptions {
  isOwnPath(path: string): boolean;
  /** A request without an Origin header does not come from a browser, and needs a session or a token like any other. */
  isOriginAllowed(origin: string, request: IncomingMessage): boolean;
  /** Bytes of one message; the socket layer closes with 1009 above it. */
  readonly maxMessageBytes: number;
  /** Sockets whose holder is not known yet, in all. */
  readonly maxUnknown: number;
  /** The same per network, where networks can be told apart; left out: no such limit. */
  readonly maxUnknownOfNetwork?: number;
  admit(caller: Caller): void;
  /** Hears with which code each socket closed. */
  readonly onClosed?: (code: number) => void;
}

export interface SocketGate {
  /** True when the request was for this gate and has been dealt with. */
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): boolean;
  /** Lets nobody in any more. Open sockets belong to their owners, which close them. */
  close(): void;
}

export function createSocketGate(options: SocketGateOptions): SocketGate {
  const { maxMessageBytes: maxPayload, maxUnknownOfNetwork: perNetwork = Number.POSITIVE_INFINITY } = options;
  const wss = new WebSocketServer({ noServer: true, maxPayload, perMessageDeflate: false });
  const networks = new ConcurrencyLimit(perNetwork);
  let unknown = 0;
  let closed = false;
  return {
    handleUpgrade(request, socket, head) {
      const url = addressOf(request);
      if (url && !options.isOwnPath(url.pathname)) return false;
      socket.on("error", () => socket.destroy());
      const refusal = refusalOf(options, request, url, closed || unknown >= options.maxUnknown);
      const leaveNetwork = refusal ? undefined : takeNetwork(networks, request);
      if (refusal || !url || !leaveNetwork) {
        refuseUpgrade(socket, refusal ?? "503 Service Unavailable");
        return true;
      }
      unknown++;
      const known = once(() => {
        unknown--;
        leaveNetwork();
      });
      // A handshake that fails never calls back: the end of the socket has to count it off as well.
      socket.once("close", known);
      wss.handleUpgrade(request, socket, head, (ws) => {
        if (options.onClosed) ws.once("close", options.onClosed);
        options.admit({ ws, request, socket, headBytes: head.length, url, known });
      });
      return true;
    },
    close() {
      closed = true;
      wss.close();
    },
  };
}

function refusalOf(
  { isOriginAllowed }: SocketGateOptions,
  request: IncomingMessage,
  url: URL | undefined,
  full: boolean,
): string | undefined {
  const { origin } = request.headers;
  if (!url) return "400 Bad Request";
  if (origin !== undefined && !isOriginAllowed(origin, request)) return "403 Forbidden";
  return full ? "503 Service Unavailable" : undefined;
}

/** Where networks cannot be told apart, unknown callers are only counted all together. */
function takeNetwork(networks: ConcurrencyLimit, request: IncomingMessage): (() => void) | undefined {
  const network = request.headers[CLIENT_NETWORK_HEADER];
  return typeof network === "string" ? networks.take(network) : () => undefined;
}

/** Undefined when the request line holds no address of this server. */
function addressOf(request: IncomingMessage): URL | undefined {
  const address = request.url ?? "/";
  return address.startsWith("/") && URL.canParse(address, BASE) ? new URL(address, BASE) : undefined;
}

function once(act: () => void): () => void {
  let done = false;
  return () => {
    if (!done) act();
    done = true;
  };
}

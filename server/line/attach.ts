/**
 * The line's door: takes upgrade requests for `/floor/line`, leaves every other to its caller. Whoever comes in has a few
 * seconds to say hello with the device's token, and says nothing else before.
 */
import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { type WebSocket, WebSocketServer } from "ws";
import { LINE_CLOSE, type LineCloseName } from "#lib/line/close.ts";
import { type Hello, helloSchema } from "#lib/line/messages.ts";
import { LINE_PATH, LINE_VERSION } from "#lib/protocol/line-wire.ts";
import { endSocket } from "#server/sync/connection.ts";
import { LIMITS } from "#server/sync/limits.ts";
import { Refusals } from "#server/sync/refusals.ts";
import type { LineHost } from "./host.ts";
import { LINE_LIMITS, type LineLimits } from "./limits.ts";
import { createLines, type LineClockSource, type Lines, type LinesSetup } from "./lines.ts";
import { Seat } from "./seat.ts";

export interface AttachLineOptions {
  readonly host: LineHost;
  readonly clock: LineClockSource;
  readonly log: LinesSetup["log"];
  readonly limits?: Partial<LineLimits>;
  /** A request without an Origin comes from no browser, and needs a token like any other. */
  isOriginAllowed(origin: string): boolean;
}
export interface LineDoor {
  readonly lines: Lines;
  /** True when the request was for this door, and has been dealt with. */
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): boolean;
  /** Tells every screen that the server stops, and lets nobody in. */
  stop(): void;
}

export function attachLine(options: AttachLineOptions): LineDoor {
  const limits = { ...LINE_LIMITS, ...options.limits };
  const { host, clock, log } = options;
  const lines = createLines({ host, limits, clock, log });
  // A little more than a message may have, so that most of what is too large is told so in words.
  const wss = new WebSocketServer({ noServer: true, maxPayload: limits.messageBytes * 2, perMessageDeflate: false });
  const refusals = new Refusals(log, LIMITS.refusalLogMs);
  let strangers = 0;
  let stopped = false;
  return {
    lines,
    handleUpgrade(request, socket, head) {
      if (request.url?.split("?")[0] !== LINE_PATH) return false;
      socket.on("error", () => socket.destroy());
      const { origin } = request.headers;
      if (origin !== undefined && !options.isOriginAllowed(origin)) refuse(socket, "403 Forbidden");
      else if (stopped || strangers >= limits.strangers) refuse(socket, "503 Service Unavailable");
      else {
        strangers++;
        let counted = true;
        const known = () => {
          if (counted) strangers--;
          counted = false;
        };
        socket.once("close", known);
        wss.handleUpgrade(request, socket, head, (ws) => {
          ws.on("error", () => refusals.note("a screen's broken frames"));
          const met = (hello: Hello) => {
            known();
            seat({ host, limits, clock, lines }, ws, hello);
          };
          hearHello(ws, { socket, headBytes: head.length, limits }, met);
        });
      }
      return true;
    },
    stop() {
      stopped = true;
      refusals.tell();
      lines.stop();
      wss.close();
    },
  };
}

interface Stranger {
  readonly socket: Duplex;
  readonly headBytes: number;
  readonly limits: LineLimits;
}

/** Calls `met` with the hello; closes whoever says something else, too much or nothing. Traffic never extends the time. */
function hearHello(ws: WebSocket, { socket, headBytes, limits }: Stranger, met: (hello: Hello) => void): void {
  let bytes = headBytes;
  const end = (name: LineCloseName) => {
    over();
    endSocket(ws, LINE_CLOSE[name].code, name, limits.closeMs);
  };
  const onData = (chunk: Buffer) => {
    bytes += chunk.length;
    if (bytes > limits.strangerBytes) end("tooMuch");
  };
  const onMessage = (data: Buffer, isBinary: boolean) => {
    const hello = isBinary ? null : readHello(data);
    if (!hello) end("badMessage");
    else if (hello.version !== LINE_VERSION) end("oldPage");
    else {
      over();
      met(hello);
    }
  };
  const timer = setTimeout(() => end("tooSlow"), limits.strangerMs);
  const over = () => {
    clearTimeout(timer);
    socket.off("data", onData);
    ws.off("message", onMessage);
    ws.off("close", over);
  };
  socket.on("data", onData);
  ws.on("message", onMessage);
  ws.on("close", over);
}

function readHello(data: Buffer): Hello | null {
  try {
    const parsed = helloSchema.safeParse(JSON.parse(data.toString("utf8")));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

interface Place {
  readonly host: LineHost;
  readonly limits: LineLimits;
  readonly clock: LineClockSource;
  readonly lines: Lines;
}

function seat({ host, limits, clock, lines }: Place, ws: WebSocket, hello: Hello): void {
  const device = host.deviceOf(hello.token);
  if (!device) endSocket(ws, LINE_CLOSE.notPaired.code, "notPaired", limits.closeMs);
  else lines.join(new Seat({ ws, device, token: hello.token, limits, owner: lines, now: clock.now }), hello);
}

function refuse(socket: Duplex, status: string): void {
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}

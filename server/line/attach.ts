/**
 * Lets floor screens onto the line of their room: `/floor/line`. A screen has a few seconds to say hello with its device's
 * token, and may say nothing else before. Other paths are left to the caller.
 */
import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import type { RawData } from "ws";
import { LINE_CLOSE, type LineCloseName } from "#lib/line/close.ts";
import { type Hello, helloSchema } from "#lib/line/messages.ts";
import { LINE_PATH, LINE_VERSION } from "#lib/protocol/line-wire.ts";
import { RefusalLog } from "#server/limits/refusal-log.ts";
import { endSocket } from "#server/sockets/close-socket.ts";
import { hearUnknown } from "#server/sockets/hear-unknown.ts";
import { type Caller, createSocketGate } from "#server/sockets/socket-gate.ts";
import type { LineHost } from "./host.ts";
import { LINE_LIMITS, type LineLimits } from "./limits.ts";
import { createLines, type LineClockSource, type Lines, type LinesSetup } from "./lines.ts";
import { Seat } from "./seat.ts";

export interface AttachLineOptions {
  readonly host: LineHost;
  readonly clock: LineClockSource;
  readonly log: LinesSetup["log"];
  readonly limits?: Partial<LineLimits>;
  isOriginAllowed(origin: string): boolean;
  /** Hears with which code each socket closed. */
  readonly onClosed?: (code: number) => void;
}
export interface LineDoor {
  readonly lines: Lines;
  /** True when the request was for the line and has been dealt with. */
  handleUpgrade(request: IncomingMessage, socket: Duplex, head: Buffer): boolean;
  /** Tells every screen that the server stops, and lets nobody in. */
  stop(): void;
}

export function attachLine(options: AttachLineOptions): LineDoor {
  const limits = { ...LINE_LIMITS, ...options.limits };
  const { host, clock, log, onClosed } = options;
  const lines = createLines({ host, limits, clock, log });
  const refusals = new RefusalLog(log, limits.refusalLogMs);
  const gate = createSocketGate({
    isOwnPath: (path) => path === LINE_PATH,
    isOriginAllowed: options.isOriginAllowed,
    // More than a message may have, so that most of what is too large is answered with a reason.
    maxMessageBytes: limits.messageBytes * 2,
    maxUnknown: limits.strangers,
    ...(onClosed ? { onClosed } : {}),
    admit(caller) {
      caller.ws.on("error", () => refusals.note("a screen's broken frames"));
      hearHello(caller, limits, (hello) => {
        caller.known();
        seat({ host, limits, clock, lines }, caller, hello);
      });
    },
  });
  return {
    lines,
    handleUpgrade: gate.handleUpgrade,
    stop() {
      refusals.tell();
      lines.stop();
      gate.close();
    },
  };
}

/** Calls `met` with the hello; closes a socket that says something else, too much or nothing. */
function hearHello(caller: Caller, limits: LineLimits, met: (hello: Hello) => void): void {
  const end = (name: LineCloseName) => {
    stop();
    endSocket(caller.ws, LINE_CLOSE[name].code, name, limits.closeMs);
  };
  const stop = hearUnknown(caller, limits, {
    message(data, isBinary) {
      const hello = isBinary ? null : readHello(data);
      if (!hello) end("badMessage");
      else if (hello.version !== LINE_VERSION) end("oldPage");
      else {
        stop();
        met(hello);
      }
    },
    tooMuch: () => end("tooMuch"),
    tooSlow: () => end("tooSlow"),
    gone: () => stop(),
  });
}

function readHello(data: RawData): Hello | null {
  try {
    const parsed = helloSchema.safeParse(JSON.parse(data.toString()));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

interface Seating {
  readonly host: LineHost;
  readonly limits: LineLimits;
  readonly clock: LineClockSource;
  readonly lines: Lines;
}

function seat({ host, limits, clock, lines }: Seating, { ws }: Caller, hello: Hello): void {
  const device = host.deviceOf(hello.token);
  if (!device) endSocket(ws, LINE_CLOSE.notPaired.code, "notPaired", limits.closeMs);
  else lines.join(new Seat({ ws, device, token: hello.token, limits, owner: lines, now: clock.now }), hello);
}

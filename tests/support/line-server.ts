/** The line on its own port, over a real studio with paired devices; and a screen made of raw frames. */
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { WebSocket } from "ws";
import { openLine } from "#lib/client/line-link.ts";
import type { FromServer } from "#lib/line/from-server.ts";
import type { RoomLine } from "#lib/line/line.ts";
import type { LineClass, LineMemory, ToServer } from "#lib/line/messages.ts";
import { LINE_PATH, LINE_VERSION, type ScreenView } from "#lib/protocol/line-wire.ts";
import { createLog } from "#server/base/log.ts";
import { addDevice, takeBackDevice } from "#server/devices/manage-devices.ts";
import { pairDevice } from "#server/devices/pair-device.ts";
import { attachLine } from "#server/line/attach.ts";
import { createLineHost } from "#server/line/host.ts";
import type { LineLimits } from "#server/line/limits.ts";
import { eventually } from "./eventually.ts";
import { must, openStudio, type PlanStudio } from "./plan-studio.ts";

/** The only hash that counts as signed here; the real look-up is tested with signing. */
export const SIGNED = "5".repeat(64);

export interface PairedScreen {
  readonly id: string;
  readonly token: string;
}
export interface LineServer {
  readonly url: string;
  readonly studio: PlanStudio;
  pair(name: string, roomId?: string): PairedScreen;
  takeBack(screen: PairedScreen): void;
  lineOf(roomId: string): RoomLine;
  /** Restarts the line as a new process would: nothing is remembered and the clock starts anew. */
  restart(): void;
  /** Advances the line's monotonic clock. */
  advance(ms: number): void;
  stop(): Promise<void>;
}

export async function startLineServer(limits: Partial<LineLimits> = {}): Promise<LineServer> {
  const studio = openStudio();
  let run = 0;
  let ahead = 0;
  const begin = () => {
    run++;
    const zero = 1e6 * run;
    return attachLine({
      host: { ...createLineHost(studio.app), isSigned: ({ hash }) => hash === SIGNED },
      clock: { now: () => performance.now() + zero + ahead, wall: () => Date.now(), epoch: `run-${run}` },
      log: createLog("silent"),
      limits,
      isOriginAllowed: (origin) => origin === "https://studio.example",
    });
  };
  let door = begin();
  const http = createServer((_request, response) => response.writeHead(404).end());
  http.on("upgrade", (request, socket, head) => {
    if (!door.handleUpgrade(request, socket, head)) socket.end("HTTP/1.1 404 Not Found\r\n\r\n");
  });
  await new Promise<void>((resolve) => http.listen(0, "127.0.0.1", resolve));
  return {
    url: `ws://127.0.0.1:${(http.address() as AddressInfo).port}`,
    studio,
    pair(name, roomId = "loft") {
      const { id, code } = must(addDevice(studio.app, studio.people.petra, { name, roomId }));
      return { id, token: must(pairDevice(studio.app, code, "127.0.0.1")).token };
    },
    takeBack: ({ id }) => must(takeBackDevice(studio.app, studio.people.petra, id)),
    lineOf: (roomId) => door.lines.lineOf(roomId),
    restart() {
      door.stop();
      door = begin();
    },
    advance(ms) {
      ahead += ms;
    },
    async stop() {
      door.stop();
      http.closeAllConnections();
      await new Promise((resolve) => http.close(resolve));
      await studio.stop();
    },
  };
}

/** A class that a screen leads, begun at `at`, ms on the clock that the receiver expects. */
export const classFrom = (at: number, session = "a"): LineClass => ({
  session: session.padEnd(16, "0"),
  edition: { planId: "rows", number: 1, hash: SIGNED },
  title: "Rows",
  log: [{ type: "start", at }],
});

/** Sends exactly what a test tells it to, and records everything it receives. */
export class RawScreen {
  readonly ws: WebSocket;
  readonly heard: FromServer[] = [];
  closeCode: number | undefined;
  refusedStatus: number | undefined;

  constructor(url: string, headers: Record<string, string> = {}, path = LINE_PATH) {
    this.ws = new WebSocket(`${url}${path}`, { headers });
    this.ws.on("message", (data: Buffer) => this.heard.push(JSON.parse(data.toString())));
    this.ws.on("close", (code) => {
      this.closeCode = code;
    });
    this.ws.on("unexpected-response", (_request, response) => {
      this.refusedStatus = response.statusCode;
      response.destroy();
    });
    this.ws.on("error", () => undefined);
  }
  async opened(): Promise<this> {
    await eventually("the socket opens", () => this.ws.readyState === WebSocket.OPEN);
    return this;
  }
  hello(screen: PairedScreen, view: ScreenView = "wall", memory: LineMemory | null = null): void {
    this.ws.send(JSON.stringify({ t: "hello", version: LINE_VERSION, token: screen.token, view, memory }));
  }
  say(message: ToServer): void {
    this.ws.send(JSON.stringify(message));
  }
  of<T extends FromServer["t"]>(t: T): Extract<FromServer, { t: T }>[] {
    return this.heard.filter((message): message is Extract<FromServer, { t: T }> => message.t === t);
  }
  get line(): RoomLine | undefined {
    return this.of("line").at(-1)?.line;
  }
  /** Waits until the last line it received satisfies `look`. */
  until(what: string, look: (line: RoomLine) => boolean): Promise<RoomLine> {
    return eventually(what, () => (this.line && look(this.line) ? this.line : undefined));
  }
  closed(): Promise<number> {
    return eventually("the socket is closed", () => this.closeCode);
  }
}

/** A raw screen that is connected to the line. */
export async function onLine(server: LineServer, screen: PairedScreen, view?: ScreenView): Promise<RawScreen> {
  const raw = await new RawScreen(server.url).opened();
  raw.hello(screen, view);
  await raw.until("it is on the line", (line) => line.screens.some(({ id }) => id === screen.id));
  return raw;
}

/** The page's own connection, in Node. */
export const linkTo = (server: LineServer, screen: PairedScreen, more: Partial<Parameters<typeof openLine>[0]> = {}) =>
  openLine({
    origin: server.url,
    token: screen.token,
    view: "wall",
    onState: () => undefined,
    WebSocket: WebSocket as unknown as typeof globalThis.WebSocket,
    ...more,
  });

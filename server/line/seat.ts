/** The socket of a screen whose device is known: reads its messages, answers time requests, passes the rest to its line. */

import type { WebSocket } from "ws";
import { LINE_CLOSE, type LineCloseName } from "#lib/line/close.ts";
import type { FromServer } from "#lib/line/from-server.ts";
import { type ToServer, toServerSchema } from "#lib/line/messages.ts";
import { createMessageQuota, type MessageQuota } from "#server/limits/message-quota.ts";
import { endSocket } from "#server/sockets/close-socket.ts";
import type { LineDevice } from "./host.ts";
import type { LineLimits } from "./limits.ts";

export interface SeatOwner {
  heard(seat: Seat, message: Exclude<ToServer, { t: "time" }>): void;
  /** `lost`: the socket ended without a goodbye. */
  left(seat: Seat, lost: boolean): void;
}
interface SeatSetup {
  readonly ws: WebSocket;
  readonly device: LineDevice;
  readonly token: string;
  readonly limits: LineLimits;
  readonly owner: SeatOwner;
  now(): number;
}

/** Close codes of the page itself: it went to another address (1001), or closed the socket (1000, 1005). */
const SAID_GOODBYE = new Set([1000, 1001, 1005]);

export class Seat {
  readonly device: LineDevice;
  /** Used to check the pairing twice a second. Never logged, never sent. */
  readonly token: string;
  private readonly setup: SeatSetup;
  private readonly quota: MessageQuota;
  private open = true;
  private silentBeats = 0;

  constructor(setup: SeatSetup) {
    this.setup = setup;
    this.device = setup.device;
    this.token = setup.token;
    this.quota = createMessageQuota(setup.limits, setup.now());
    setup.ws.on("pong", () => {
      this.silentBeats = 0;
    });
    setup.ws.on("message", (data: Buffer, isBinary) => this.receive(data, isBinary));
    setup.ws.on("close", (code) => this.ended(!SAID_GOODBYE.has(code)));
  }

  private receive(data: Buffer, isBinary: boolean): void {
    if (!this.open) return;
    const t2 = this.setup.now();
    this.silentBeats = 0;
    if (!this.quota.takes(data.byteLength, t2)) this.close("tooMuch");
    else if (data.byteLength > this.setup.limits.messageBytes) this.close("tooLarge");
    else this.dispatch(isBinary ? null : readMessage(data), t2);
  }

  private dispatch(message: ToServer | null, t2: number): void {
    if (!message) this.close("badMessage");
    else if (message.t === "time") this.send({ t: "time", t1: message.t1, t2, t3: this.setup.now() });
    else this.setup.owner.heard(this, message);
  }

  send(message: FromServer): void {
    this.sendText(JSON.stringify(message));
  }

  /** For the same text to many screens: it is serialised once. */
  sendText(text: string): void {
    const { ws, limits } = this.setup;
    if (!this.open || ws.readyState !== ws.OPEN) return;
    if (ws.bufferedAmount > limits.bufferedBytes) this.close("cannotKeepUp");
    else ws.send(text);
  }

  /** Tells the screen that the line is there, and drops one that has been silent for too long. */
  beat(): void {
    const { ws, limits } = this.setup;
    this.silentBeats++;
    if (this.silentBeats > limits.lostBeats) {
      this.ended(true);
      ws.terminate();
    } else if (this.open && ws.readyState === ws.OPEN) {
      ws.ping();
      this.send({ t: "here" });
    }
  }

  close(name: LineCloseName): void {
    if (!this.open) return;
    this.ended(true);
    endSocket(this.setup.ws, LINE_CLOSE[name].code, name, this.setup.limits.closeMs);
  }

  private ended(lost: boolean): void {
    if (!this.open) return;
    this.open = false;
    this.setup.owner.left(this, lost);
  }
}

/** Null for anything that is not a valid message. */
function readMessage(data: Buffer): ToServer | null {
  try {
    const parsed = toServerSchema.safeParse(JSON.parse(data.toString("utf8")));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/** One screen's socket once its device is known: reads its messages, answers for the time, and hands the rest to its line. */
import type { WebSocket } from "ws";
import { LINE_CLOSE, type LineCloseName } from "#lib/line/close.ts";
import type { FromServer } from "#lib/line/from-server.ts";
import { type ToServer, toServerSchema } from "#lib/line/messages.ts";
import { endSocket } from "#server/sync/connection.ts";
import { type Allowance, createAllowance } from "./allowance.ts";
import type { LineDevice } from "./host.ts";
import type { LineLimits } from "./limits.ts";

export interface SeatOwner {
  heard(seat: Seat, message: Exclude<ToServer, { t: "time" }>): void;
  /** `lost`: the socket ended without a word. */
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

/** Closed by the page itself: gone to another address (1001), or closed (1000, 1005). */
const SAID_GOODBYE = new Set([1000, 1001, 1005]);

export class Seat {
  readonly device: LineDevice;
  /** Asked for again with it, twice a second. Never logged, never sent. */
  readonly token: string;
  private readonly setup: SeatSetup;
  private readonly allowance: Allowance;
  private open = true;
  private silentBeats = 0;

  constructor(setup: SeatSetup) {
    this.setup = setup;
    this.device = setup.device;
    this.token = setup.token;
    this.allowance = createAllowance(setup.limits, setup.now());
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
    if (!this.allowance.takes(data.byteLength, t2)) this.close("tooMuch");
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

  /** The same text to many: written once. */
  sendText(text: string): void {
    const { ws, limits } = this.setup;
    if (!this.open || ws.readyState !== ws.OPEN) return;
    if (ws.bufferedAmount > limits.bufferedBytes) this.close("cannotKeepUp");
    else ws.send(text);
  }

  /** Says that the line is there, and lets go of a screen that was not heard of for long. */
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

/** Null for whatever is no message of ours. */
function readMessage(data: Buffer): ToServer | null {
  try {
    const parsed = toServerSchema.safeParse(JSON.parse(data.toString("utf8")));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

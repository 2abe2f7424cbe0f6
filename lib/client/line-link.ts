/**
 * One screen's connection to the line of its room: measures the studio's clock, sends the class this screen leads,
 * receives the class another screen leads, and reconnects by itself. Knows no React and no browser storage; runs in
 * Node as well.
 */
import { EXCHANGES_KEPT } from "#lib/floor/clock-offset.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { movedBy } from "#lib/line/class.ts";
import { finalCloseText, LINE_CLOSE } from "#lib/line/close.ts";
import type { FromServer } from "#lib/line/from-server.ts";
import type { RoomLine } from "#lib/line/line.ts";
import type { LineClass, LineMemory, ToServer } from "#lib/line/messages.ts";
import { LINE_PATH, LINE_VERSION, type ScreenView } from "#lib/protocol/line-wire.ts";
import { ComeBack } from "./come-back.ts";
import { LineClocks } from "./line-clocks.ts";
import { LinePublisher, type OwnClass } from "./line-publisher.ts";
import { type LinkState, UNKNOWN_LINK } from "./link-state.ts";
import { LiveCheck } from "./live-check.ts";

export interface LinkOptions {
  /** `wss://studio.example`: the origin only. */
  readonly origin: string;
  readonly token: string;
  readonly view: ScreenView;
  onState(state: LinkState): void;
  /** Asks the address over HTTP why no socket opens: a sentence, or null when it does not answer. May reject. */
  askAddress?(): Promise<string | null>;
  /** Monotonic time, ms. */
  now?(): number;
  /** Wall clock, ms since the epoch. */
  wall?(): number;
  /** Needed only outside browsers. */
  readonly WebSocket?: typeof WebSocket;
}

export interface LineLink {
  readonly state: LinkState;
  /** Now, in ms of the clock that `state.followed` is written in. */
  classTime(): number;
  /** Now on the server's clock, ms, as used in `state.line`. Null before it is known. */
  studioNow(): number | null;
  /** A log of that class, converted to this device's own time. */
  toLocal(log: FloorLog): FloorLog;
  /**
   * Sets what runs here. It is sent to the others while this screen leads; a screen that leads and runs nothing steps
   * down.
   */
  runs(own: OwnClass): void;
  setView(view: ScreenView): void;
  /** Asks to lead. `sure`: even though the leader is off the line and cannot be asked. */
  lead(sure: boolean): void;
  withdraw(): void;
  answer(yes: boolean): void;
  /** Retries now, since the network is back. */
  retry(): void;
  /** Drops the connection now, since the network is gone. */
  lose(): void;
  close(): void;
}

/** Close code of a page that drops its socket but goes on: not a goodbye. */
const LOST_CODE = 4000;
const CHECK_MS = 1000;
/**
 * The server sends a sign of life every 1.5 s. Looks are counted, not ms: a page that stood still for a while finds the
 * messages that arrived meanwhile still waiting to be read.
 */
const SILENT_CHECKS = 8;
const FIRST_RETRY_MS = 300;
const LONGEST_RETRY_MS = 5000;

/** Opens the connection. Its functions can be passed on without their object. */
export function openLine(options: LinkOptions): LineLink {
  const link = new SocketLink(options);
  link.start();
  return link;
}

class SocketLink implements LineLink {
  state = UNKNOWN_LINK;
  private readonly options: LinkOptions;
  private readonly clocks = new LineClocks();
  private readonly publisher: LinePublisher;
  private readonly live: LiveCheck;
  private view: ScreenView;
  private socket: WebSocket | null = null;
  private isOpen = false;
  private silentChecks = 0;
  private retryMs = FIRST_RETRY_MS;
  private retrying: ReturnType<typeof setTimeout> | undefined;
  private readonly back = new ComeBack({
    connect: () => this.retry(),
    say: (stopping) => this.set({ stopping }),
  });
  private checking: ReturnType<typeof setInterval> | undefined;
  private closed = false;

  constructor(options: LinkOptions) {
    this.options = options;
    this.view = options.view;
    this.publisher = new LinePublisher({ clocks: this.clocks, send: this.send, now: this.now });
    this.live = new LiveCheck({
      ask: async () => (await options.askAddress?.()) ?? null,
      onChange: () => this.set({ noLive: this.live.sentence }),
    });
  }

  start(): void {
    this.checking = setInterval(() => {
      this.silentChecks++;
      if (this.socket && this.silentChecks > SILENT_CHECKS) this.drop();
    }, CHECK_MS);
    this.connect();
  }

  readonly classTime = (): number => this.clocks.followedTime(this.now());
  readonly studioNow = (): number | null => {
    const now = this.now();
    return this.clocks.ready ? now + this.clocks.offset(now) : null;
  };
  readonly toLocal = (log: FloorLog): FloorLog => {
    const now = this.now();
    return movedBy(log, now - this.clocks.followedTime(now));
  };
  readonly runs = (own: OwnClass): void => {
    this.publisher.runs(own);
    this.publisher.say(this.state);
  };
  readonly setView = (view: ScreenView): void => {
    if (view === this.view) return;
    this.view = view;
    this.send({ t: "view", view });
  };
  readonly lead = (sure: boolean): void => {
    const { line } = this.state;
    if (!line) return;
    this.publisher.wants();
    this.set({ refusal: null });
    this.send({ t: "lead", term: line.term, sure });
  };
  readonly withdraw = (): void => this.send({ t: "withdraw" });
  readonly answer = (yes: boolean): void => {
    const { line } = this.state;
    this.set({ refusal: null });
    if (line?.asked) this.send({ t: "answer", term: line.term, to: line.asked.id, yes });
  };
  readonly retry = (): void => {
    if (this.closed || this.socket || this.state.contact === "refused") return;
    clearTimeout(this.retrying);
    this.connect();
  };
  readonly lose = (): void => {
    if (this.socket) this.drop();
  };
  readonly close = (): void => {
    this.closed = true;
    clearInterval(this.checking);
    clearTimeout(this.retrying);
    this.back.end();
    const was = this.socket;
    this.socket = null;
    was?.close(1000);
  };

  private readonly now = (): number => this.options.now?.() ?? performance.now();
  private readonly send = (message: ToServer): void => {
    if (this.socket?.readyState === 1) this.socket.send(JSON.stringify(message));
  };
  private set(change: Partial<LinkState>): void {
    this.state = { ...this.state, ...change };
    this.options.onState(this.state);
  }
  private askTime(): void {
    this.send({ t: "time", t1: this.now() });
  }

  private connect(): void {
    this.retrying = undefined;
    const ws = new (this.options.WebSocket ?? WebSocket)(`${this.options.origin}${LINE_PATH}`);
    this.socket = ws;
    this.isOpen = false;
    this.silentChecks = 0;
    ws.onopen = () => {
      this.live.opened();
      this.isOpen = true;
      const { token } = this.options;
      const memory = memoryOf(this.state.line);
      ws.send(JSON.stringify({ t: "hello", version: LINE_VERSION, token, view: this.view, memory }));
    };
    ws.onmessage = (event) => {
      const t4 = this.now();
      if (this.socket === ws && typeof event.data === "string") this.hear(JSON.parse(event.data) as FromServer, t4);
    };
    ws.onclose = (event) => {
      if (this.socket !== ws) return;
      const sentence = finalCloseText(event.code);
      if (sentence) {
        this.socket = null;
        this.set({ contact: "refused", sentence });
      } else if (event.code === LINE_CLOSE.stopping.code) this.stopped();
      else this.drop();
    };
  }

  /** The server stops for a moment: every screen comes back at a time of its own. */
  private stopped(): void {
    this.drop();
    clearTimeout(this.retrying);
    this.back.begin();
  }

  /** Drops a useless connection and tries again after a while. */
  private drop(): void {
    const was = this.socket;
    this.socket = null;
    was?.close(LOST_CODE);
    if (this.closed || this.state.contact === "refused") return;
    if (!this.isOpen) this.live.failed();
    this.publisher.forget();
    this.set({ contact: "off" });
    clearTimeout(this.retrying);
    this.retrying = setTimeout(() => this.connect(), this.retryMs);
    this.retryMs = Math.min(LONGEST_RETRY_MS, this.retryMs * 2);
  }

  private hear(message: FromServer, t4: number): void {
    this.silentChecks = 0;
    this.state = { ...this.state, heardAt: this.options.wall?.() ?? Date.now() };
    switch (message.t) {
      case "welcome":
        this.clocks.begin(message.epoch);
        this.retryMs = FIRST_RETRY_MS;
        this.back.end();
        this.set({ contact: "on", stopping: false, you: message.you, sentence: null });
        this.askTime();
        break;
      case "here":
        this.askTime();
        break;
      case "time":
        if (this.clocks.take({ t1: message.t1, t2: message.t2, t3: message.t3, t4 }) < EXCHANGES_KEPT) this.askTime();
        this.follow();
        break;
      case "line":
        this.set({ line: message.line });
        this.follow();
        break;
      case "cards":
        this.set({ cards: message.mark });
        break;
      case "refused":
        this.set({ refusal: message.why });
        break;
    }
    this.publisher.say(this.state);
  }

  /** Follows the class as soon as this run's clock is known. */
  private follow(): void {
    const { line, followed } = this.state;
    if (!line || !this.clocks.ready) return;
    const { told: is, leader } = line;
    if (is === null && leader === null) {
      if (followed) this.set({ followed: null });
    } else if (is && this.clocks.follow(followed !== null && same(is, followed))) this.set({ followed: is });
  }
}

const memoryOf = (line: RoomLine | null): LineMemory | null => line && { term: line.term, leader: line.leader };

/**
 * Compares two classes by their JSON: only the leader writes sessions and logs, so the same class always reads the
 * same.
 */
const same = (a: LineClass, b: LineClass): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * One screen's connection to the line of its room: measures the studio's clock, says what this screen leads, hears what
 * another one leads, and comes back by itself. Knows no React and no browser storage; runs in Node as well.
 */
import { EXCHANGES_KEPT } from "#lib/floor/clock-offset.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { movedBy } from "#lib/line/class.ts";
import { finalCloseText } from "#lib/line/close.ts";
import type { FromServer } from "#lib/line/from-server.ts";
import type { RoomLine } from "#lib/line/line.ts";
import type { LineClass, LineMemory, ToServer } from "#lib/line/messages.ts";
import { LINE_PATH, LINE_VERSION, type ScreenView } from "#lib/protocol/line-wire.ts";
import { lineClocks } from "./line-clocks.ts";
import { linePublisher, type OwnClass } from "./line-publisher.ts";
import { type LinkState, UNKNOWN_LINK } from "./link-state.ts";
import { LiveCheck } from "./live-check.ts";

export interface LinkOptions {
  /** `wss://studio.example`: origin only. */
  readonly origin: string;
  readonly token: string;
  readonly view: ScreenView;
  onState(state: LinkState): void;
  /** Asks the address over HTTP why no socket opens: a sentence, or null when it does not answer. May reject. */
  askAddress?(): Promise<string | null>;
  /** ms, only ever forward. */
  now?(): number;
  /** ms since the epoch. */
  wall?(): number;
  /** Only outside browsers. */
  readonly WebSocket?: typeof WebSocket;
}

export interface LineLink {
  readonly state: LinkState;
  /** Now, in ms of the clock that `state.followed` is written in. */
  classTime(): number;
  /** Now on the server's clock, ms: what the moments of `state.line` are written in. Null before it is known. */
  studioNow(): number | null;
  /** A log of that class in this device's own time. */
  toLocal(log: FloorLog): FloorLog;
  /** What runs here. Told to the others when this screen leads; a screen that leads and runs nothing steps down. */
  runs(own: OwnClass): void;
  setView(view: ScreenView): void;
  /** `sure`: though the leader, who is off the line, cannot be asked. */
  lead(sure: boolean): void;
  withdraw(): void;
  answer(yes: boolean): void;
  /** Tries again now: the network is there. */
  retry(): void;
  /** The network is gone: does not wait to find out. */
  lose(): void;
  close(): void;
}

/** Closed by a page that goes on: not a goodbye. */
const LOST_CODE = 4000;
const CHECK_MS = 1000;
/**
 * The server says that it is there every 1.5 s. Looks are counted, not ms: a page that stood still for a while finds what was
 * said meanwhile still waiting to be read.
 */
const SILENT_CHECKS = 8;
const FIRST_RETRY_MS = 300;
const LONGEST_RETRY_MS = 5000;

export function openLine(options: LinkOptions): LineLink {
  const now = options.now ?? (() => performance.now());
  const wall = options.wall ?? (() => Date.now());
  const clocks = lineClocks();
  let state = UNKNOWN_LINK;
  let view = options.view;
  let socket: WebSocket | null = null;
  let isOpen = false;
  let silentChecks = 0;
  let retryMs = FIRST_RETRY_MS;
  let retrying: ReturnType<typeof setTimeout> | undefined;
  let closed = false;

  const set = (change: Partial<LinkState>): void => {
    state = { ...state, ...change };
    options.onState(state);
  };
  const send = (message: ToServer): void => {
    if (socket?.readyState === 1) socket.send(JSON.stringify(message));
  };
  const teller = linePublisher({ clocks, send, now });
  const live = new LiveCheck({
    ask: async () => (await options.askAddress?.()) ?? null,
    onChange: () => set({ noLive: live.sentence }),
  });
  const askTime = () => send({ t: "time", t1: now() });

  function connect(): void {
    retrying = undefined;
    const ws = new (options.WebSocket ?? WebSocket)(`${options.origin}${LINE_PATH}`);
    socket = ws;
    isOpen = false;
    silentChecks = 0;
    ws.onopen = () => {
      live.opened();
      isOpen = true;
      const { token } = options;
      ws.send(JSON.stringify({ t: "hello", version: LINE_VERSION, token, view, memory: memoryOf(state.line) }));
    };
    ws.onmessage = (event) => {
      const t4 = now();
      if (socket === ws && typeof event.data === "string") hear(JSON.parse(event.data) as FromServer, t4);
    };
    ws.onclose = (event) => {
      if (socket !== ws) return;
      const sentence = finalCloseText(event.code);
      if (sentence) {
        socket = null;
        set({ contact: "refused", sentence });
      } else drop();
    };
  }

  /** Lets go of a connection that is of no use, and tries again in a while. */
  function drop(): void {
    const was = socket;
    socket = null;
    was?.close(LOST_CODE);
    if (closed || state.contact === "refused") return;
    if (!isOpen) live.failed();
    teller.forget();
    set({ contact: "off" });
    clearTimeout(retrying);
    retrying = setTimeout(connect, retryMs);
    retryMs = Math.min(LONGEST_RETRY_MS, retryMs * 2);
  }

  function hear(message: FromServer, t4: number): void {
    silentChecks = 0;
    state = { ...state, heardAt: wall() };
    switch (message.t) {
      case "welcome":
        clocks.begin(message.epoch);
        retryMs = FIRST_RETRY_MS;
        set({ contact: "on", you: message.you, sentence: null });
        askTime();
        break;
      case "here":
        askTime();
        break;
      case "time":
        if (clocks.take({ t1: message.t1, t2: message.t2, t3: message.t3, t4 }) < EXCHANGES_KEPT) askTime();
        follow();
        break;
      case "line":
        set({ line: message.line });
        follow();
        break;
      case "cards":
        set({ cards: message.mark });
        break;
      case "refused":
        set({ refusal: message.why });
        break;
    }
    teller.say(state);
  }

  /** Takes the class on as soon as this run of the server's clock is known. */
  function follow(): void {
    const { line, followed } = state;
    if (!line || !clocks.ready) return;
    const { told: is, leader } = line;
    if (is === null && leader === null) {
      if (followed) set({ followed: null });
    } else if (is && clocks.follow(followed !== null && same(is, followed))) set({ followed: is });
  }

  const checking = setInterval(() => {
    silentChecks++;
    if (socket && silentChecks > SILENT_CHECKS) drop();
  }, CHECK_MS);
  connect();

  return {
    get state() {
      return state;
    },
    classTime: () => clocks.followedTime(now()),
    studioNow: () => (clocks.ready ? now() + clocks.offset(now()) : null),
    toLocal: (log) => movedBy(log, now() - clocks.followedTime(now())),
    runs(is) {
      teller.runs(is);
      teller.say(state);
    },
    setView(is) {
      if (is === view) return;
      view = is;
      send({ t: "view", view });
    },
    lead(sure) {
      if (!state.line) return;
      teller.wants();
      set({ refusal: null });
      send({ t: "lead", term: state.line.term, sure });
    },
    withdraw() {
      send({ t: "withdraw" });
    },
    answer(yes) {
      const { line } = state;
      set({ refusal: null });
      if (line?.asked) send({ t: "answer", term: line.term, to: line.asked.id, yes });
    },
    retry() {
      if (closed || socket || state.contact === "refused") return;
      clearTimeout(retrying);
      connect();
    },
    lose: () => socket && drop(),
    close() {
      closed = true;
      clearInterval(checking);
      clearTimeout(retrying);
      const was = socket;
      socket = null;
      was?.close(1000);
    },
  };
}

const memoryOf = (line: RoomLine | null): LineMemory | null => line && { term: line.term, leader: line.leader };

/** Sessions and logs are written by the leader; the same twice is the same. */
const same = (a: LineClass, b: LineClass): boolean => JSON.stringify(a) === JSON.stringify(b);

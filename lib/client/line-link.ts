/**
 * One screen's connection to the line of its room: measures the studio's clock, says what this screen leads, hears what
 * another one leads, and comes back by itself. Knows no React and no browser storage; runs in Node as well.
 */
import { EXCHANGES_KEPT } from "#lib/floor/clock-offset.ts";
import type { FloorLog } from "#lib/floor/log.ts";
import { finalCloseText } from "#lib/line/close.ts";
import type { Line } from "#lib/line/line.ts";
import {
  type FromServer,
  LINE_PATH,
  LINE_VERSION,
  type LineClass,
  type LineMemory,
  type Refusal,
  type ScreenView,
  type ToServer,
} from "#lib/line/messages.ts";
import { type LineClocks, lineClocks } from "./line-clocks.ts";

/** What runs on this screen: a class with times of this device's own clock; nothing; or not known yet, as while asking. */
export type OwnClass = LineClass | "nothing" | "not-known";

export interface LinkState {
  readonly contact: "connecting" | "on" | "off" | "refused";
  /** ms since the epoch, by this device: when the line was last heard of. Null before it ever was. */
  readonly heardAt: number | null;
  /** Why it was closed for good, in a sentence. */
  readonly sentence: string | null;
  /** This device's id on the line. */
  readonly you: string | null;
  /** As last heard. */
  readonly line: Line | null;
  /** What the studio last did not do, until the next act. */
  readonly refusal: Refusal | null;
  /** The class that is led, its times in `classTime`; kept while nobody is heard. */
  readonly followed: LineClass | null;
}

export interface LinkOptions {
  /** `wss://studio.example`: origin only. */
  readonly origin: string;
  readonly token: string;
  readonly view: ScreenView;
  onState(state: LinkState): void;
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
  /** This device's own time for a moment of that clock. */
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

const CHECK_MS = 1000;
/** The server says that it is there every 3 s. */
const SILENT_MS = 8000;
const FIRST_RETRY_MS = 300;
const LONGEST_RETRY_MS = 5000;
/** The class is told again when this device's clock has drifted so far from where it was when it was told. ms */
const DRIFTED_MS = 5;

export function openLine(options: LinkOptions): LineLink {
  const now = options.now ?? (() => performance.now());
  const wall = options.wall ?? (() => Date.now());
  const clocks: LineClocks = lineClocks();
  let state: LinkState = {
    contact: "connecting",
    heardAt: null,
    sentence: null,
    you: null,
    line: null,
    refusal: null,
    followed: null,
  };
  let view = options.view;
  let own: OwnClass = "not-known";
  let socket: WebSocket | null = null;
  let heard = 0;
  let retryMs = FIRST_RETRY_MS;
  let retrying: ReturnType<typeof setTimeout> | undefined;
  let closed = false;
  /** What the others were told: in which term, of which class, with which offset. */
  let told: { term: number; own: LineClass; offset: number } | null = null;
  let askedInTerm: number | null = null;

  const set = (change: Partial<LinkState>): void => {
    state = { ...state, ...change };
    options.onState(state);
  };
  const send = (message: ToServer): void => {
    if (socket?.readyState === 1) socket.send(JSON.stringify(message));
  };
  const askTime = () => send({ t: "time", t1: now() });

  function connect(): void {
    retrying = undefined;
    const ws = new (options.WebSocket ?? WebSocket)(`${options.origin}${LINE_PATH}`);
    socket = ws;
    heard = now();
    ws.onopen = () => {
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
    was?.close();
    if (closed || state.contact === "refused") return;
    told = null;
    askedInTerm = null;
    set({ contact: "off" });
    clearTimeout(retrying);
    retrying = setTimeout(connect, retryMs);
    retryMs = Math.min(LONGEST_RETRY_MS, retryMs * 2);
  }

  function hear(message: FromServer, t4: number): void {
    heard = t4;
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
      case "refused":
        set({ refusal: message.why });
        break;
    }
    sayWhatRuns();
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

  function sayWhatRuns(): void {
    const { line, you, contact } = state;
    if (!line || contact !== "on" || !clocks.ready || own === "not-known") return;
    const leads = line.leader !== null && line.leader.id === you;
    if (own === "nothing") {
      if (leads && askedInTerm !== line.term) send({ t: "step-down", term: line.term });
      askedInTerm = leads ? line.term : askedInTerm;
    } else if (leads) tell(own, line.term);
    else if (!line.leader && askedInTerm !== line.term) {
      askedInTerm = line.term;
      send({ t: "lead", term: line.term, sure: false });
    }
  }

  function tell(is: LineClass, term: number): void {
    const offset = clocks.offset(now());
    const known = told?.term === term && told.own === is && Math.abs(told.offset - offset) <= DRIFTED_MS;
    if (known) return;
    told = { term, own: is, offset };
    send({ t: "class", term, class: { ...is, log: shifted(is.log, offset) } });
  }

  const checking = setInterval(() => {
    if (socket && now() - heard > SILENT_MS) drop();
  }, CHECK_MS);
  connect();

  return {
    get state() {
      return state;
    },
    classTime: () => clocks.followedTime(now()),
    toLocal: (log) => shifted(log, now() - clocks.followedTime(now())),
    runs(is) {
      own = is;
      sayWhatRuns();
    },
    setView(is) {
      if (is === view) return;
      view = is;
      send({ t: "view", view });
    },
    lead(sure) {
      if (!state.line) return;
      // A class of its own stays its own; a follower takes on what it follows, once it leads.
      if (own === "nothing") own = "not-known";
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

const memoryOf = (line: Line | null): LineMemory | null => line && { term: line.term, leader: line.leader };

/** Sessions and logs are written by the leader; the same twice is the same. */
const same = (a: LineClass, b: LineClass): boolean => JSON.stringify(a) === JSON.stringify(b);

const shifted = (log: FloorLog, by: number): LineClass["log"] =>
  log.map((event) => ({ ...event, at: event.at + by }) as LineClass["log"][number]);

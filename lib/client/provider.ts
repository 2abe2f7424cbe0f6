/**
 * A page's connection to one shared document. Wraps y-websocket's provider and adds what it cannot know: how many of
 * this page's messages are on the server's disk, why the server closed for good, and the server's news. Knows no React
 * and no browser storage; runs in Node as well (give it a `WebSocket`).
 */

import { Awareness } from "y-protocols/awareness";
import { WebsocketProvider } from "y-websocket";
import type * as Y from "yjs";
import { CLOSE, isFinalClose } from "#lib/protocol/close.ts";
import { type DocName, formatDocName, MESSAGE, type News, QUERY } from "#lib/protocol/messages.ts";
import { freshClientId, renameOwnWords } from "./client-id.ts";
import { ComeBack } from "./come-back.ts";
import { type ConnectionState, NOT_CONNECTED } from "./connection-state.ts";
import { ASK_FRAME, documentFrameKind, ownAwarenessFrame, parseNews } from "./frames.ts";
import { PULSE_CHECK_MS, Pulse, type PulseView } from "./pulse.ts";

export interface ConnectOptions {
  /** Where the server is, e.g. `wss://studio.example`: the origin only. */
  readonly origin: string;
  readonly name: DocName;
  readonly doc: Y.Doc;
  /** Versions this page speaks; `generation` is that of the local copy, where there is one. */
  readonly docVersion: number;
  readonly editorVersion?: number;
  readonly generation?: string;
  /** Whose words these are: the server accepts them from nobody else. */
  readonly userId: string;
  /** Presence shown to others until it is first changed; null shows none. */
  readonly awareness?: Record<string, unknown> | null;
  /** This page's words have moved to another client id, which no update reports, so copies of them are out of date. */
  readonly onRenamed?: () => void;
  readonly onNews?: (news: News) => void;
  /** Called after every change of state, but never while the connection is still being set up. */
  readonly onState?: (state: ConnectionState) => void;
  /** An attempt failed: its socket never opened. */
  readonly onFailed?: () => void;
  /** Needed only outside browsers. */
  readonly WebSocket?: typeof WebSocket;
  /** Longest wait between two attempts, ms. */
  readonly maxBackoffMs?: number;
}

export interface DocConnection {
  readonly awareness: Awareness;
  readonly state: ConnectionState;
  /** Connects again after a final close, for instance once the person has signed in again. */
  reconnect(): void;
  /** Drops the connection without ending it, since the network is known to be gone. */
  disconnect(): void;
  /** Checks soon whether the connection is still alive, after the page was hidden or the device slept. */
  doubt(): void;
  /**
   * Ends it for good: leaves no socket and no listener on the document. y-websocket's last idle timer runs out by
   * itself.
   */
  stop(): void;
}

/**
 * The close code of a frame larger than the socket layer accepts; told with the same sentence as the server's own
 * limit.
 */
const FRAME_TOO_LARGE = 1009;
/** Opens the connection. It reconnects by itself until a final close or `stop()`. */
export function connectDoc(options: ConnectOptions): DocConnection {
  return new Connection(options);
}

class Connection implements DocConnection {
  readonly awareness: Awareness;
  private readonly provider: WebsocketProvider;
  private now: ConnectionState = NOT_CONNECTED;
  private sent = 0;
  private saved = 0;
  private offered = false;
  private read = false;
  private writes = true;
  /** This page has joined the document's room. */
  private joined = false;
  /** A change was made while the socket was closing: it was not sent, and the next connection offers it. */
  private missed = false;
  /** The page itself is ending the attempt, which says nothing about the address. */
  private takingAway = false;
  private readonly pulse = new Pulse({ ask: () => this.provider.ws?.send(ASK_FRAME), lost: () => this.letGo() });
  private readonly looking: ReturnType<typeof setInterval>;
  private readonly back = new ComeBack({
    connect: () => this.provider.connect(),
    say: (stopping) => this.change({ stopping }),
  });
  private readonly options: ConnectOptions;

  constructor(options: ConnectOptions) {
    this.options = options;
    this.awareness = new Awareness(options.doc);
    this.awareness.setLocalState(options.awareness ?? null);
    this.provider = this.makeProvider();
    this.provider.messageHandlers[MESSAGE.news] = (_encoder, decoder) => {
      const news = parseNews(decoder);
      if (news) this.takeNews(news);
    };
    // y-websocket sends every awareness change it hears back to the server; only this page's own is of use there.
    this.awareness.off("update", this.provider._awarenessUpdateHandler);
    this.awareness.on("update", this.sendOwnAwareness);
    this.listen();
    options.doc.on("update", this.noteMissed);
    this.looking = setInterval(() => this.pulse.look(this.view()), PULSE_CHECK_MS);
    this.provider.connect();
  }

  get state(): ConnectionState {
    return this.now;
  }

  reconnect(): void {
    this.change({ closed: null });
    this.provider.connect();
  }

  disconnect(): void {
    this.takingAway = true;
    this.provider.disconnect();
    this.takingAway = false;
  }

  doubt(): void {
    this.pulse.doubt();
    this.pulse.look(this.view());
  }

  stop(): void {
    this.takingAway = true;
    clearInterval(this.looking);
    this.back.end();
    this.options.doc.off("update", this.noteMissed);
    this.awareness.off("update", this.sendOwnAwareness);
    this.provider.destroy();
    this.awareness.destroy();
  }

  private makeProvider(): WebsocketProvider {
    const { options } = this;
    const params: Record<string, string> = {
      [QUERY.userId]: options.userId,
      [QUERY.docVersion]: String(options.docVersion),
    };
    // Read again on each attempt: the id changes when another page turns out to have the same one.
    Object.defineProperty(params, QUERY.clientId, { enumerable: true, get: () => String(options.doc.clientID) });
    if (options.editorVersion !== undefined) params[QUERY.editorVersion] = String(options.editorVersion);
    if (options.generation !== undefined) params[QUERY.generation] = options.generation;
    return new WebsocketProvider(`${options.origin}/sync`, formatDocName(options.name), options.doc, {
      connect: false,
      // Each tab has its own socket and rights, and the server must see every change.
      disableBc: true,
      awareness: this.awareness,
      params,
      maxBackoffTime: options.maxBackoffMs ?? 2500,
      WebSocketPolyfill: this.countingSocket(options.WebSocket ?? WebSocket),
      shouldReconnect: ({ code }) => !isFinalClose(code) && code !== FRAME_TOO_LARGE && code !== CLOSE.stopping.code,
    });
  }

  /** A socket class that reports every document message it sends to this connection. */
  private countingSocket(Base: typeof WebSocket): typeof WebSocket {
    const noteSent = (frame: Uint8Array) => this.noteSent(frame);
    return class extends Base {
      override send(data: string | ArrayBufferLike | Blob | ArrayBufferView): void {
        if (data instanceof Uint8Array) noteSent(data);
        super.send(data as Uint8Array<ArrayBuffer>);
      }
    };
  }

  private listen(): void {
    this.provider.on("status", ({ status }) => {
      if (status === "connected") this.beginCounting();
      else this.change({ connected: false, synced: false });
    });
    this.provider.on("sync", (synced) => {
      this.read = synced;
      this.recount();
    });
    this.provider.on("connection-close", (event) => {
      if (event?.code === CLOSE.storageFailing.code) this.change({ storageFailing: true });
      if (event?.code === CLOSE.storageDamaged.code) this.change({ storageFailing: true, damaged: true });
      this.change({ tried: true, othersFirst: event?.code === CLOSE.othersFirst.code });
      if (event?.code === CLOSE.idTaken.code) this.takeNewId();
      if (!this.provider.wsconnected && !this.takingAway) this.options.onFailed?.();
    });
    this.provider.on("closed", ({ code }) => {
      if (code === CLOSE.stopping.code) this.back.begin();
      else this.change({ closed: code === FRAME_TOO_LARGE ? CLOSE.tooLarge.code : code });
    });
  }

  /**
   * Another person's page has this page's client id. Before the first joining, everything under that id is this page's
   * alone and moves to the new id; what was already sent to a room keeps the old one.
   */
  private takeNewId(): void {
    const { doc } = this.options;
    if (this.joined) doc.clientID = freshClientId(doc);
    else if (renameOwnWords(doc, freshClientId(doc))) this.options.onRenamed?.();
    const shown = this.awareness.getLocalState();
    this.awareness.setLocalState(null);
    this.awareness.clientID = doc.clientID;
    this.awareness.setLocalState(shown);
  }

  private view(): PulseView {
    const { ws, wsLastMessageReceived: heard } = this.provider;
    const { connected, synced, waiting } = this.now;
    const phase = ws === null ? "off" : !connected ? "connecting" : synced ? "open" : "reading";
    return { phase, heard, buffered: ws?.bufferedAmount ?? 0, waiting: waiting > 0 };
  }

  /** Drops a socket that no longer answers, and retries as after any lost one, waiting longer each time. */
  private letGo(): void {
    this.provider.disconnect();
    this.provider.shouldConnect = true;
  }

  /** Called after y-websocket has sent the change, or skipped it because the socket was already closing. */
  private readonly noteMissed = (_update: Uint8Array, origin: unknown): void => {
    if (origin === this.provider || this.missed) return;
    const { ws } = this.provider;
    if (ws && ws.readyState === ws.OPEN) return;
    this.missed = true;
    this.recount();
  };

  private beginCounting(): void {
    this.missed = false;
    this.sent = 0;
    this.saved = 0;
    this.offered = false;
    this.read = false;
    this.writes = true;
    this.back.end();
    // Known only once the server has taken what this page offers.
    this.change({ ...NOT_CONNECTED, connected: true, tried: true, othersFirst: this.now.othersFirst });
  }

  private noteSent(frame: Uint8Array): void {
    const kind = documentFrameKind(frame);
    if (kind === null) return;
    this.sent++;
    if (kind === "step2") this.offered = true;
    this.recount();
  }

  private takeNews(news: News): void {
    if (news.t === "saved") {
      this.saved = news.count;
      this.recount();
    } else if (news.t === "generation") this.joined = true;
    else if (news.t === "storage") this.takeStorage(news.failing, news.damaged === true);
    else if (news.t === "rights") this.takeRights(news.writes);
    this.options.onNews?.(news);
  }

  /** Damage stays until the server has been restarted. */
  private takeStorage(storageFailing: boolean, damaged: boolean): void {
    this.change({ storageFailing, damaged: storageFailing && (damaged || this.now.damaged) });
  }

  /** A reader shows no presence; it appears at once when they gain the right to write. */
  private takeRights(writes: boolean): void {
    const gained = writes && !this.writes;
    this.writes = writes;
    if (gained) this.sendOwnAwareness({ added: [], updated: [this.awareness.clientID], removed: [] });
  }

  private recount(): void {
    const waiting = Math.max(0, this.sent - this.saved) + (this.missed ? 1 : 0);
    const synced = this.read && this.offered;
    const othersFirst = this.now.othersFirst && !(synced && waiting === 0);
    this.change({ synced, waiting, othersFirst });
  }

  private change(part: Partial<ConnectionState>): void {
    const next = { ...this.now, ...part };
    const same = (Object.keys(next) as (keyof ConnectionState)[]).every((key) => next[key] === this.now[key]);
    if (same) return;
    this.now = Object.freeze(next);
    this.options.onState?.(this.now);
  }

  private readonly sendOwnAwareness = (change: { added: number[]; updated: number[]; removed: number[] }): void => {
    const own = this.awareness.clientID;
    const { ws, wsconnected } = this.provider;
    if (!ws || !wsconnected || !this.writes) return;
    if ([change.added, change.updated, change.removed].some((ids) => ids.includes(own)))
      ws.send(ownAwarenessFrame(this.awareness));
  };
}

/** A page that writes a word every few milliseconds, whether or not it is connected, as a person does; it measures its pauses. */
import { WebSocket as NodeWebSocket } from "ws";
import * as Y from "yjs";
import type { ConnectionState } from "#lib/client/connection-state.ts";
import { connectDoc, type DocConnection } from "#lib/client/provider.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";

const EVERY_MS = 25;

export interface PausedWriterSetup {
  /** `ws://127.0.0.1:<port>` */
  readonly origin: string;
  readonly plan: string;
  /** Also its cookie. */
  readonly userId: string;
}

export class PausedWriter {
  readonly doc = new Y.Doc();
  readonly words: string[] = [];
  /** Of its sockets that have closed. */
  readonly codes: number[] = [];
  readonly plan: string;
  /** ms between two answers that words are saved, at its longest. */
  longestPause = 0;
  toldToWait = false;
  private savedAt = performance.now();
  private readonly link: DocConnection;
  private readonly timer: NodeJS.Timeout;

  constructor({ origin, plan, userId }: PausedWriterSetup) {
    this.plan = plan;
    const heardCode = (code: number) => this.codes.push(code);
    this.link = connectDoc({
      ...{ origin, name: { kind: "plan", key: plan }, doc: this.doc, userId },
      ...{ docVersion: PLAN_DOC_VERSION, editorVersion: EDITOR_VERSION },
      WebSocket: class extends NodeWebSocket {
        constructor(url: string | URL, protocols?: string | string[]) {
          super(url, protocols, { headers: { cookie: userId } });
          this.on("close", heardCode);
        }
      } as unknown as typeof WebSocket,
      onState: (state) => this.note(state),
      onNews: (news) => news.t === "saved" && this.noteSaved(),
    });
    this.timer = setInterval(() => this.write(userId), EVERY_MS);
  }
  private note({ stopping }: ConnectionState): void {
    this.toldToWait ||= stopping;
  }
  private noteSaved(): void {
    const now = performance.now();
    this.longestPause = Math.max(this.longestPause, now - this.savedAt);
    this.savedAt = now;
  }
  private write(userId: string): void {
    const word = `${userId}-${this.words.length}`;
    this.words.push(word);
    this.doc.getMap("words").set(word, true);
  }
  beginMeasuring(): void {
    [this.longestPause, this.savedAt] = [0, performance.now()];
  }
  get isSaved(): boolean {
    return this.link.state.synced && this.link.state.waiting === 0;
  }
  rest(): void {
    clearInterval(this.timer);
  }
  end(): void {
    this.rest();
    this.link.stop();
    this.doc.destroy();
  }
}

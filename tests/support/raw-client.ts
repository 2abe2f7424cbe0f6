/** A page made of bytes: sends exactly what a test tells it to, and records everything it receives. */
import * as decoding from "lib0/decoding";
import * as encoding from "lib0/encoding";
import { WebSocket } from "ws";
import * as Y from "yjs";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { type DocName, formatDocName, type News } from "#lib/protocol/messages.ts";
import { eventually } from "./eventually.ts";

export interface HeardPresence {
  readonly clientId: number;
  readonly clock: number;
  readonly state: Record<string, unknown> | null;
}
export type Heard =
  | { readonly kind: "step1" | "step2" | "update"; readonly body: Uint8Array }
  | { readonly kind: "presence"; readonly entries: readonly HeardPresence[] }
  | { readonly kind: "news"; readonly news: News };

export interface ClientOptions {
  readonly cookie?: string;
  /** The Cookie header as it is, instead of one made of `cookie`. */
  readonly cookies?: string;
  readonly origin?: string;
  /** As the gate would note it. */
  readonly network?: string;
  /** This query instead of the versions of this program. */
  readonly query?: string;
  /** Answers the server's step 1 with what `doc` holds and asks for the rest. On by default. */
  readonly syncs?: boolean;
}

export class RawClient {
  readonly ws: WebSocket;
  readonly doc = new Y.Doc();
  readonly heard: Heard[] = [];
  /** Document messages sent, as the server counts them. */
  sent = 0;
  closeCode: number | undefined;
  /** HTTP status of a refused upgrade. */
  refusedStatus: number | undefined;
  private readonly syncs: boolean;

  constructor(url: string, name: DocName | string, options: ClientOptions = {}) {
    this.syncs = options.syncs !== false;
    const path = typeof name === "string" ? name : `/sync/${formatDocName(name)}`;
    const query = options.query ?? `d=${PLAN_DOC_VERSION}&e=${EDITOR_VERSION}`;
    const headers: Record<string, string> = {};
    if (options.cookie !== undefined) headers.cookie = `session=${options.cookie}`;
    if (options.cookies !== undefined) headers.cookie = options.cookies;
    if (options.origin !== undefined) headers.origin = options.origin;
    if (options.network !== undefined) headers["x-springline-network"] = options.network;
    this.ws = new WebSocket(`${url}${path}?${query}`, { headers });
    this.ws.on("message", (data: Buffer) => this.take(data));
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
    await eventually("the socket opens", () => this.ws.readyState === WebSocket.OPEN || this.closeCode !== undefined);
    return this;
  }

  /** Waits until the server's document has arrived. */
  async synced(): Promise<this> {
    await eventually("the page is synced", () => this.heard.some((h) => h.kind === "step2"));
    return this;
  }

  closed(ms?: number): Promise<number> {
    return eventually("the socket is closed", () => this.closeCode, ms);
  }

  /** Waits until every message sent so far is reported as saved. */
  saved(ms?: number): Promise<true> {
    return eventually("all is saved", () => this.savedCount >= this.sent || undefined, ms);
  }

  get savedCount(): number {
    return this.newsOf("saved").at(-1)?.count ?? 0;
  }

  newsOf<T extends News["t"]>(t: T): Extract<News, { t: T }>[] {
    return this.heard.flatMap((h) => (h.kind === "news" && h.news.t === t ? [h.news as Extract<News, { t: T }>] : []));
  }

  presence(): HeardPresence[] {
    return this.heard.flatMap((h) => (h.kind === "presence" ? [...h.entries] : []));
  }

  /** Changes this page's document and sends the change, as a page does. */
  edit(change: (doc: Y.Doc) => void): Uint8Array {
    const updates: Uint8Array[] = [];
    const collect = (update: Uint8Array) => updates.push(update);
    this.doc.on("update", collect);
    this.doc.transact(() => change(this.doc));
    this.doc.off("update", collect);
    for (const update of updates) this.sendUpdate(update);
    return Y.mergeUpdates(updates);
  }

  sendStep1(stateVector: Uint8Array = Y.encodeStateVector(this.doc)): void {
    this.sendSync(0, stateVector);
  }
  sendStep2(update: Uint8Array): void {
    this.sent++;
    this.sendSync(1, update);
  }
  sendUpdate(update: Uint8Array): void {
    this.sent++;
    this.sendSync(2, update);
  }

  sendPresence(entries: readonly { clientId: number; clock: number; state: unknown }[]): void {
    const body = encoding.createEncoder();
    encoding.writeVarUint(body, entries.length);
    for (const { clientId, clock, state } of entries) {
      encoding.writeVarUint(body, clientId);
      encoding.writeVarUint(body, clock);
      encoding.writeVarString(body, JSON.stringify(state));
    }
    const frame = encoding.createEncoder();
    encoding.writeVarUint(frame, 1);
    encoding.writeVarUint8Array(frame, encoding.toUint8Array(body));
    this.ws.send(encoding.toUint8Array(frame));
  }

  end(): void {
    this.ws.terminate();
    this.doc.destroy();
  }

  private sendSync(kind: number, body: Uint8Array): void {
    const frame = encoding.createEncoder();
    encoding.writeVarUint(frame, 0);
    encoding.writeVarUint(frame, kind);
    encoding.writeVarUint8Array(frame, body);
    this.ws.send(encoding.toUint8Array(frame));
  }

  private take(data: Buffer): void {
    const decoder = decoding.createDecoder(new Uint8Array(data));
    const type = decoding.readVarUint(decoder);
    if (type === 0) this.takeSync(decoding.readVarUint(decoder), decoding.readVarUint8Array(decoder));
    else if (type === 1)
      this.heard.push({ kind: "presence", entries: readPresence(decoding.readVarUint8Array(decoder)) });
    else if (type === 100) this.heard.push({ kind: "news", news: JSON.parse(decoding.readVarString(decoder)) as News });
  }

  private takeSync(kind: number, body: Uint8Array): void {
    if (kind === 0) {
      this.heard.push({ kind: "step1", body });
      if (!this.syncs) return;
      this.sendStep2(Y.encodeStateAsUpdate(this.doc, body));
      this.sendStep1();
      return;
    }
    Y.applyUpdate(this.doc, body, this);
    this.heard.push({ kind: kind === 1 ? "step2" : "update", body });
  }
}

function readPresence(body: Uint8Array): HeardPresence[] {
  const decoder = decoding.createDecoder(body);
  return Array.from({ length: decoding.readVarUint(decoder) }, () => ({
    clientId: decoding.readVarUint(decoder),
    clock: decoding.readVarUint(decoder),
    state: JSON.parse(decoding.readVarString(decoder)) as Record<string, unknown> | null,
  }));
}

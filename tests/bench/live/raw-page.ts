/** A page without a document, so that it costs next to nothing: sends prepared updates, reads how far others are. */
import * as decoding from "lib0/decoding";
import { WebSocket } from "ws";
import * as Y from "yjs";
import { MONTH_DOC_VERSION } from "#lib/programme/layout.ts";
import { type Dialect, dialectOf, STEP_1, STEP_2, UPDATE } from "./dialect.ts";
import type { Kind } from "./servers.ts";

export interface Door {
  readonly kind: Kind;
  readonly port: number;
  /** One per person; none for servers without rights. */
  readonly cookies: readonly string[];
  /** For this program's server: the versions that a page announces. */
  readonly query: string;
}

export interface Ears {
  /** By client id: how far the page's knowledge goes, with the frame that has just come. */
  heard?(known: ReadonlyMap<number, number>): void;
  /** The edit itself. */
  update?(body: Uint8Array): void;
  /** A frame without an edit. */
  other?(bytes: number): void;
}

export interface Opening {
  readonly key: string;
  /** Left out: a plan. */
  readonly month?: boolean;
  /** Whose page it is: index of the cookie. */
  readonly person: number;
  /** What the page already has and offers; nothing for a page that has never seen the plan. */
  readonly holds?: Uint8Array;
}

const NOTHING = Y.encodeStateAsUpdate(new Y.Doc());

export class RawPage {
  ears: Ears = {};
  private readonly socket: WebSocket;
  private readonly dialect: Dialect;

  private constructor(socket: WebSocket, dialect: Dialect) {
    this.socket = socket;
    this.dialect = dialect;
  }

  /** Resolves once everything that the server has has arrived. */
  static open(door: Door, { key, person, holds = NOTHING, month = false }: Opening): Promise<RawPage> {
    const cookie = door.cookies[person % Math.max(1, door.cookies.length)];
    const socket = new WebSocket(addressOf(door, key, month), cookie ? { headers: { cookie } } : {});
    const page = new RawPage(socket, dialectOf(door.kind, key));
    return new Promise((resolve, reject) => {
      const parts = { asked: false, given: false };
      socket.on("open", () => {
        if (page.dialect.hello) socket.send(page.dialect.hello);
        page.send(STEP_1, Y.encodeStateVectorFromUpdate(holds));
      });
      socket.on("message", (data: Buffer) => {
        const kind = page.hear(data);
        if (kind === STEP_1 && !parts.asked) page.offer(data, holds);
        parts.asked ||= kind === STEP_1;
        parts.given ||= kind === STEP_2;
        if (parts.asked && parts.given) resolve(page);
      });
      socket.on("error", reject);
      socket.on("close", (code) => reject(new Error(`a page was shut out: ${code}`)));
    });
  }

  /** An update ready to send, made before measuring. */
  framed(update: Uint8Array): Uint8Array {
    return this.dialect.frame(UPDATE, update);
  }

  sendFramed(frame: Uint8Array): void {
    this.socket.send(frame);
  }

  end(): void {
    this.socket.removeAllListeners("close");
    this.socket.terminate();
  }

  /** Answers a step 1 with what the server lacks, as a page does. */
  private offer(step1: Uint8Array, holds: Uint8Array): void {
    const at = this.dialect.syncAt(step1);
    if (at !== undefined) this.send(STEP_2, Y.diffUpdate(holds, bodyAt(step1, at)));
  }

  private send(kind: number, body: Uint8Array): void {
    this.socket.send(this.dialect.frame(kind, body));
  }

  private hear(data: Uint8Array): number | undefined {
    const at = this.dialect.syncAt(data);
    const kind = at === undefined ? undefined : data[at];
    if (at === undefined || kind !== UPDATE) this.ears.other?.(data.length);
    else {
      this.ears.heard?.(Y.parseUpdateMeta(bodyAt(data, at)).to);
      this.ears.update?.(bodyAt(data, at));
    }
    return kind;
  }
}

/** The content of a sync message, after its kind. */
const bodyAt = (data: Uint8Array, kindAt: number): Uint8Array =>
  decoding.readVarUint8Array(decoding.createDecoder(data.subarray(kindAt + 1)));

function addressOf({ kind, port, query }: Door, key: string, month: boolean): string {
  const host = `ws://127.0.0.1:${port}`;
  if (kind === "own" && month) return `${host}/sync/month/${key}?d=${MONTH_DOC_VERSION}`;
  if (kind === "own") return `${host}/sync/plan/${key}${query}`;
  return kind === "stock" ? `${host}/${key}` : host;
}

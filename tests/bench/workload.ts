/**
 * The same pages for both servers: stock y-websocket providers on one plan of thirty items, each typing in an item's
 * script, now and then changing its seconds or moving it. Times every edit until each other page has it.
 */
import { WebSocket as NodeWebSocket } from "ws";
import { WebsocketProvider } from "y-websocket";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import { orderedIds, scriptOf } from "#lib/doc/read.ts";
import { moveItem, setItemField } from "#lib/doc/write.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { eventually } from "#tests/support/eventually.ts";
import { longClass } from "#tests/support/long-class.ts";
import { SMALL_PLAN } from "#tests/support/sync-server.ts";

export const PLAN_KEY = "bench";
const ITEMS = 30;

/** The plans of a busy hour: long ones, with scripts, of the demo's own moves. */
export const peakPlan = (): Plan => longClass(30, 200);
export const peakKey = (plan: number): string => `peak-${plan}`;

export function benchDoc(): Plan & { doc: Y.Doc } {
  const items = Array.from(
    { length: ITEMS },
    (_, i): MoveItem => ({
      id: `i${i}`,
      kind: "move",
      move: "kneeling-row",
      side: "both",
      seconds: 45,
      springs: { firm: 1 + (i % 2) },
      script: [
        { kind: "setup", text: "One firm spring, kneel facing the front, handles in both hands" },
        { kind: "breath", text: "Breathe out as you pull" },
        { kind: "safety", text: "Hand on the bar before you step off" },
      ],
    }),
  );
  const plan: Plan = { ...SMALL_PLAN, lengthSeconds: 1800, items };
  return { ...plan, doc: createPlanDoc(plan, { carry: true }) };
}

export interface Where {
  readonly base: string;
  readonly room: string;
  readonly params: Record<string, string>;
  readonly cookies: readonly string[];
}

interface Edit {
  /** The writer's clock once the edit is in. */
  readonly clock: number;
  readonly at: number;
}

class Page {
  readonly doc = new Y.Doc();
  readonly provider: WebsocketProvider;
  readonly edits: Edit[] = [];
  /** By writer's client id: how many of their edits are here. */
  readonly seen = new Map<number, number>();

  constructor(where: Where, index: number) {
    const cookie = where.cookies[index];
    class Socket extends NodeWebSocket {
      constructor(url: string | URL, protocols?: string | string[]) {
        super(url, protocols, cookie === undefined ? {} : { headers: { cookie } });
      }
    }
    this.provider = new WebsocketProvider(where.base, where.room, this.doc, {
      connect: false,
      disableBc: true,
      params: where.params,
      WebSocketPolyfill: Socket as unknown as typeof WebSocket,
    });
    // Our server's news: read as a page reads it.
    this.provider.messageHandlers[100] = (_encoder, decoder) => JSON.parse(readString(decoder));
    this.provider.connect();
  }

  edit(turn: number): void {
    const ids = orderedIds(this.doc);
    const id = ids[(this.doc.clientID + turn) % ids.length] ?? "";
    const w = { doc: this.doc, origin: "bench" };
    const before = Y.getState(this.doc.store, this.doc.clientID);
    const at = performance.now();
    if (turn % 20 === 7) moveItem(w, id, ids[turn % ids.length] ?? null);
    else if (turn % 10 === 3) setItemField(w, id, "seconds", 30 + (turn % 60));
    else type(this.doc, id);
    // Moving an item to where it stands changes nothing: there is nothing that another page could receive.
    const clock = Y.getState(this.doc.store, this.doc.clientID);
    if (clock > before) this.edits.push({ clock, at });
  }
  end(): void {
    this.provider.destroy();
    this.doc.destroy();
  }
}

function type(doc: Y.Doc, id: string): void {
  const line = scriptOf(doc, id)?.get(1);
  const text = line instanceof Y.XmlElement ? line.get(0) : undefined;
  if (text instanceof Y.XmlText) text.insert(text.length, "a");
}

function readString(decoder: { arr: Uint8Array; pos: number }): string {
  const bytes = decoder.arr.subarray(decoder.pos);
  const start = bytes.indexOf(0x7b);
  return new TextDecoder().decode(bytes.subarray(start));
}

export interface Timing {
  /** Every (edit, other page) pair, ms from the edit to the moment that page had it. */
  readonly latencies: readonly number[];
}

/** A room full of writers. */
export class Crowd {
  readonly pages: readonly Page[];
  latencies: number[] = [];
  private received = 0;

  private constructor(pages: readonly Page[]) {
    this.pages = pages;
    const byClient = new Map(pages.map((page) => [page.doc.clientID, page]));
    for (const page of pages) page.doc.on("afterTransaction", (tr: Y.Transaction) => this.note(page, tr, byClient));
  }

  static async join(where: Where, writers: number): Promise<Crowd> {
    const first = new Page(where, 0);
    await eventually("the first is in", () => first.provider.synced, 20_000);
    // The stock server has no way to be given a document: its first page brings it.
    if (orderedIds(first.doc).length === 0) Y.applyUpdate(first.doc, Y.encodeStateAsUpdate(benchDoc().doc), "start");
    const rest = Array.from({ length: writers - 1 }, (_, i) => new Page(where, i + 1));
    const pages = [first, ...rest];
    await eventually(
      "all are in",
      () => pages.every((p) => p.provider.synced && orderedIds(p.doc).length === ITEMS),
      20_000,
    );
    return new Crowd(pages);
  }

  /** Everybody edits every `everyMs`, each at a moment of their own, for `forMs`. */
  async typeFor(forMs: number, everyMs: number): Promise<number[]> {
    this.latencies = [];
    const started = performance.now();
    let turn = 0;
    await new Promise<void>((resolve) => {
      const tick = () => {
        const due = Math.floor(((performance.now() - started) / everyMs) * this.pages.length);
        for (; turn < due; turn++) this.pages[turn % this.pages.length]?.edit(Math.floor(turn / this.pages.length));
        if (performance.now() - started < forMs) setTimeout(tick, 1);
        else resolve();
      };
      tick();
    });
    await this.allReceived();
    return this.latencies;
  }

  /** Everybody makes `each` edits in quick waves; edits a second until everybody has everything. */
  async flood(each: number): Promise<number> {
    const before = this.edits;
    const started = performance.now();
    for (let wave = 0; wave < each; wave++) {
      for (const page of this.pages) page.edit(wave);
      // Lets the sockets work between the waves, as they would.
      await new Promise((resolve) => setImmediate(resolve));
    }
    await this.allReceived();
    return ((this.edits - before) / (performance.now() - started)) * 1000;
  }

  end(): void {
    for (const page of this.pages) page.end();
  }

  private get edits(): number {
    return this.pages.reduce((sum, page) => sum + page.edits.length, 0);
  }

  private async allReceived(): Promise<void> {
    await eventually("everybody has everything", () => this.received >= this.edits * (this.pages.length - 1), 60_000);
  }

  private note(page: Page, tr: Y.Transaction, byClient: ReadonlyMap<number, Page>): void {
    for (const [client, clock] of tr.afterState) {
      if (tr.beforeState.get(client) === clock || client === page.doc.clientID) continue;
      const writer = byClient.get(client);
      if (writer) this.noteFrom(page, writer, clock);
    }
  }

  private noteFrom(page: Page, writer: Page, clock: number): void {
    const now = performance.now();
    let next = page.seen.get(writer.doc.clientID) ?? 0;
    for (let edit = writer.edits[next]; edit && edit.clock <= clock; edit = writer.edits[++next]) {
      this.latencies.push(now - edit.at);
      this.received++;
    }
    page.seen.set(writer.doc.clientID, next);
  }
}

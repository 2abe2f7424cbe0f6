/**
 * A long evening of real pages with real documents: a hundred writers over forty plans type, take out, change times, move and
 * now and then lose the network and come back with what they wrote meanwhile. At the end every page of a plan, and one that
 * has just come, must hold the same.
 */
import { WebSocket as NodeWebSocket } from "ws";
import { WebsocketProvider } from "y-websocket";
import * as Y from "yjs";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { orderedIds, readItems, readListed, scriptOf } from "#lib/doc/read.ts";
import { moveItem, setItemField } from "#lib/doc/write.ts";
import { Dice } from "#tests/support/dice.ts";
import { steadily, until, wait } from "./pace.ts";
import { planKey } from "./plans.ts";
import type { Door } from "./raw-page.ts";

export interface SoakWanted {
  readonly door: Door;
  readonly writers: number;
  readonly plans: number;
  readonly minutes: number;
}
export type SoakSaid =
  | { readonly minute: number; readonly edits: number; readonly used: number }
  | { readonly apart: readonly string[]; readonly edits: number }
  | { readonly failed: string };

const AWAY_S = 8;
const dice = new Dice(2026);
let edits = 0;

class SoakPage {
  readonly doc = new Y.Doc();
  readonly provider: WebsocketProvider;
  readonly plan: string;
  private turn = 0;

  constructor(door: Door, plan: string, person: number) {
    this.plan = plan;
    const cookie = door.cookies[person % door.cookies.length] ?? "";
    class Socket extends NodeWebSocket {
      constructor(url: string | URL, protocols?: string | string[]) {
        super(url, protocols, { headers: { cookie } });
      }
    }
    this.provider = new WebsocketProvider(`ws://127.0.0.1:${door.port}/sync`, `plan/${plan}`, this.doc, {
      disableBc: true,
      params: { d: String(PLAN_DOC_VERSION), e: String(EDITOR_VERSION) },
      WebSocketPolyfill: Socket as unknown as typeof WebSocket,
    });
    // This program's messages outside the protocol are not needed here.
    this.provider.messageHandlers[100] = () => undefined;
  }

  edit(): void {
    const ids = orderedIds(this.doc);
    const id = dice.one(ids);
    const at = { doc: this.doc, origin: "soak" };
    this.turn++;
    edits++;
    if (this.turn % 30 === 7) moveItem(at, id, dice.one(ids));
    else if (this.turn % 6 === 3) setItemField(at, id, "seconds", 30 + (this.turn % 60));
    else this.type(id);
  }

  /** Letters are added and removed, so that a plan keeps its length. */
  private type(id: string): void {
    const line = scriptOf(this.doc, id)?.get(0);
    const text = line instanceof Y.XmlElement ? line.get(0) : undefined;
    if (!(text instanceof Y.XmlText)) return;
    if (text.length > 80) text.delete(text.length - 20, 20);
    else text.insert(text.length, "a");
  }

  get isLevel(): boolean {
    return this.provider.wsconnected && this.provider.synced;
  }
}

async function leaveAndComeBack(page: SoakPage): Promise<void> {
  page.provider.disconnect();
  await wait(AWAY_S);
  page.provider.connect();
}

const contents = (page: SoakPage): string => JSON.stringify([readListed(page.doc), readItems(page.doc)]);

/** Plans whose pages differ. */
async function apartOf(wanted: SoakWanted, pages: readonly SoakPage[]): Promise<string[]> {
  await until("everybody is back", () => pages.every((page) => page.isLevel), 60);
  await wait(5);
  const fresh = Array.from({ length: wanted.plans }, (_, n) => new SoakPage(wanted.door, planKey(n), n));
  await until("the fresh pages are in", () => fresh.every((page) => page.isLevel), 60);
  return fresh
    .filter((one) => pages.some((page) => page.plan === one.plan && contents(page) !== contents(one)))
    .map(({ plan }) => plan);
}

async function soak(wanted: SoakWanted): Promise<void> {
  const { door, writers, plans, minutes } = wanted;
  const pages = Array.from({ length: writers }, (_, n) => new SoakPage(door, planKey(n % plans), n));
  await until("everybody is in", () => pages.every((page) => page.isLevel), 60);
  const end = steadily(writers, (turn) => pages[turn % writers]?.edit());
  for (let minute = 1; minute <= minutes; minute++) {
    for (let part = 0; part < 12; part++) {
      await wait(5);
      void leaveAndComeBack(dice.one(pages));
    }
    globalThis.gc?.();
    const { heapUsed, external } = process.memoryUsage();
    process.send?.({ minute, edits, used: heapUsed + external } satisfies SoakSaid);
  }
  end();
  await wait(AWAY_S + 2);
  process.send?.({ apart: await apartOf(wanted, pages), edits } satisfies SoakSaid);
}

// Each provider adds a listener for the end of the process.
process.setMaxListeners(0);
process.once("message", (wanted) => {
  soak(wanted as SoakWanted).catch((error: unknown) => process.send?.({ failed: String(error) } satisfies SoakSaid));
});
process.on("disconnect", () => process.exit(0));

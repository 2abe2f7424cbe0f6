/**
 * A studio's busy hour as a load: raw sockets in a process of their own, with no document in them, so that they cost next
 * to nothing. Every update is made before anything is measured; each plan has one change of a time a second, each of its
 * pages in turn. Told what to do by its parent: `Wanted`, then "measure".
 */
import { readFileSync } from "node:fs";
import * as encoding from "lib0/encoding";
import { WebSocket } from "ws";
import * as Y from "yjs";
import { isMoveItem } from "#lib/plan/lookup.ts";
import { quantile } from "./timing.ts";
import { peakKey, peakPlan } from "./workload.ts";

export interface Wanted {
  /** Address of a plan's socket up to its key, and what follows it. */
  readonly address: string;
  readonly query: string;
  /** File of the update that every plan begins with. */
  readonly base: string;
  readonly cookies: readonly string[];
  readonly plans: number;
  readonly pages: number;
  readonly seconds: number;
}
export interface Measured {
  /** Edit to every other page of its plan, ms. */
  readonly p50: number;
  readonly p99: number;
  readonly edits: number;
  /** Edits that had not arrived somewhere when the time was over. */
  readonly missing: number;
  /** Bytes a second a page received that are no edit: mean, and the page that received most. */
  readonly beyond: number;
  readonly mostBeyond: number;
}

const WARM_UP_S = 6;
const SYNC = 0;
const [STEP_1, STEP_2, UPDATE] = [0, 1, 2];

function frame(kind: number | undefined, body: Uint8Array): Uint8Array {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, SYNC);
  encoding.writeVarUint(encoder, kind ?? 0);
  encoding.writeVarUint8Array(encoder, body);
  return encoding.toUint8Array(encoder);
}

interface Page {
  readonly plan: number;
  readonly socket: WebSocket;
  readonly updates: Uint8Array[];
  /** When edits of others were sent that have not arrived here. */
  awaited: number[];
  beyond: number;
}

let measuring = false;
const latencies: number[] = [];

function hear(page: Page, data: Buffer): void {
  const isEdit = data[0] === SYNC && data[1] === UPDATE;
  if (measuring && !isEdit) page.beyond += data.length;
  if (!isEdit) return;
  const now = performance.now();
  if (measuring) for (const at of page.awaited) latencies.push(now - at);
  page.awaited = [];
}

/** The changes that one page will make: of a time, always another. */
function updatesOf(base: Uint8Array, plan: number, page: number, count: number): Uint8Array[] {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, base);
  const updates: Uint8Array[] = [];
  doc.on("update", (update: Uint8Array) => updates.push(frame(UPDATE, update)));
  const ids = peakPlan()
    .items.filter(isMoveItem)
    .map(({ id }) => id);
  const items = doc.getMap<Y.Map<unknown>>("items");
  for (let n = 0; n < count; n++) {
    const id = ids[(plan + page * 7 + n * 3) % ids.length] ?? "";
    items.get(id)?.set("seconds", 30 + ((plan + n * 5 + page) % 60));
  }
  doc.destroy();
  return updates;
}

function open(wanted: Wanted, base: Uint8Array, plan: number, index: number): Promise<Page> {
  const cookie = wanted.cookies[(plan * wanted.pages + index) % wanted.cookies.length];
  const url = `${wanted.address}${peakKey(plan)}${wanted.query}`;
  const socket = new WebSocket(url, cookie ? { headers: { cookie } } : {});
  const updates = updatesOf(base, plan, index, Math.ceil((wanted.seconds + WARM_UP_S) / wanted.pages) + 2);
  const page: Page = { plan, socket, updates, awaited: [], beyond: 0 };
  return new Promise((resolve, reject) => {
    let joined = false;
    socket.on("open", () => socket.send(frame(STEP_1, Y.encodeStateVectorFromUpdate(base))));
    socket.on("message", (data: Buffer) => {
      hear(page, data);
      if (joined || data[0] !== SYNC || data[1] !== STEP_1) return;
      joined = true;
      socket.send(frame(STEP_2, base));
      resolve(page);
    });
    socket.on("error", reject);
    socket.on("close", (code) => reject(new Error(`a page was shut out: ${code}`)));
  });
}

/** Sends each plan's change of this second, spread over the second. Gives what ends it. */
function play(plans: readonly (readonly Page[])[]): () => void {
  const began = performance.now();
  let turn = 0;
  let ended = false;
  const send = () => {
    const due = Math.floor(((performance.now() - began) / 1000) * plans.length);
    for (; turn < due; turn++) {
      const pages = plans[turn % plans.length] ?? [];
      const writer = pages[Math.floor(turn / plans.length) % pages.length];
      const update = writer?.updates.shift();
      if (!writer || !update) continue;
      const at = performance.now();
      for (const page of pages) if (page !== writer) page.awaited.push(at);
      writer.socket.send(update);
    }
    if (!ended) setTimeout(send, 1);
  };
  send();
  return () => {
    ended = true;
  };
}

const wait = (seconds: number) => new Promise((done) => setTimeout(done, seconds * 1000));

async function run(wanted: Wanted): Promise<Measured> {
  const pages: Page[] = [];
  const base = readFileSync(wanted.base);
  for (let plan = 0; plan < wanted.plans; plan++)
    pages.push(...(await Promise.all(Array.from({ length: wanted.pages }, (_, n) => open(wanted, base, plan, n)))));
  const plans = Array.from({ length: wanted.plans }, (_, n) => pages.filter(({ plan }) => plan === n));
  const end = play(plans);
  await wait(WARM_UP_S - 2);
  process.send?.("warm");
  await new Promise((go) => process.once("message", go));
  for (const page of pages) page.awaited = [];
  measuring = true;
  await wait(wanted.seconds);
  measuring = false;
  end();
  const sorted = Float64Array.from(latencies).sort();
  const beyond = pages.map((page) => page.beyond / wanted.seconds);
  return {
    p50: quantile(sorted, 0.5),
    p99: quantile(sorted, 0.99),
    edits: latencies.length,
    missing: pages.reduce((sum, page) => sum + page.awaited.length, 0),
    beyond: beyond.reduce((sum, bytes) => sum + bytes, 0) / pages.length,
    mostBeyond: Math.max(...beyond),
  };
}

process.once("message", async (wanted) => process.send?.(await run(wanted as Wanted)));

/** A document has a size: what goes beyond it is refused in words, what is there stays and can always be shortened. */
import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { countPieces, MONTH_BOUNDS, nearBounds, PLAN_BOUNDS } from "#lib/doc/bounds.ts";
import { createPlanDoc } from "#lib/doc/create.ts";
import { planParts } from "#lib/doc/layout.ts";
import { monthParts } from "#lib/programme/layout.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { decodeUpdate } from "#server/doc-log/updates.ts";
import { DocSize } from "#server/sync/size.ts";
import { type Attacked, startAttacked, WAIT_MS } from "../support/attacked.ts";
import { ASK_ALL, bareSocket, flood, itemsUpdate, syncFrame, writeLetter } from "../support/flood.ts";
import { often } from "../support/long.ts";
import { SMALL_PLAN } from "../support/sync-server.ts";

let server: Attacked;
beforeAll(async () => {
  server = await startAttacked();
}, 60_000);
afterAll(() => server.stop());

function addItems(doc: Y.Doc, from: number, count: number): void {
  for (let n = from; n < from + count; n++) {
    const item = new Y.Map<unknown>();
    item.set("kind", "pause");
    item.set("seconds", 5);
    planParts(doc).items.set(`more-${n}`, item);
  }
}

test("16,000 items through a socket: taken up to the plan file's number, nobody waits, nothing is lost", async () => {
  let tries = 0;
  const gap = await server.under(async () => {
    const page = await server.page("jonas").synced();
    const first = 20_000 * tries++;
    for (let n = first; n < first + 16_000 && page.closeCode === undefined; n += 400) {
      page.edit((doc) => addItems(doc, n, 400));
      await new Promise((done) => setImmediate(done));
    }
    expect(await page.closed(30_000)).toBe(CLOSE.full.code);
    page.end();
  });
  expect(gap).toBeLessThan(WAIT_MS);
  const after = await server.page("jonas").synced();
  const { items } = planParts(after.doc);
  expect(items.size).toBeGreaterThan(1000);
  expect(items.size).toBeLessThanOrEqual(PLAN_BOUNDS.most);
  // Writing in what is there goes on, and so does taking out.
  after.edit((doc) => planParts(doc).items.get("a")?.set("seconds", 45));
  after.edit((doc) => planParts(doc).items.get("more-1")?.set("deleted", 1));
  await after.saved();
  expect(after.closeCode).toBeUndefined();
});

test("notes without end, megabyte by megabyte: taken up to their bound, and shorter words always", async () => {
  const page = await server.page("jonas").synced();
  page.edit((doc) => planParts(doc).notes.insert(0, "x".repeat(PLAN_BOUNDS.texts.notes ?? 0)));
  await page.saved();
  const gap = await server.under(async () => {
    const loud = await server.page("jonas").synced();
    loud.edit((doc) => planParts(doc).notes.insert(0, "y".repeat(900_000)));
    expect(await loud.closed(20_000)).toBe(CLOSE.full.code);
    loud.end();
  });
  expect(gap).toBeLessThan(WAIT_MS);
  page.edit((doc) => {
    planParts(doc).notes.delete(0, 10);
    planParts(doc).notes.insert(0, "shorter");
  });
  await page.saved();
  expect(page.closeCode).toBeUndefined();
  page.edit((doc) => planParts(doc).notes.insert(5, "too much"));
  expect(await page.closed()).toBe(CLOSE.full.code);
});

/** A text of its own, letter by letter from the end: nothing in it grows together. */
const crumbs = (client: number, count: number): Uint8Array =>
  itemsUpdate({ client, clock: 0, count }, (out, n) =>
    writeLetter(out, { client, clock: n, text: `crumbs-${client}` }),
  );

test("a document made of crumbs: taken up to its bound, and nobody waits while it is sent and kept", {
  timeout: 150_000,
}, async () => {
  let client = 1000;
  const gap = await server.under(async () => {
    const loud = bareSocket(server, "jonas");
    const closed = new Promise<number>((done) => loud.once("close", done));
    await new Promise((done) => loud.once("open", done));
    for (let n = 0; n < 7; n++) loud.send(syncFrame(2, crumbs(++client, 20_000)));
    expect(await closed).toBe(CLOSE.full.code);
    await flood(server, { user: "sam", sockets: 10, ms: often(700, 1500), frame: () => ASK_ALL });
  });
  expect(gap).toBeLessThan(WAIT_MS);
  const after = await server.page("jonas").synced();
  expect(countPieces(after.doc)).toBeGreaterThan(PLAN_BOUNDS.pieces / 2);
  // Act by act it goes on.
  after.edit((doc) => planParts(doc).items.get("a")?.set("deleted", 1));
  after.edit((doc) => planParts(doc).items.get("a")?.delete("deleted"));
  await after.saved();
  expect(after.closeCode).toBeUndefined();
});

test("the longest plan file is far from that bound, and so is one that was written for long", () => {
  const [move] = SMALL_PLAN.items;
  const items = Array.from({ length: PLAN_BOUNDS.most }, (_, n) => ({
    ...move,
    id: `i${n}`,
    script: Array.from({ length: 4 }, () => ({ kind: "cue", text: "Breathe out as you work." })),
  })) as typeof SMALL_PLAN.items;
  const doc = createPlanDoc({ ...SMALL_PLAN, items }, { carry: true });
  expect(countPieces(doc)).toBeLessThan(PLAN_BOUNDS.pieces * 0.9);
  const small = createPlanDoc(SMALL_PLAN, { carry: true });
  const before = countPieces(small);
  for (let n = 0; n < 20_000; n++) planParts(small).items.get("a")?.set("seconds", n);
  expect(countPieces(small) - before).toBeLessThan(10);
});

/** What `change` would send, judged against the document as it is. */
function overflows(doc: Y.Doc, change: (copy: Y.Doc) => void, bounds = PLAN_BOUNDS): boolean {
  const copy = new Y.Doc();
  Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc));
  const updates: Uint8Array[] = [];
  copy.on("update", (update: Uint8Array) => updates.push(update));
  copy.transact(() => change(copy));
  const decoded = decodeUpdate(Y.mergeUpdates(updates));
  return decoded !== undefined && new DocSize(doc, bounds).overflows(decoded);
}

test("a document that is larger already, from a file or of older days, is not locked: it may only get shorter", () => {
  const doc = createPlanDoc(SMALL_PLAN, { carry: true });
  addItems(doc, 0, PLAN_BOUNDS.most + 50);
  planParts(doc).notes.insert(0, "x".repeat(150_000));
  const { items, notes, title } = planParts(doc);
  expect(items.size).toBeGreaterThan(PLAN_BOUNDS.most);
  const may = (change: (copy: Y.Doc) => void) => !overflows(doc, change);
  expect(may((copy) => addItems(copy, 90_000, 1))).toBe(false);
  expect(may((copy) => planParts(copy).notes.insert(0, "one more"))).toBe(false);
  expect(may((copy) => planParts(copy).notes.delete(0, notes.length))).toBe(true);
  expect(may((copy) => planParts(copy).items.get("more-3")?.set("deleted", 1))).toBe(true);
  expect(may((copy) => planParts(copy).items.get("more-3")?.set("seconds", 30))).toBe(true);
  expect(may((copy) => planParts(copy).title.insert(title.length, " again"))).toBe(true);
});

test("the whole of a document has a bound as well, whatever it is made of", () => {
  const doc = createPlanDoc(SMALL_PLAN, { carry: true });
  for (let n = 0; n < 20; n++) doc.getMap("anything").set(`v${n}`, "x".repeat(95_000));
  expect(overflows(doc, (copy) => copy.getMap("anything").set("one", "x".repeat(90_000)))).toBe(false);
  expect(overflows(doc, (copy) => copy.getMap("anything").set("one", "x".repeat(200_000)))).toBe(true);
  expect(overflows(doc, (copy) => copy.getMap("anything").set("v1", "x".repeat(94_000)))).toBe(false);
});

test("names at the root of a document have a bound, since each is looked through for every item that is sent", () => {
  const doc = createPlanDoc(SMALL_PLAN, { carry: true });
  for (let n = 0; n < 80; n++) doc.getMap(`root-${n}`).set("one", n);
  expect(overflows(doc, (copy) => copy.getMap("another").set("one", 1))).toBe(false);
  const many = (copy: Y.Doc) => {
    for (let n = 0; n < 30; n++) copy.getMap(`more-${n}`).set("one", n);
  };
  expect(overflows(doc, many)).toBe(true);
  const again = (copy: Y.Doc) => {
    for (let n = 0; n < 80; n++) copy.getMap(`root-${n}`).set("one", "again");
  };
  expect(overflows(doc, again)).toBe(false);
});

test("a month holds as many classes as its file, and the page says so before", () => {
  const doc = new Y.Doc();
  const add = (to: Y.Doc, n: number) => monthParts(to).slots.set(`s${n}`, new Y.Map());
  for (let n = 0; n < MONTH_BOUNDS.most - 1; n++) add(doc, n);
  expect(overflows(doc, (copy) => add(copy, 5000), MONTH_BOUNDS)).toBe(false);
  expect(nearBounds(doc, MONTH_BOUNDS)).toBe(
    "This holds 999 of at most 1,000 classes: beyond that, only changes that shorten it are saved.",
  );
  add(doc, 5000);
  expect(overflows(doc, (copy) => add(copy, 5001), MONTH_BOUNDS)).toBe(true);
  expect(nearBounds(createPlanDoc(SMALL_PLAN, { carry: true }), PLAN_BOUNDS)).toBeUndefined();
});

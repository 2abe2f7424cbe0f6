/** One frame of one writer keeps nobody waiting: what it would cost is told before it is applied. */
import * as encoding from "lib0/encoding";
import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { tidyUpdate } from "#server/sync/updates.ts";
import { isTooHeavy } from "#server/sync/weight.ts";
import { type Attacked, startAttacked, WAIT_MS } from "../support/attacked.ts";
import { Dice } from "../support/dice.ts";
import type { RawClient } from "../support/raw-client.ts";

let server: Attacked;
beforeAll(async () => {
  server = await startAttacked();
}, 60_000);
afterAll(() => server.stop());

/** An update of deletions alone, range by range as given. */
function deletions(client: number, ranges: readonly (readonly [clock: number, len: number])[]): Uint8Array {
  const out = encoding.createEncoder();
  encoding.writeVarUint(out, 0);
  encoding.writeVarUint(out, 1);
  encoding.writeVarUint(out, client);
  encoding.writeVarUint(out, ranges.length);
  for (const [clock, len] of ranges) {
    encoding.writeVarUint(out, clock);
    encoding.writeVarUint(out, len);
  }
  return encoding.toUint8Array(out);
}

/** New items of one client, byte by byte. */
function items(client: number, count: number, write: (out: encoding.Encoder, n: number) => void): Uint8Array {
  const out = encoding.createEncoder();
  for (const number of [1, count, client, 0]) encoding.writeVarUint(out, number);
  for (let n = 0; n < count; n++) write(out, n);
  encoding.writeVarUint(out, 0);
  return encoding.toUint8Array(out);
}
/** Words that each say they were written at the front, far before a neighbour of their own: each is walked to. */
const farFrom = (client: number, count: number) =>
  items(1, count, (out, n) => {
    encoding.writeUint8(out, 4 | 0x40);
    encoding.writeVarUint(out, client);
    encoding.writeVarUint(out, n);
    encoding.writeVarString(out, "x");
  });
/** Values for one key that know of no other: each climbs down the chain of those that were there. */
const forgetful = (count: number) =>
  items(2, count, (out) => {
    encoding.writeUint8(out, 4 | 0x20);
    encoding.writeVarUint(out, 1);
    encoding.writeVarString(out, "chains");
    encoding.writeVarString(out, "key");
    encoding.writeVarString(out, "x");
  });

function nested(levels: number): Uint8Array {
  const doc = new Y.Doc();
  let map = doc.getMap<unknown>("anything");
  for (let n = 0; n < levels; n++) {
    const inner = new Y.Map<unknown>();
    map.set("in", inner);
    map = inner;
  }
  return Y.encodeStateAsUpdate(doc);
}

function deepValue(levels: number): Uint8Array {
  let value: unknown = "bottom";
  for (let n = 0; n < levels; n++) value = [value];
  const doc = new Y.Doc();
  doc.getMap("anything").set("deep", value);
  return Y.encodeStateAsUpdate(doc);
}

let filler: RawClient;
/** Many short words in one text, and a key that two pages set in turn: neither grows together in the document. */
beforeAll(async () => {
  filler = await server.page("jonas").synced();
  write(filler, "filled", 12_000);
  const own = filler.doc.clientID;
  for (let n = 0; n < 600; n++) {
    filler.doc.clientID = own + 1 + (n % 2);
    filler.edit((doc) => doc.getMap("chains").set("key", n));
  }
  filler.doc.clientID = own;
  await filler.saved(30_000);
}, 60_000);

function write(page: RawClient, text: string, letters: number): void {
  page.edit((doc) => {
    for (let n = 0; n < letters; n++) doc.getText(text).insert(0, "x");
  });
}

const HEAVY: Readonly<Record<string, () => Uint8Array>> = {
  "words that are walked to one by one": () => farFrom(filler.doc.clientID, 3000),
  "values that climb down one chain": () => forgetful(3000),
  "thousands of cuts in one word": () =>
    deletions(
      77,
      Array.from({ length: 100_000 }, (_, n) => [n * 2, 1] as const),
    ),
  "shared types in each other, eight hundred deep": () => nested(800),
  "a value three thousand deep": () => deepValue(3000),
};
test.each(Object.entries(HEAVY))("%s: refused in words before it is applied", async (_what, make) => {
  const frame = make();
  const gap = await server.under(async () => {
    const attacker = await server.page("jonas").synced();
    attacker.sendUpdate(frame);
    expect(await attacker.closed(20_000)).toBe(CLOSE.tooHeavy.code);
    attacker.end();
  });
  expect(gap).toBeLessThan(WAIT_MS);
});

test("deletions that overlap are gone over once: no wait, and they count as any others", async () => {
  let text = 0;
  const gap = await server.under(async () => {
    const page = await server.page("jonas").synced();
    write(page, `text-${++text}`, 6000);
    const frame = deletions(
      page.doc.clientID,
      Array.from({ length: 1300 }, () => [0, 6000] as const),
    );
    expect(frame.length).toBeLessThan(9000);
    page.sendUpdate(frame);
    await page.saved(30_000);
    page.end();
  });
  expect(gap).toBeLessThan(WAIT_MS);
  const after = await server.page("sam").synced();
  expect(after.doc.getText("text-1").length).toBe(0);
  expect(after.doc.getText("filled").length).toBe(12_000);
});

test("what pages write is never too heavy: two weeks offline on both sides, in the same texts", () => {
  const roll = new Dice(11);
  const start = new Y.Doc();
  planParts(start).notes.insert(0, "words to begin with");
  const pages = [1, 2, 3].map((clientID) => {
    const doc = new Y.Doc();
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(start));
    doc.clientID = clientID;
    return doc;
  });
  for (const doc of pages) {
    for (let n = 0; n < 3000; n++) {
      const text = n % 3 ? planParts(doc).notes : planParts(doc).title;
      const at = roll.upTo(text.length + 1);
      if (roll.upTo(4) === 0 && at < text.length) text.delete(at, 1);
      else text.insert(at, "ab");
      doc.getMap("values").set(`key-${roll.upTo(21)}`, n);
    }
  }
  for (const doc of pages) {
    const tidy = tidyUpdate(Y.encodeStateAsUpdate(doc, Y.encodeStateVector(start)));
    expect(tidy && isTooHeavy(start, tidy.decoded)).toBe(false);
    if (tidy) Y.applyUpdate(start, tidy.bytes);
  }
});

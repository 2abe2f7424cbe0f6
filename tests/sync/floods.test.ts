/** Floods of people who are signed in: somebody who writes beside them loses nothing, and nobody waits. */
import * as encoding from "lib0/encoding";
import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { type Attacked, startAttacked, WAIT_MS } from "../support/attacked.ts";
import { eventually } from "../support/eventually.ts";
import {
  ASK_ALL,
  ASK_WHO,
  bareSocket,
  type Flood,
  flood,
  itemsUpdate,
  letterFrame,
  presenceFrame,
  syncFrame,
  writeLetter,
} from "../support/flood.ts";
import { sendUnderIdOf } from "../support/forged.ts";
import { LONG } from "../support/long.ts";

let server: Attacked;
let round = 0;
/** Client ids that nobody has used yet. */
const freshIds = () => ++round * 1_000_000;
beforeAll(async () => {
  server = await startAttacked();
  await fill();
}, 60_000);
afterAll(() => server.stop());

const LETTERS = 12_000;
let filled = 0;
/** A text of many short words, which makes the document cost something to send and to look through. */
async function fill(): Promise<void> {
  const page = await server.page("jonas").synced();
  page.edit((doc) => {
    for (let n = 0; n < LETTERS; n++) doc.getText("filled").insert(0, "x");
  });
  filled = page.doc.clientID;
  await page.saved(30_000);
  page.end();
}

/** Letters each said to stand far before a neighbour of their own: a little below what one frame may cost. */
const nearlyTooHeavy = (client: number, client0: number) =>
  syncFrame(
    2,
    itemsUpdate({ client, clock: 0, count: 9 }, (out, n) => {
      encoding.writeUint8(out, 4 | 0x40);
      encoding.writeVarUint(out, client0);
      encoding.writeVarUint(out, n);
      encoding.writeVarString(out, "x");
    }),
  );
function strangersValues(client: number, count: number): Uint8Array {
  const out = encoding.createEncoder();
  encoding.writeVarUint(out, count);
  for (let n = 0; n < count; n++) {
    for (const number of [1, client + n, 0, 4 | 0x20, 1]) encoding.writeVarUint(out, number);
    for (const words of ["strangers", `key-${client + n}`, "x"]) encoding.writeVarString(out, words);
  }
  encoding.writeVarUint(out, 0);
  return syncFrame(2, encoding.toUint8Array(out));
}
const manyTexts = (client: number, count: number) =>
  syncFrame(
    2,
    itemsUpdate({ client, clock: 0, count }, (out, n) =>
      writeLetter(out, { client, clock: 0, text: `text-${client}-${n}` }),
    ),
  );
const manyClaims = (n: number) =>
  presenceFrame(Array.from({ length: 1000 }, (_, i) => ({ clientId: 5000 + i, clock: n, state: `{"n":${n}}` })));
const largePresence = (socket: number, n: number) =>
  presenceFrame([{ clientId: 9000 + socket, clock: n + 1, state: `{"item":"${"x".repeat(16_000)}"}` }]);

const SIGNED_IN: Readonly<Record<string, () => Flood>> = {
  "letters, one a frame, of one socket": () => {
    const client = freshIds();
    return { user: "jonas", frame: (_, n) => letterFrame(client, n, "flood") };
  },
  "letters, one a frame, of thirty sockets of one person": () => {
    const client = freshIds();
    return { user: "jonas", sockets: 30, frame: (socket, n) => letterFrame(client + socket, n, `flood-${socket}`) };
  },
  "frames a little below what one may cost, of ten sockets": () => {
    const client = freshIds();
    return {
      user: "jonas",
      sockets: 10,
      frame: (socket, n) => (n < 40 ? nearlyTooHeavy(client + socket * 100 + n, filled) : undefined),
    };
  },
  "values under a client id each, thousands a frame": () => {
    const client = freshIds();
    return {
      user: "jonas",
      sockets: 3,
      frame: (socket, n) => (n < 3 ? strangersValues(client + (socket * 3 + n) * 4000, 4000) : undefined),
    };
  },
  "texts under a name each, thousands a frame": () => {
    const client = freshIds();
    return {
      user: "jonas",
      sockets: 3,
      again: true,
      frame: (socket, n) => manyTexts(client + socket * 1000 + n, 4000),
    };
  },
  "a reader asks for the whole document, again and again": () => ({
    user: "sam",
    sockets: 20,
    again: true,
    frame: () => ASK_ALL,
  }),
  "a reader asks who is there, again and again": () => ({
    user: "sam",
    sockets: 20,
    again: true,
    frame: () => ASK_WHO,
  }),
  "a writer shows another place with each frame": () => ({ user: "jonas", sockets: 10, frame: largePresence }),
  "a thousand claims of presence in each frame": () => ({
    user: "jonas",
    sockets: 5,
    again: true,
    frame: (_, n) => manyClaims(n),
  }),
  "a reader shows itself without end, comes back when closed": () => ({
    user: "sam",
    sockets: 5,
    again: true,
    frame: (_, n) => presenceFrame([{ clientId: 5, clock: n, state: "{}" }]),
  }),
  "frames that are none, from sockets that come back": () => ({
    user: "jonas",
    sockets: 20,
    again: true,
    frame: () => syncFrame(2, new Uint8Array([9, 200, 1, 255, 255, 3])),
  }),
};
test("[INV-01] a thousand claims of presence and a thief, while a colleague is away: what was said offline comes whole", async () => {
  let words = "";
  const gap = await server.under(async () => {
    const away = await server.page("ines").synced();
    const { clientID } = away.doc;
    away.edit((doc) => doc.getText("away").insert(0, "A "));
    await away.saved();
    const kept = Y.encodeStateAsUpdate(away.doc);
    away.end();
    await flood(server, { user: "jonas", sockets: 5, again: true, frame: (_, n) => manyClaims(n) });
    const thief = await server.page("jonas").synced();
    sendUnderIdOf(clientID, thief);
    expect(await thief.closed()).toBe(CLOSE.erasing.code);
    const offline = new Y.Doc();
    Y.applyUpdate(offline, kept);
    offline.clientID = clientID;
    offline.getText("away").insert(0, "Now ");
    const back = await server.page("ines").synced();
    back.sendUpdate(Y.encodeStateAsUpdate(offline));
    await back.saved();
    const after = await server.page("sam").synced();
    words = after.doc.getText("away").toString();
  });
  expect(gap).toBeLessThan(WAIT_MS);
  expect(words).toMatch(/^(A )*Now A /);
});

test("[INV-25] sockets that never read, in a room with much traffic: cut off, and the others hear all", {
  timeout: 150_000,
}, async () => {
  let blobs = 0;
  const gap = await server.under(async () => {
    const slow = Array.from({ length: 8 }, () => bareSocket(server, "sam"));
    const codes = new Set<number>();
    for (const ws of slow) ws.once("open", () => ws.pause()).once("close", (code) => codes.add(code));
    const [writer, reader] = [await server.page("jonas").synced(), await server.page("sam").synced()];
    for (let n = 0; n < 26; n++) {
      writer.edit((doc) => planParts(doc).head.set("blob", `${++blobs}${"z".repeat(900 * 1024)}`));
      await writer.saved(20_000);
    }
    await eventually("a reader has all", () => String(planParts(reader.doc).head.get("blob")).startsWith(`${blobs}z`));
    expect(writer.closeCode).toBeUndefined();
    expect(reader.closeCode).toBeUndefined();
    for (const ws of slow) ws.resume();
    await eventually("each was let go", () => slow.every((ws) => ws.readyState === ws.CLOSED), 20_000);
    for (const one of [writer, reader]) one.end();
  });
  expect(gap).toBeLessThan(WAIT_MS);
});

/** One of each kind: many frames, heavy ones, many structs, what is asked again and again, presence, and what is no frame. */
const USUAL = [
  "letters, one a frame, of thirty sockets of one person",
  "frames a little below what one may cost, of ten sockets",
  "values under a client id each, thousands a frame",
  "a reader asks for the whole document, again and again",
  "a thousand claims of presence in each frame",
  "frames that are none, from sockets that come back",
];
const FLOODS = Object.entries(SIGNED_IN).filter(([what]) => LONG || USUAL.includes(what));

test.each(FLOODS)("%s", { timeout: 150_000 }, async (_what, make) => {
  const gap = await server.under(() => flood(server, make()));
  expect(gap).toBeLessThan(WAIT_MS);
});

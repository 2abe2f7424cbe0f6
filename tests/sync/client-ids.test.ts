/** Whose a yjs client id is, for good: nobody writes in the place of somebody who is away, and a clash costs nothing. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { WebSocket as NodeWebSocket } from "ws";
import * as Y from "yjs";
import { connectDoc, type DocConnection } from "#lib/client/provider.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION, planParts } from "#lib/doc/layout.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
let name: DocName;
const offs: (() => void)[] = [];
beforeEach(async () => {
  server = await startSyncServer({ limits: { idleMs: 30 } });
  name = server.addPlan("ids");
});
afterEach(async () => {
  for (const off of offs.splice(0)) off();
  await server.stop();
});

const raw = (user: string, query?: string) => {
  const client = new RawClient(server.url, name, {
    cookie: server.host.signIn(user),
    ...(query ? { query: `d=${PLAN_DOC_VERSION}&e=${EDITOR_VERSION}&${query}` } : {}),
  });
  offs.push(() => client.end());
  return client;
};
const title = () => server.rooms.withDoc(name, (doc) => planParts(doc).title.toString());
const unloaded = () => eventually("the room is unloaded", () => server.rooms.health().rooms === 0);

/** Words under somebody else's next numbers, as an update that any co-writer can make. */
function forge(from: Y.Doc, clientId: number): Uint8Array {
  const forged = new Y.Doc();
  Y.applyUpdate(forged, Y.encodeStateAsUpdate(from));
  forged.clientID = clientId;
  const known = Y.encodeStateVector(forged);
  forged.getMap("anything").set("x", "x".repeat(400));
  return Y.encodeStateAsUpdate(forged, known);
}

interface Page {
  readonly doc: Y.Doc;
  readonly renamed: number[];
  connection: DocConnection;
}

/** A page of this program. `before` acts on its document while it is still offline. */
function page(user: string, before: (doc: Y.Doc) => void = () => undefined): Page {
  const cookie = server.host.signIn(user);
  class WithCookie extends NodeWebSocket {
    constructor(url: string | URL, protocols?: string | string[]) {
      super(url, protocols, { headers: { cookie: `session=${cookie}` } });
    }
  }
  const doc = new Y.Doc();
  before(doc);
  const renamed: number[] = [];
  const connection = connectDoc({
    ...{ origin: server.url, name, doc, userId: user, docVersion: PLAN_DOC_VERSION, editorVersion: EDITOR_VERSION },
    ...{ WebSocket: WithCookie as unknown as typeof WebSocket, maxBackoffMs: 50, awareness: { item: null } },
    onRenamed: () => renamed.push(doc.clientID),
  });
  offs.push(() => connection.stop());
  return { doc, renamed, connection };
}
const saved = (p: Page) =>
  eventually("all is saved", () => p.connection.state.synced && p.connection.state.waiting === 0);

/** Noted when the page joined, before it wrote a word: all that somebody needs to know the number is to see its presence. */
const AWAY: Readonly<Record<string, (ines: Page) => Promise<unknown>>> = {
  "after the room was unloaded": () => unloaded(),
  "after a thousand claims of presence": async () => {
    const loud = await raw("jonas").synced();
    for (let n = 0; n < 200; n++) {
      const ids = Array.from({ length: 7 }, (_, i) => 1000 + n * 7 + i);
      loud.sendPresence(ids.map((clientId) => ({ clientId, clock: 1, state: {} })));
      loud.sendPresence(ids.map((clientId) => ({ clientId, clock: 2, state: null })));
    }
    loud.edit((doc) => doc.getMap("anything").set("heard", true));
    await loud.saved();
  },
};
test.each(Object.entries(AWAY))(
  "[INV-01] %s words under the id of somebody who is away are refused, and theirs come",
  async (_when, pass) => {
    const ines = page("ines");
    await saved(ines);
    ines.connection.disconnect();
    await pass(ines);
    const thief = await raw("jonas").synced();
    thief.sendUpdate(forge(thief.doc, ines.doc.clientID));
    expect(await thief.closed()).toBe(CLOSE.erasing.code);
    const hidden = await raw("jonas").synced();
    hidden.sendStep2(forge(hidden.doc, ines.doc.clientID));
    expect(await hidden.closed()).toBe(CLOSE.othersFirst.code);

    planParts(ines.doc).title.insert(0, "Now ");
    ines.connection.reconnect();
    await saved(ines);
    expect(title()).toBe("Now Pull and press");
  },
);

test("[INV-01] words and whose they are go to disk together: another process knows it too", async () => {
  const marta = await raw("marta").synced();
  marta.edit((doc) => planParts(doc).title.insert(0, "A "));
  await marta.saved();
  const { clientID } = marta.doc;
  await server.halt();
  const { temp } = server;
  server = await startSyncServer({ temp });
  const thief = await raw("jonas").synced();
  thief.sendUpdate(forge(thief.doc, clientID));
  expect(await thief.closed()).toBe(CLOSE.erasing.code);
  const again = await raw("marta").synced();
  again.sendUpdate(forge(again.doc, clientID));
  await again.saved();
});

test("two pages with one id by chance: the second takes a new one, and what it wrote offline is kept whole", async () => {
  const first = server.rooms.withDoc(name, (doc) => Y.encodeStateAsUpdate(doc));
  const marta = page("marta", (doc) => Y.applyUpdate(doc, first));
  await saved(marta);
  planParts(marta.doc).notes.insert(0, "by Marta");
  await saved(marta);
  const noor = page("noor", (doc) => {
    Y.applyUpdate(doc, first);
    doc.clientID = marta.doc.clientID;
    planParts(doc).title.insert(0, "Offline ");
    planParts(doc).title.insert(8, "and long ");
    planParts(doc).items.get("a")?.set("seconds", 45);
    planParts(doc).title.delete(0, 3);
  });
  await saved(noor);
  planParts(noor.doc).title.insert(0, "still ");
  await saved(noor);
  expect(noor.renamed).toEqual([noor.doc.clientID]);
  expect(noor.doc.clientID).not.toBe(marta.doc.clientID);
  expect(title()).toBe("still line and long Pull and press");
  await eventually("both pages and the server agree", () => {
    const all = [marta.doc, noor.doc].map((doc) => JSON.stringify(doc.toJSON()));
    const here = server.rooms.withDoc(name, (doc) => JSON.stringify(doc.toJSON()));
    return all.every((one) => one === here);
  });
  expect(planParts(noor.doc).notes.toString()).toBe("by Marta");
  // The next page that reads what this device kept finds each word once.
  const kept = new Y.Doc();
  Y.applyUpdate(kept, Y.encodeStateAsUpdate(noor.doc));
  expect(planParts(kept).title.toString()).toBe("still line and long Pull and press");
});

test("somebody else's id at the door: told to take a new one before anything is exchanged", async () => {
  const ines = raw("ines", "c=77");
  await ines.synced();
  const jonas = raw("jonas", "c=77");
  expect(await jonas.closed()).toBe(CLOSE.idTaken.code);
  expect(jonas.heard).toEqual([]);
  // The same person with a second socket of the same page is no clash: the first may be a dead one.
  const again = await raw("ines", "c=77").synced();
  expect(again.closeCode).toBeUndefined();
  expect(ines.closeCode).toBeUndefined();
});

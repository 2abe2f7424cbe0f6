/** What a stranger or a writer with bad intent may not do to everybody else. */
import { connect } from "node:net";
import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { docVersion, EDITOR_VERSION, PLAN_DOC_VERSION, planParts } from "#lib/doc/layout.ts";
import { readDeleted, readItems } from "#lib/doc/read.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { sendUnderIdOf } from "#tests/support/forged.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeAll(async () => {
  server = await startSyncServer({ limits: { strangers: 5 } });
});
afterAll(() => server.stop());

/** Sends one raw request and gives the first line of the answer. */
function raw(target: string, key: string): Promise<string> {
  const { hostname, port } = new URL(server.url);
  return new Promise((resolve, reject) => {
    const socket = connect(Number(port), hostname, () => {
      socket.write(
        `GET ${target} HTTP/1.1\r\nHost: ${hostname}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Key: ${key}\r\nSec-WebSocket-Version: 13\r\n\r\n`,
      );
    });
    socket.on("error", reject);
    socket.once("data", (data) => {
      resolve(data.toString().split("\r\n")[0] ?? "");
      socket.destroy();
    });
  });
}

const page = (key: string, user: string) =>
  new RawClient(server.url, { kind: "plan", key }, { cookie: server.host.signIn(user) }).synced();

test.each(["http://[", "//", "//["])(
  "an address that is none (%s) is answered 400 and harms nobody",
  async (target) => {
    expect(await raw(target, "dGhlIHNhbXBsZSBub25jZQ==")).toContain("400");
  },
);

test("handshakes that fail do not use up the places of people who sign in", async () => {
  for (let i = 0; i < 12; i++) expect(await raw("/sync/plan/x", "bad")).toContain("400");
  server.addPlan("open");
  const writer = await page("open", "ines");
  writer.end();
});

/** What a tampered page may try on `b`, which has words, and on what is not a page's to write. */
const THEFTS: Readonly<Record<string, (doc: Y.Doc) => void>> = {
  "an item erased": (doc) => planParts(doc).items.delete("b"),
  "an item replaced": (doc) => planParts(doc).items.set("b", new Y.Map()),
  "all items erased": (doc) => planParts(doc).items.clear(),
  "a script erased": (doc) => planParts(doc).items.get("b")?.delete("script"),
  "a script replaced": (doc) => planParts(doc).items.get("b")?.set("script", new Y.XmlFragment()),
  "the words of a pause replaced": (doc) => planParts(doc).items.get("rest")?.set("label", "gone"),
  "an item made one that nobody can read": (doc) => planParts(doc).items.get("b")?.set("kind", "nothing"),
  "the machines that came with the file changed": (doc) => planParts(doc).carried.set("equipment", {}),
  "a move put over the library's": (doc) => planParts(doc).carried.set("move.plank", { name: "Plank" }),
  "the document's version raised": (doc) => doc.getMap("meta").set("version", 99),
};

test.each(Object.entries(THEFTS))(
  "[INV-07] %s: refused for good, nothing of it stored or sent on",
  async (what, theft) => {
    const key = what.replaceAll(/[^a-z]+/g, "-");
    const name = server.addPlan(key);
    const before = server.rooms.withDoc(name, (doc) => Y.encodeStateAsUpdate(doc));
    const [thief, other] = [await page(key, "jonas"), await page(key, "ines")];
    thief.edit(theft);
    expect(await thief.closed()).toBe(CLOSE.erasing.code);
    // The others work on, in the same room, and the same page without the theft may come back.
    other.edit((doc) => planParts(doc).title.insert(0, "A "));
    await other.saved();
    expect(other.closeCode).toBeUndefined();
    const again = await page(key, "jonas");
    other.end();
    again.end();
    server.rooms.withDoc(name, (doc) => {
      const expected = new Y.Doc();
      Y.applyUpdate(expected, before);
      planParts(expected).title.insert(0, "A ");
      expect(doc.toJSON()).toEqual(expected.toJSON());
      expect(docVersion(doc)).toBe(PLAN_DOC_VERSION);
    });
  },
);

test("[INV-07] nor does it help to hide the theft in the first offer, or behind words of one's own", async () => {
  const name = server.addPlan("hidden");
  const honest = await page("hidden", "jonas");
  const copy = new Y.Doc();
  Y.applyUpdate(copy, Y.encodeStateAsUpdate(honest.doc));
  const known = Y.encodeStateVector(copy);
  planParts(copy).title.insert(0, "Hello ");
  planParts(copy).items.get("b")?.set("seconds", 45);
  planParts(copy).items.delete("b");
  honest.sendStep2(Y.encodeStateAsUpdate(copy, known));
  expect(await honest.closed()).toBe(CLOSE.erasing.code);
  server.rooms.withDoc(name, (doc) => {
    expect(readItems(doc).map((item) => item.id)).toEqual(["a", "rest", "b"]);
    expect(planParts(doc).title.toString()).toBe("Pull and press");
  });
});

test("[INV-01] words under the client id of somebody else's page are refused, and what that page says next is kept", async () => {
  const name = server.addPlan("forged");
  const marta = await page("forged", "ines");
  const { clientID } = marta.doc;
  marta.sendPresence([{ clientId: clientID, clock: 1, state: { item: null } }]);
  marta.edit((doc) => planParts(doc).title.insert(0, "A "));
  await marta.saved();
  // Its network goes; it writes on. Meanwhile somebody takes its next numbers.
  marta.end();
  const thief = await page("forged", "jonas");
  sendUnderIdOf(clientID, thief);
  expect(await thief.closed()).toBe(CLOSE.erasing.code);
  // It comes back with what it wrote alone.
  planParts(marta.doc).title.insert(0, "Now ");
  const back = await page("forged", "ines");
  back.sendUpdate(Y.encodeStateAsUpdate(marta.doc));
  await back.saved();
  back.end();
  server.rooms.withDoc(name, (doc) => expect(planParts(doc).title.toString()).toMatch(/^Now A /));
});

test("what is no item is passed over, however deep it is nested", () => {
  const doc = new Y.Doc();
  (planParts(doc).items as Y.Map<unknown>).set("rubbish", "a string");
  expect(readItems(doc)).toEqual([]);
  expect(readDeleted(doc)).toEqual([]);
});

test("[INV-11] words of one person are not taken from a page that somebody else has signed in on", async () => {
  server.addPlan("shared");
  const session = server.host.signIn("marta");
  const stranger = new RawClient(
    server.url,
    { kind: "plan", key: "shared" },
    {
      cookie: session,
      query: `d=${PLAN_DOC_VERSION}&e=${EDITOR_VERSION}&u=jonas`,
    },
  );
  expect(await stranger.closed()).toBe(CLOSE.otherPerson.code);
});

/** What a stranger or a writer with bad intent may not do to everybody else. */
import { connect } from "node:net";
import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { docVersion, EDITOR_VERSION, PLAN_DOC_VERSION, parts } from "#lib/doc/layout.ts";
import { readDeleted, readItems } from "#lib/doc/read.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { eventually } from "#tests/support/eventually.ts";
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

test("[INV-17] a writer cannot raise the document's version and lock everybody out", async () => {
  server.addPlan("locked");
  const writer = await page("locked", "jonas");
  writer.edit((doc) => doc.getMap("meta").set("version", 99));
  await writer.saved();
  await eventually("the version is put back", () => docVersion(writer.doc) === PLAN_DOC_VERSION);
  writer.end();
  expect(await server.rooms.withDoc({ kind: "plan", key: "locked" }, (doc) => docVersion(doc))).toBe(PLAN_DOC_VERSION);
});

test("what is no item is passed over, however deep it is nested", () => {
  const doc = new Y.Doc();
  (parts(doc).items as Y.Map<unknown>).set("rubbish", "a string");
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

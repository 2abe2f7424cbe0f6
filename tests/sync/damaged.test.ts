/** A database that becomes known to be damaged under live pages: nobody is told that words are saved, and none are stored. */
import { afterEach, expect, test } from "vitest";
import { WebSocket as NodeWebSocket } from "ws";
import * as Y from "yjs";
import { saveStateOf, saveWords } from "#lib/client/doc-session/save-state.ts";
import { connectDoc } from "#lib/client/provider.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION, planParts } from "#lib/doc/layout.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import type { DocName } from "#lib/protocol/messages.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer, type TestServerOptions } from "#tests/support/sync-server.ts";

let server: TestServer;
let name: DocName;
afterEach(() => server.stop());

async function start(options: TestServerOptions = {}): Promise<void> {
  server = await startSyncServer(options);
  name = server.addPlan("page");
}
const open = (user: string) => new RawClient(server.url, name, { cookie: server.host.signIn(user) });
const found = () => server.db.damage.found("a page is not what it was");
const rows = () => Number(server.db.raw.prepare("select count(*) from doc_update").pluck().get());
const type = (client: RawClient, words: string) => client.edit((doc) => planParts(doc).notes.insert(0, words));

test("two who type in the same second are both told, joiners too; nothing is stored or called saved", async () => {
  await start();
  const [ines, marta] = await Promise.all([open("ines").synced(), open("marta").synced()]);
  await Promise.all([ines.saved(), marta.saved()]);
  const [before, called] = [rows(), [ines.savedCount, marta.savedCount]];
  found();
  type(ines, "from Ines ");
  type(marta, "from Marta ");
  await eventually("the room knows", () => server.rooms.health().failing.length === 1 || undefined);
  for (const page of [ines, marta])
    await eventually("it is told", () => page.newsOf("storage").some((news) => news.damaged) || undefined);
  expect(rows()).toBe(before);
  expect([ines.savedCount, marta.savedCount]).toEqual(called);
  const joiner = open("jonas");
  expect(await joiner.closed()).toBe(CLOSE.storageDamaged.code);
  // Waiting for a disk that heals is for disks that can.
  expect(await server.halt(600_000)).toEqual(["plan/page"]);
  for (const client of [ines, marta, joiner]) client.end();
});

test("words on their way to the disk as damage becomes known are never called saved", async () => {
  let release = () => undefined as unknown;
  const hard = new Promise<void>((resolve) => {
    release = resolve;
  });
  let synced = 0;
  await start({ sync: async () => hard.finally(() => synced++) });
  const [writer, peer] = [await open("ines").synced(), await open("marta").synced()];
  const called = writer.savedCount;
  type(writer, "a word ");
  await eventually("the peer has it", () => planParts(peer.doc).notes.toString() === "a word " || undefined);
  found();
  release();
  await eventually("the disk has it", () => synced > 0 || undefined);
  const answers = () => writer.heard.filter((one) => one.kind === "step2").length;
  const before = answers();
  writer.sendStep1();
  await eventually("the server answers behind it", () => answers() > before || undefined);
  expect(writer.savedCount).toBe(called);
  for (const client of [writer, peer]) client.end();
});

test("the page says what is wrong and where the words are; a page opened later says so at once", async () => {
  await start();
  const cookie = server.host.signIn("ines");
  class WithCookie extends NodeWebSocket {
    constructor(url: string | URL, protocols?: string | string[]) {
      super(url, protocols, { headers: { cookie: `session=${cookie}` } });
    }
  }
  const page = connectDoc({
    origin: server.url,
    name,
    doc: new Y.Doc(),
    userId: "ines",
    docVersion: PLAN_DOC_VERSION,
    editorVersion: EDITOR_VERSION,
    WebSocket: WithCookie as unknown as typeof WebSocket,
  });
  const state = () => saveStateOf(page.state, { document: true, copy: true });
  await eventually("saved", () => state() === "saved" || undefined);
  found();
  await eventually("damaged", () => state() === "damaged" || undefined);
  const words = saveWords({ saveState: state(), rights: { writes: true }, copy: "kept" });
  expect(words).toBe("the server's database is damaged, so nothing is saved until it is restored; kept on this device");
  page.stop();
  const late = await open("marta").synced();
  expect(late.newsOf("storage")).toEqual([{ t: "storage", failing: true, damaged: true }]);
  late.end();
});

/** The page's own connection against the real server: it says where the words are, and only the truth. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { WebSocket as NodeWebSocket } from "ws";
import * as Y from "yjs";
import type { ConnectionState } from "#lib/client/connection-state.ts";
import { saveStateOf } from "#lib/client/doc-session/save-state.ts";
import { type ConnectOptions, connectDoc, type DocConnection } from "#lib/client/provider.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION, planParts } from "#lib/doc/layout.ts";
import { closeText } from "#lib/protocol/close.ts";
import type { DocName, News } from "#lib/protocol/messages.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
let name: DocName;
const pages: TestPage[] = [];
beforeEach(async () => {
  server = await startSyncServer();
  name = server.addPlan("page");
});
afterEach(async () => {
  for (const page of pages.splice(0)) page.connection.stop();
  await server.stop();
});

interface TestPage {
  readonly doc: Y.Doc;
  readonly news: News[];
  readonly states: ConnectionState[];
  readonly connection: DocConnection;
  readonly auth: { cookie: string };
  status(): string;
}

function openPage(user: string, options: Partial<ConnectOptions> = {}): TestPage {
  const auth = { cookie: server.host.signIn(user) };
  class WithCookie extends NodeWebSocket {
    constructor(url: string | URL, protocols?: string | string[]) {
      super(url, protocols, { headers: { cookie: `session=${auth.cookie}` } });
    }
  }
  const doc = new Y.Doc();
  const news: News[] = [];
  const states: ConnectionState[] = [];
  const connection = connectDoc({
    origin: server.url,
    name,
    doc,
    userId: user,
    docVersion: PLAN_DOC_VERSION,
    editorVersion: EDITOR_VERSION,
    awareness: { item: null },
    WebSocket: WithCookie as unknown as typeof WebSocket,
    maxBackoffMs: 100,
    onNews: (item) => news.push(item),
    onState: (state) => states.push(state),
    ...options,
  });
  const everSynced = () => states.some((s) => s.synced);
  const page = {
    doc,
    news,
    states,
    connection,
    auth,
    status: () => saveStateOf(connection.state, { document: everSynced(), copy: true }),
  };
  pages.push(page);
  return page;
}
const reaches = (page: TestPage, status: string, ms?: number) =>
  eventually(`the page is ${status} (${page.status()})`, () => page.status() === status, ms);
const type = (page: TestPage, words: string) => planParts(page.doc).notes.insert(0, words);
const notes = (doc: Y.Doc) => planParts(doc).notes.toString();
const onServer = () => server.rooms.withDoc(name, notes);

test("opening, saved, sending, saved; the other page sees it", async () => {
  const [ines, marta] = [openPage("ines"), openPage("marta")];
  expect(ines.status()).toBe("opening");
  await reaches(ines, "saved");
  type(ines, "words");
  expect(ines.status()).toBe("sending");
  await reaches(ines, "saved");
  expect(onServer()).toBe("words");
  await eventually("marta reads it", () => notes(marta.doc) === "words");
  expect(marta.news.some((n) => n.t === "generation")).toBe(true);
});

test("`saved` is never shown for what another open transaction could still roll back", async () => {
  const page = openPage("ines");
  await reaches(page, "saved");
  server.db.raw.exec("begin immediate");
  type(page, "during a forgotten transaction");
  await reaches(page, "storage-failing");
  server.db.raw.exec("rollback");
  await reaches(page, "saved");
  await server.halt();
  const again = await startSyncServer({ temp: server.temp });
  expect(again.rooms.withDoc(name, notes)).toBe("during a forgotten transaction");
  await again.halt();
});

test("offline: kept here, merged on return, saved again", async () => {
  const [page, other] = [openPage("ines"), openPage("marta")];
  await Promise.all([reaches(page, "saved"), reaches(other, "saved")]);
  page.connection.disconnect();
  await reaches(page, "offline");
  type(page, "written offline");
  type(other, "meanwhile ");
  await reaches(other, "saved");
  page.connection.reconnect();
  await reaches(page, "saved");
  await eventually("both read both", () => notes(page.doc) === notes(other.doc));
  expect(onServer()).toBe(notes(page.doc));
  expect(onServer()).toContain("written offline");
});

test("when the server restarts, the page reconnects by itself and loses nothing", async () => {
  const page = openPage("ines");
  await reaches(page, "saved");
  const port = new URL(server.url.replace("ws", "http")).port;
  await server.halt();
  await reaches(page, "offline");
  type(page, "while it was away");
  const again = await startSyncServer({ temp: server.temp, port: Number(port) });
  for (const [key, session] of server.host.sessions) again.host.sessions.set(key, session);
  await reaches(page, "saved", 10_000);
  expect(again.rooms.withDoc(name, notes)).toBe("while it was away");
  page.connection.stop();
  await again.halt();
});

test("a session that ends in mid-edit: one refusal with its sentence; after signing in the words are saved", async () => {
  const page = openPage("ines");
  await reaches(page, "saved");
  server.host.ended.add(page.auth.cookie);
  server.rooms.refreshAccess();
  await reaches(page, "ended");
  type(page, "typed after the end");
  expect(page.connection.state.closed).toBe(4401);
  expect(closeText(4401)).toContain("Sign in");
  expect(server.rooms.health().connections).toBe(0);
  expect(onServer()).toBe("");
  page.auth.cookie = server.host.signIn("ines");
  page.connection.reconnect();
  await reaches(page, "saved");
  expect(onServer()).toBe("typed after the end");
});

test.each([
  ["just above what the server takes", 1_100_000],
  ["above what its socket takes", 9_000_000],
])("a change %s ends the page with the same sentence", async (_label, size) => {
  const page = openPage("ines");
  await reaches(page, "saved");
  type(page, "x".repeat(size));
  await reaches(page, "ended");
  expect(page.connection.state.closed).toBe(4413);
  expect(notes(page.doc).length).toBe(size);
});

test("a failing disk is shown until it recovers; a page that joins meanwhile retries until it may", async () => {
  const page = openPage("ines");
  await reaches(page, "saved");
  const pagesNow = server.db.raw.pragma("page_count", { simple: true });
  server.db.raw.pragma(`max_page_count = ${pagesNow}`);
  type(page, "y".repeat(90_000));
  await reaches(page, "storage-failing");
  const joiner = openPage("marta");
  await reaches(joiner, "storage-failing");
  server.db.raw.pragma("max_page_count = 1073741823");
  await Promise.all([reaches(page, "saved", 10_000), reaches(joiner, "saved", 10_000)]);
  expect(onServer() === "y".repeat(90_000)).toBe(true);
});

test("a reader's page is saved too, sends no presence, and shows it on gaining the right to write", async () => {
  server.host.rights.set("sam", { writes: false });
  const reader = openPage("sam");
  const watcher = await new RawClient(server.url, name, { cookie: server.host.signIn("marta") }).synced();
  await reaches(reader, "saved");
  server.host.rights.delete("sam");
  server.rooms.refreshAccess();
  const seen = await eventually("sam is seen", () => watcher.presence().find((p) => p.state !== null));
  expect(seen.state).toEqual({ item: null, user: { id: "sam", name: "Name of sam" } });
  await reaches(reader, "saved");
  watcher.end();
});

test("pages see each other's presence, and do not echo it", async () => {
  const [ines, marta] = [openPage("ines"), openPage("marta")];
  await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
  ines.connection.awareness.setLocalStateField("item", "a");
  const seen = () => [...marta.connection.awareness.getStates().values()].find((s) => s.user?.id === "ines");
  await eventually("marta sees where ines is", () => seen()?.item === "a");
  const before = server.rooms.health().refused;
  for (const item of ["b", "rest", "a", "b"]) ines.connection.awareness.setLocalStateField("item", item);
  await eventually("the last one arrives", () => seen()?.item === "b");
  expect(server.rooms.health().refused).toBe(before);
});

test("somebody who comes back is seen again within two seconds", async () => {
  const [ines, marta] = [openPage("ines"), openPage("marta")];
  await Promise.all([reaches(ines, "saved"), reaches(marta, "saved")]);
  const seen = () => [...marta.connection.awareness.getStates().values()].some((s) => s.user?.id === "ines");
  await eventually("ines is seen", seen);
  ines.connection.disconnect();
  await eventually("ines is gone", () => !seen());
  ines.connection.reconnect();
  await eventually("ines is back", seen, 2000);
});

test("a page of an older version is told once to reload", async () => {
  const page = openPage("ines", { docVersion: 0 });
  await reaches(page, "ended");
  expect(page.connection.state.closed).toBe(4426);
});

test("a stopped page leaves no socket, no listener and no timer of its own", async () => {
  const timers = () => process.getActiveResourcesInfo().filter((kind) => kind === "Timeout").length;
  const before = timers();
  const page = openPage("ines");
  await reaches(page, "saved");
  page.connection.stop();
  await eventually("the socket is gone", () => server.rooms.health().connections === 0);
  const states = [...page.states];
  type(page, "to nobody");
  expect(page.states).toEqual(states);
  await eventually("timers are back to where they were", () => timers() <= before);
});

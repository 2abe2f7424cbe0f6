/** What a person may do at once: much more than anybody does, and no more however many sockets they have. */
import { afterEach, expect, test } from "vitest";
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { eventually } from "../support/eventually.ts";
import { letterFrame } from "../support/flood.ts";
import { RawClient } from "../support/raw-client.ts";
import { startSyncServer, type TestServer } from "../support/sync-server.ts";

let server: TestServer;
afterEach(() => server.stop());
const page = (user: string) =>
  new RawClient(server.url, { kind: "plan", key: "p" }, { cookie: server.host.signIn(user) }).synced();

test("a class pasted whole, a day offline and two thousand letters in one go: all of it at once, on no credit", async () => {
  // Nothing is ever paid off here: whatever went beyond would wait for good.
  server = await startSyncServer({ limits: { personPercent: 0 } });
  server.addPlan("p");
  const ines = await page("ines");
  ines.edit((doc) => {
    for (let n = 0; n < 60; n++) {
      const item = new Y.Map<unknown>(Object.entries({ kind: "pause", seconds: 30, at: `a${n}` }));
      item.set("script", new Y.XmlFragment());
      planParts(doc).items.set(`pasted-${n}`, item);
    }
  });
  const offline: Uint8Array[] = [];
  ines.doc.on("update", (update: Uint8Array) => offline.push(update));
  for (let n = 0; n < 3000; n++) {
    planParts(ines.doc).notes.insert((n * 7) % (planParts(ines.doc).notes.length + 1), "word ");
    planParts(ines.doc)
      .items.get(`pasted-${n % 60}`)
      ?.set("seconds", n);
  }
  ines.sendUpdate(Y.mergeUpdates(offline.splice(0)));
  for (let n = 0; n < 2000; n++) ines.edit((doc) => planParts(doc).notes.insert(0, "x"));
  await ines.saved(20_000);
  expect(ines.closeCode).toBeUndefined();
});

test("who has used it up waits, with every socket, and for nobody else; nothing of it is refused", async () => {
  server = await startSyncServer({ limits: { personPercent: 10, personBurstMs: 20 } });
  server.addPlan("p");
  const [jonas, ines] = [await page("jonas"), await page("ines")];
  const LETTERS = 20_000;
  for (let n = 0; n < LETTERS; n++) jonas.ws.send(letterFrame(77, n, "flood"));
  const arrived = () => server.rooms.withDoc({ kind: "plan", key: "p" }, (doc) => doc.getText("flood").length);
  await eventually("it begins", () => arrived() > 0);
  ines.edit((doc) => planParts(doc).title.insert(0, "A "));
  await ines.saved();
  expect(arrived()).toBeLessThan(LETTERS);
  await eventually("all of it comes", () => arrived() === LETTERS, 25_000);
  expect(jonas.closeCode).toBeUndefined();
});

/** Many updates of a page in one turn cost little more than one, and each of them counts as if it had come alone. */
import { afterAll, beforeAll, expect, test } from "vitest";
import * as Y from "yjs";
import { planParts } from "#lib/doc/layout.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { mergeUpdates } from "#server/doc-log/updates.ts";
import { WholeStates } from "#server/sync/whole.ts";
import { eventually } from "#tests/support/eventually.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeAll(async () => {
  server = await startSyncServer();
});
afterAll(() => server.stop());

const page = (key: string, user: string) =>
  new RawClient(server.url, { kind: "plan", key }, { cookie: server.host.signIn(user) });
const notes = ({ doc }: RawClient) => planParts(doc).notes.toString();
const write = (client: RawClient, text: string) => client.edit((doc) => planParts(doc).notes.insert(0, text));

/** All that is sent until `act` ends leaves in one piece, and so arrives in one. */
function inOnePiece(client: RawClient, act: () => void): void {
  const socket = Reflect.get(client.ws, "_socket") as { cork(): void; uncork(): void };
  socket.cork();
  act();
  socket.uncork();
}

test("what was right before a wrong one counts, and what came after it does not", async () => {
  server.addPlan("wrong");
  const [writer, peer] = [await page("wrong", "ines").synced(), await page("wrong", "marta").synced()];
  inOnePiece(writer, () => {
    write(writer, "one ");
    write(writer, "two ");
    writer.sendUpdate(Uint8Array.of(9, 9, 9));
    write(writer, "four ");
  });
  expect(await writer.closed()).toBe(CLOSE.badMessage.code);
  await eventually("the others have what was right", () => notes(peer).startsWith("two one "));
  expect(notes(peer)).not.toContain("four");
});

test("a page that goes at once has said what it sent", async () => {
  server.addPlan("gone");
  const [writer, peer] = [await page("gone", "ines").synced(), await page("gone", "marta").synced()];
  inOnePiece(writer, () => {
    for (const word of ["a", "b", "c"]) write(writer, word);
  });
  writer.ws.close();
  await eventually("it is there", () => notes(peer).startsWith("cba"));
});

test("two thousand updates of three writers in the same second are all there, and all called saved", async () => {
  server.addPlan("many");
  const writers = await Promise.all(["ines", "jonas", "marta"].map((user) => page("many", user).synced()));
  const before = notes(writers[0] as RawClient).length;
  for (const writer of writers)
    inOnePiece(writer, () => {
      for (let n = 0; n < 667; n++) write(writer, "x");
    });
  for (const writer of writers) await writer.saved(20_000);
  await eventually("all have all", () => writers.every((one) => notes(one).length === before + 3 * 667));
  const [first, ...others] = writers.map(notes);
  for (const other of others) expect(other === first).toBe(true);
});

test("a page that has nothing is given what has just been written, though another was given the plan before", async () => {
  server.addPlan("whole");
  const writer = await page("whole", "ines").synced();
  write(writer, "early ");
  await writer.saved();
  expect(notes(await page("whole", "marta").synced())).toMatch(/^early /);
  write(writer, "late ");
  await writer.saved();
  expect(notes(await page("whole", "jonas").synced())).toMatch(/^late early /);
});

test("whole documents are kept until they change, and only so many bytes of them", () => {
  const wholes = new WholeStates<string>();
  let made = 0;
  const bytes = (size: number) => () => {
    made++;
    return new Uint8Array(size);
  };
  const MiB = 1024 * 1024;
  wholes.of("a", bytes(20 * MiB));
  wholes.of("a", bytes(20 * MiB));
  expect(made).toBe(1);
  wholes.of("b", bytes(20 * MiB));
  wholes.of("a", bytes(1));
  expect(made).toBe(3);
  wholes.forget("b");
  wholes.of("a", bytes(1));
  wholes.of("b", bytes(1));
  expect(made).toBe(4);
});

test("updates put together say what they say one by one", () => {
  const [from, to] = [new Y.Doc(), new Y.Doc()];
  const updates: Uint8Array[] = [];
  from.on("update", (update: Uint8Array) => updates.push(update));
  const text = from.getText("t");
  for (let n = 0; n < 1500; n++)
    n % 7 === 6 ? text.delete(n % text.length, 1) : text.insert(((n * 13) % (n + 1)) % (text.length + 1), "ab");
  expect(updates).toHaveLength(1500);
  Y.applyUpdate(to, mergeUpdates(updates));
  expect(to.getText("t").toString()).toBe(text.toString());
  expect(Y.encodeStateVector(to)).toEqual(Y.encodeStateVector(from));
});

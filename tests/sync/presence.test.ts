/** Presence carries the identity the server knows, belongs to its connection, and is gone when that is. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { eventually } from "#tests/support/eventually.ts";
import { type HeardPresence, RawClient } from "#tests/support/raw-client.ts";
import { startSyncServer, type TestServer } from "#tests/support/sync-server.ts";

let server: TestServer;
beforeAll(async () => {
  server = await startSyncServer();
});
afterAll(() => server.stop());

let plans = 0;
async function pair(): Promise<{ ines: RawClient; marta: RawClient; open: (user: string) => RawClient }> {
  const name = server.addPlan(`presence-${plans++}`);
  const open = (user: string) => new RawClient(server.url, name, { cookie: server.host.signIn(user) });
  return { ines: await open("ines").synced(), marta: await open("marta").synced(), open };
}
const heard = (client: RawClient, clientId: number, look: (p: HeardPresence) => boolean = () => true) =>
  eventually(`${clientId} is heard of`, () => client.presence().find((p) => p.clientId === clientId && look(p)));

test("a forged name is replaced by the one the server knows", async () => {
  const { ines, marta } = await pair();
  ines.sendPresence([
    { clientId: 1, clock: 1, state: { user: { id: "marta", name: "Marta", color: "red" }, item: "a" } },
  ]);
  const seen = await heard(marta, 1);
  expect(seen.state).toEqual({ user: { id: "ines", name: "Name of ines" }, item: "a" });
  ines.end();
  marta.end();
});

test("another's client id cannot be taken or removed; its owner can do both", async () => {
  const { ines, marta } = await pair();
  ines.sendPresence([{ clientId: 1, clock: 1, state: { item: "a" } }]);
  await heard(marta, 1);
  const before = server.rooms.health().refused;
  marta.sendPresence([{ clientId: 2, clock: 1, state: { item: "z" } }]);
  marta.sendPresence([{ clientId: 1, clock: 50, state: { item: "stolen" } }]);
  marta.sendPresence([{ clientId: 1, clock: 51, state: null }]);
  await eventually("the forgery is counted", () => server.rooms.health().refused > before);
  ines.sendPresence([{ clientId: 1, clock: 2, state: { item: "b" } }]);
  await heard(marta, 1, (p) => p.state?.item === "b");
  expect(marta.presence().filter((p) => p.clientId === 1 && p.state === null)).toEqual([]);
  expect(ines.presence().some((p) => p.clientId === 1)).toBe(false);
  ines.sendPresence([{ clientId: 1, clock: 3, state: null }]);
  await heard(marta, 1, (p) => p.state === null);
  ines.end();
  marta.end();
});

test("what a page echoes of others is no claim", async () => {
  const { ines, marta } = await pair();
  ines.sendPresence([{ clientId: 1, clock: 1, state: { item: "a" } }]);
  const seen = await heard(marta, 1);
  const before = server.rooms.health().refused;
  marta.sendPresence([{ clientId: 1, clock: seen.clock, state: seen.state }]);
  marta.sendPresence([{ clientId: 2, clock: 1, state: { item: "z" } }]);
  await heard(ines, 2);
  expect(server.rooms.health().refused).toBe(before);
  ines.end();
  marta.end();
});

test("too large a presence is turned away, and the connection lives", async () => {
  const { ines, marta } = await pair();
  const before = server.rooms.health().refused;
  ines.sendPresence([{ clientId: 1, clock: 1, state: { item: "x".repeat(17_000) } }]);
  ines.sendPresence([{ clientId: 1, clock: 2, state: { item: "a" } }]);
  const seen = await heard(marta, 1);
  expect(seen.state?.item).toBe("a");
  expect(server.rooms.health().refused).toBe(before + 1);
  ines.end();
  marta.end();
});

test("a presence goes with its connection", async () => {
  const { ines, marta } = await pair();
  ines.sendPresence([{ clientId: 1, clock: 1, state: { item: "a" } }]);
  await heard(marta, 1);
  ines.end();
  await heard(marta, 1, (p) => p.state === null);
  await eventually("the list is shorter", () => marta.newsOf("present").at(-1)?.people.length === 1);
  marta.end();
});

test("who comes back with an unmoved clock is seen again within 2 s, under a clock that others believe", async () => {
  const { ines, marta, open } = await pair();
  ines.sendPresence([{ clientId: 1, clock: 4, state: { item: "a" } }]);
  const first = await heard(marta, 1);
  ines.end();
  const gone = await heard(marta, 1, (p) => p.state === null);
  const started = performance.now();
  const again = await open("ines").synced();
  again.sendPresence([{ clientId: 1, clock: 4, state: { item: "a" } }]);
  const back = await heard(marta, 1, (p) => p.state !== null && p.clock > gone.clock);
  expect(back.clock).toBeGreaterThan(first.clock);
  expect(performance.now() - started).toBeLessThan(2000);
  again.end();
  marta.end();
});

test("who joins later sees who is there", async () => {
  const { ines, marta, open } = await pair();
  ines.sendPresence([{ clientId: 1, clock: 1, state: { item: "a" } }]);
  await heard(marta, 1);
  const late = await open("jonas").synced();
  expect((await heard(late, 1)).state).toEqual({ item: "a", user: { id: "ines", name: "Name of ines" } });
  for (const client of [ines, marta, late]) client.end();
});

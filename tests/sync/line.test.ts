/** The line of screens over real sockets: who is let on, what each may send, and what nobody can do to a room. */
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ABSENT_MS } from "#lib/line/line.ts";
import { LINE_VERSION } from "#lib/protocol/line-wire.ts";
import { withdrawEdition } from "#server/sign-off/withdraw-edition.ts";
import { eventually } from "#tests/support/eventually.ts";
import { classFrom, type LineServer, onLine, RawScreen, startLineServer } from "#tests/support/line-server.ts";
import { must } from "#tests/support/plan-studio.ts";
import { signedClass } from "#tests/support/signed-class.ts";

let server: LineServer;
beforeAll(async () => {
  server = await startLineServer();
});
afterAll(() => server.stop());

test("a screen that is there is told at once when an edition is signed, and when one is withdrawn", async () => {
  const screen = server.pair("Tablet");
  const raw = await onLine(server, screen);
  const marks = () => new Set(raw.of("cards").map(({ mark }) => mark)).size;
  expect(marks()).toBe(1);
  await signedClass(server.studio);
  await eventually("it hears of the new edition", () => marks() === 2);
  const { app, people, db } = server.studio;
  const planId = db.raw.prepare<[], { id: string }>("SELECT plan_id AS id FROM edition").get()?.id ?? "";
  must(withdrawEdition(app, people.ines, { planId, number: 1 }, "A spring is being replaced"));
  await eventually("it hears of the withdrawal", () => marks() === 3);
  raw.ws.terminate();
});

describe("at the door", () => {
  test("a page of another origin is refused, one of the studio's own or no browser at all is let in", async () => {
    const foreign = new RawScreen(server.url, { origin: "https://elsewhere.example" });
    await eventually("it is refused", () => foreign.refusedStatus === 403);
    const own = await new RawScreen(server.url, { origin: "https://studio.example" }).opened();
    own.ws.terminate();
  });

  test("another path is left alone", async () => {
    const other = new RawScreen(server.url, {}, "/floor/lines");
    await eventually("it is refused", () => other.refusedStatus === 404);
  });

  test("a token that is not known, or that was taken back, is closed with 4401", async () => {
    const raw = await new RawScreen(server.url).opened();
    raw.hello({ id: "x", token: "made-up-token-of-nobody" });
    expect(await raw.closed()).toBe(4401);
    const back = server.pair("Taken back");
    server.takeBack(back);
    const late = await new RawScreen(server.url).opened();
    late.hello(back);
    expect(await late.closed()).toBe(4401);
  });

  test.each([
    ["no JSON", "hello"],
    ["another message first", JSON.stringify({ t: "time", t1: 1 })],
    [
      "a key too many",
      JSON.stringify({ t: "hello", version: 1, token: "x".repeat(43), view: "wall", memory: null, a: 1 }),
    ],
    [
      "a view that there is not",
      JSON.stringify({ t: "hello", version: 1, token: "x".repeat(43), view: "tv", memory: null }),
    ],
  ])("%s is closed with 4400", async (_what, text) => {
    const raw = await new RawScreen(server.url).opened();
    raw.ws.send(text);
    expect(await raw.closed()).toBe(4400);
  });

  test("[INV-17] a page of another version is told to reload", async () => {
    const raw = await new RawScreen(server.url).opened();
    raw.ws.send(
      JSON.stringify({ t: "hello", version: LINE_VERSION + 1, token: "x".repeat(43), view: "wall", memory: null }),
    );
    expect(await raw.closed()).toBe(4426);
  });

  test("more than 16 KiB before the hello: closed before the frame is even whole", async () => {
    const raw = await new RawScreen(server.url).opened();
    // The head of a frame that says it will be 1 MiB, and only 17 KiB of it.
    const head = Buffer.from([0x81, 0xff, 0, 0, 0, 0, 0, 0x10, 0, 0, 1, 2, 3, 4]);
    const stream = (raw.ws as unknown as { _socket: NodeJS.WritableStream })._socket;
    stream.write(head);
    stream.write(Buffer.alloc(17 * 1024));
    expect(await raw.closed()).toBe(4429);
  });

  test("whoever says nothing is let go, and pings extend nothing", async () => {
    const strict = await startLineServer({ strangerMs: 200 });
    const raw = await new RawScreen(strict.url).opened();
    const talk = setInterval(() => raw.ws.readyState === raw.ws.OPEN && raw.ws.ping(), 20);
    expect(await raw.closed()).toBe(4408);
    clearInterval(talk);
    await strict.stop();
  });
});

describe("on the line", () => {
  test("a room is its own: neither heard nor led from another", async () => {
    const [here, there] = [server.pair("Loft tablet", "loft"), server.pair("Harbour tablet", "harbour")];
    const loft = await onLine(server, here, "lead");
    const harbour = await onLine(server, there, "lead");
    loft.say({ t: "lead", term: 0, sure: false });
    await loft.until("it leads", (line) => line.leader?.id === here.id);
    loft.say({ t: "class", term: 1, class: classFrom(0) });
    await loft.until("its class is told", (line) => line.told !== null);
    harbour.say({ t: "class", term: 1, class: classFrom(0, "b") });
    await eventually("it is refused", () => harbour.of("refused").some(({ why }) => why === "not-leading"));
    expect(harbour.line).toMatchObject({ term: 0, leader: null, told: null });
    expect(harbour.line?.screens.map(({ id }) => id)).toEqual([there.id]);
    loft.say({ t: "step-down", term: 1 });
    await loft.until("nobody leads", (line) => line.leader === null);
    for (const raw of [loft, harbour]) raw.ws.terminate();
  });

  test("[INV-24] what a leader of an older term sends is refused, and changes nothing for anybody", async () => {
    const line = await startLineServer();
    const [a, b] = [line.pair("Tablet"), line.pair("Wall")];
    const [one, two] = [await onLine(line, a), await onLine(line, b)];
    one.say({ t: "lead", term: 0, sure: false });
    await two.until("the tablet leads", ({ leader }) => leader?.label === "Tablet");
    two.say({ t: "lead", term: 1, sure: false });
    await one.until("it is asked", ({ asked }) => asked?.label === "Wall");
    one.say({ t: "answer", term: 1, to: b.id, yes: true });
    await one.until("the wall leads", ({ leader, term }) => leader?.id === b.id && term === 2);
    one.say({ t: "class", term: 1, class: classFrom(0) });
    one.say({ t: "class", term: 2, class: classFrom(0) });
    await eventually("both are refused", () => one.of("refused").length === 2);
    expect(line.lineOf("loft").told).toBeNull();
    await line.stop();
  });

  test("a class that the studio has not signed is not passed on", async () => {
    const line = await startLineServer();
    const one = await onLine(line, line.pair("Tablet"));
    one.say({ t: "lead", term: 0, sure: false });
    const forged = { ...classFrom(0), edition: { planId: "rows", number: 1, hash: "f".repeat(64) } };
    one.say({ t: "class", term: 1, class: forged });
    await eventually("it is refused", () => one.of("refused").some(({ why }) => why === "not-signed"));
    expect(line.lineOf("loft").told).toBeNull();
    await line.stop();
  });

  test("a device that is taken back is cut off within a second, and heard no more", async () => {
    const [lead, gone] = [server.pair("Tablet"), server.pair("Lost phone")];
    const [stays, goes] = [await onLine(server, lead), await onLine(server, gone)];
    const since = performance.now();
    server.takeBack(gone);
    expect(await goes.closed()).toBe(4401);
    expect(performance.now() - since).toBeLessThan(1500);
    await stays.until("it is seen to be gone", ({ screens }) =>
      screens.some((s) => s.id === gone.id && s.goneSince !== null),
    );
    expect(stays.closeCode).toBeUndefined();
    stays.ws.terminate();
  });

  test("a device has one place: the page opened later takes it, the earlier one is told", async () => {
    const device = server.pair("Tablet with two tabs");
    const first = await onLine(server, device);
    const second = await onLine(server, device);
    expect(await first.closed()).toBe(4402);
    second.say({ t: "time", t1: 5 });
    await eventually("the later one is answered", () => second.of("time").some(({ t1 }) => t1 === 5));
    expect(second.line?.screens.filter(({ id }) => id === device.id)).toMatchObject([{ goneSince: null }]);
    second.ws.terminate();
  });

  test.each([
    ["no JSON", "{"],
    ["a message that there is not", JSON.stringify({ t: "shout" })],
    ["times beyond all bounds", JSON.stringify({ t: "time", t1: 1e300 })],
    ["a log of nothing", JSON.stringify({ t: "class", term: 0, class: { ...classFrom(0), log: [] } })],
  ])("%s is closed with 4400", async (_what, text) => {
    const raw = await onLine(server, server.pair("Strange"));
    raw.ws.send(text);
    expect(await raw.closed()).toBe(4400);
  });

  test("a message that is too large is closed with 4413; the largest class there is is taken", async () => {
    const line = await startLineServer();
    const device = line.pair("Tablet");
    const one = await onLine(line, device);
    one.say({ t: "lead", term: 0, sure: false });
    const changed = Array.from({ length: 60 }, (_, n) => ({ item: `item-${n}`, to: 45 }));
    const retime = { type: "retime" as const, at: 1, changed, dropped: [], closingSeconds: 60 };
    const long = { ...classFrom(0), log: [...classFrom(0).log, ...Array.from({ length: 40 }, () => retime)] };
    one.say({ t: "class", term: 1, class: long });
    await one.until("it is told", ({ told }) => told?.log.length === 41);
    one.ws.send("x".repeat(600 * 1024));
    expect(await one.closed()).toBe(4413);
    const two = await onLine(line, device);
    two.ws.send("x".repeat(1200 * 1024));
    expect(await two.closed()).toBe(1009);
    await line.stop();
  });

  test("a flood is cut off, and the others go on being served", async () => {
    const calm = await onLine(server, server.pair("Calm"));
    const loud = await onLine(server, server.pair("Loud"));
    for (let n = 0; n < 2000; n++) loud.say({ t: "time", t1: n });
    expect(await loud.closed()).toBe(4429);
    expect(loud.of("time").length).toBeLessThan(200);
    calm.say({ t: "time", t1: 7 });
    await eventually("the calm one is answered", () => calm.of("time").some(({ t1 }) => t1 === 7));
    calm.ws.terminate();
  });

  test("a line that is full takes nobody more, and says so", async () => {
    const small = await startLineServer({ screens: 2 });
    const [a, b] = [await onLine(small, small.pair("A")), await onLine(small, small.pair("B"))];
    const third = await new RawScreen(small.url).opened();
    third.hello(small.pair("C"));
    expect(await third.closed()).toBe(4430);
    expect([a.closeCode, b.closeCode]).toEqual([undefined, undefined]);
    await small.stop();
  });

  test("a screen that falls silent is lost, and twenty seconds later may be taken over from", async () => {
    const line = await startLineServer({ hereMs: 30 });
    const [a, b] = [line.pair("Tablet"), line.pair("Wall")];
    const [one, two] = [await onLine(line, a), await onLine(line, b)];
    one.say({ t: "lead", term: 0, sure: false });
    await two.until("the tablet leads", ({ leader }) => leader?.id === a.id);
    // No word and no pong: the network is gone without a goodbye.
    one.ws.pause();
    await two.until("it is lost", ({ screens }) => screens.some((s) => s.id === a.id && s.goneSince !== null));
    two.say({ t: "lead", term: 1, sure: true });
    await two.until("it can only ask yet", ({ asked }) => asked?.id === b.id);
    line.advance(ABSENT_MS);
    two.say({ t: "lead", term: 1, sure: true });
    await two.until("it leads", ({ leader, term }) => leader?.id === b.id && term === 2);
    await line.stop();
  });
});

/**
 * The server is stopped and started again while twenty people write: nothing is lost, nobody has to do anything, and requests
 * under way are answered. How long the longest pause was is printed.
 */
import { afterAll, beforeAll, expect, test } from "vitest";
import { ComeBack, comeBackMs } from "#lib/client/come-back.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { loadDoc } from "#server/doc-log/stored-doc.ts";
import { freePort } from "#tests/support/app.ts";
import { eventually } from "#tests/support/eventually.ts";
import { PausedWriter } from "#tests/support/paused-writer.ts";
import { type StopServers, stopped, stopServers } from "#tests/support/stopped-server.ts";
import { tempDb } from "#tests/support/temp-db.ts";

const WRITERS = 20;
const PLANS = 4;
const RESTARTS = 3;

let servers: StopServers;
beforeAll(async () => {
  servers = await stopServers("stop");
});
afterAll(() => servers.end());

test(`${WRITERS} writers while the server stops and starts: none of their words is lost`, {
  timeout: 120_000,
}, async () => {
  const temp = tempDb();
  const port = await freePort();
  let child = await servers.start(temp.file, port);
  const writers = Array.from({ length: WRITERS }, (_, n) => {
    return new PausedWriter({ origin: `ws://127.0.0.1:${port}`, plan: `p${n % PLANS}`, userId: `u${n}` });
  });
  const pauses: number[] = [];
  const stops: number[] = [];
  for (let n = 0; n < RESTARTS; n++) {
    await eventually("all are saved at times", () => writers.every((w) => w.isSaved || w.words.length > 20), 30_000);
    await new Promise((done) => setTimeout(done, 500));
    for (const writer of writers) writer.beginMeasuring();
    const ended = await stopped(child);
    expect(ended.code).toBe(0);
    stops.push(ended.ms);
    child = await servers.start(temp.file, port);
    await eventually(
      "all have come back",
      () => writers.every((w) => w.longestPause > 300 && w.codes.length > n),
      30_000,
    );
    await new Promise((done) => setTimeout(done, 500));
    pauses.push(Math.max(...writers.map((w) => w.longestPause)));
  }
  for (const writer of writers) writer.rest();
  await eventually("all is saved", () => writers.every((w) => w.isSaved), 30_000);
  expect(writers.every((w) => w.toldToWait)).toBe(true);
  expect(writers.every((w) => w.codes.includes(CLOSE.stopping.code))).toBe(true);
  expect((await stopped(child)).code).toBe(0);
  const db = temp.open({ readOnly: true });
  const silent = () => undefined;
  const log = { info: silent, warn: silent, error: silent };
  const missing = writers.flatMap((w) => {
    const stored = loadDoc(db, `plan/${w.plan}`, log)?.doc.getMap("words");
    return w.words.filter((word) => stored?.has(word) !== true);
  });
  db.close();
  expect(missing).toEqual([]);
  expect(writers.reduce((sum, w) => sum + w.words.length, 0)).toBeGreaterThan(WRITERS * 50);
  const rounded = (all: readonly number[]) => Math.round(Math.max(...all));
  console.log(`longest pause ${rounded(pauses)} ms, of which the server stopped in ${rounded(stops)} ms`);
  expect(Math.max(...stops)).toBeLessThan(5000);
  for (const writer of writers) writer.end();
  temp.remove();
});

test("a request under way is answered, and nobody is let in meanwhile", { timeout: 60_000 }, async () => {
  const temp = tempDb();
  const port = await freePort();
  const child = await servers.start(temp.file, port);
  const slow = fetch(`http://127.0.0.1:${port}/slow`).then((answer) => answer.text());
  await new Promise((done) => setTimeout(done, 150));
  const ended = stopped(child);
  await new Promise((done) => setTimeout(done, 100));
  await expect(fetch(`http://127.0.0.1:${port}/slow`)).rejects.toThrow();
  expect(await slow).toBe("all of it");
  const { code, ms } = await ended;
  expect(code).toBe(0);
  // The connection is not kept open for another request.
  expect(ms).toBeLessThan(2500);
  temp.remove();
});

test("pages do not come back all at once, nor do they wait for long", () => {
  const [first, last] = [comeBackMs(() => 0), comeBackMs(() => 1)];
  expect(last - first).toBeGreaterThanOrEqual(1000);
  expect(last).toBeLessThan(3000);
  const waits = new Set(Array.from({ length: 50 }, () => Math.round(comeBackMs() / 10)));
  expect(waits.size).toBeGreaterThan(15);
});

test("what is said ends with the way back, and a later stop is said anew", async () => {
  const said: boolean[] = [];
  let tries = 0;
  const back = new ComeBack({ connect: () => tries++, say: (stopping) => said.push(stopping) });
  back.begin();
  back.begin();
  expect(said).toEqual([true, true]);
  await eventually("it tries once", () => tries === 1);
  back.end();
  expect(said).toEqual([true, true]);
});

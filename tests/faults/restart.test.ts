/**
 * The server is stopped and started again while twenty people write: nothing is lost, nobody has to do anything, and requests
 * under way are answered. How long the longest pause was is printed.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { WebSocket as NodeWebSocket } from "ws";
import * as Y from "yjs";
import { ComeBack, comeBackMs } from "#lib/client/come-back.ts";
import type { ConnectionState } from "#lib/client/connection-state.ts";
import { connectDoc, type DocConnection } from "#lib/client/provider.ts";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { CLOSE } from "#lib/protocol/close.ts";
import { loadDoc } from "#server/doc-log/stored-doc.ts";
import { freePort } from "#tests/support/app.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";
import { eventually } from "#tests/support/eventually.ts";
import { tempDb } from "#tests/support/temp-db.ts";

const BUNDLES = join(ROOT, "dist-tests/stop");
const WRITERS = 20;
const PLANS = 4;
const EVERY_MS = 25;
const RESTARTS = 3;

beforeAll(() => bundleServer({ "stop-server": "tests/support/stop-server.ts" }, BUNDLES));
const children: ChildProcess[] = [];
afterAll(() => {
  for (const child of children) child.kill("SIGKILL");
});

async function start(file: string, port: number): Promise<ChildProcess> {
  const args = [join(BUNDLES, "stop-server.js"), file, String(port)];
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ["ignore", "pipe", "pipe"] });
  children.push(child);
  let said = "";
  for (const stream of [child.stdout, child.stderr]) stream?.on("data", (chunk: Buffer) => (said += chunk.toString()));
  await eventually(`the server starts: ${said}`, () => /port (\d+)/.test(said), 60_000);
  return child;
}

function stop(child: ChildProcess): Promise<{ code: number | null; ms: number }> {
  const from = performance.now();
  return new Promise((resolve) => {
    child.once("exit", (code) => resolve({ code, ms: performance.now() - from }));
    child.kill("SIGTERM");
  });
}

/** A page that writes a word every few milliseconds, whether or not it is connected, as a person does. */
class PausedWriter {
  readonly doc = new Y.Doc();
  readonly words: string[] = [];
  readonly codes: number[] = [];
  readonly plan: string;
  private readonly link: DocConnection;
  private readonly timer: NodeJS.Timeout;
  /** ms since the last word was said to be saved, at its longest. */
  longestPause = 0;
  toldToWait = false;
  private savedAt = performance.now();

  constructor(port: number, n: number) {
    this.plan = `p${n % PLANS}`;
    const heardCode = (code: number) => this.codes.push(code);
    this.link = connectDoc({
      ...{ origin: `ws://127.0.0.1:${port}`, name: { kind: "plan", key: this.plan }, doc: this.doc, userId: `u${n}` },
      ...{ docVersion: PLAN_DOC_VERSION, editorVersion: EDITOR_VERSION },
      WebSocket: class extends NodeWebSocket {
        constructor(url: string | URL, protocols?: string | string[]) {
          super(url, protocols, { headers: { cookie: `u${n}` } });
          this.on("close", heardCode);
        }
      } as unknown as typeof WebSocket,
      onState: (state) => this.note(state),
      onNews: (news) => news.t === "saved" && this.noteSaved(),
    });
    this.timer = setInterval(() => this.write(n), EVERY_MS);
  }
  private note({ stopping }: ConnectionState): void {
    this.toldToWait ||= stopping;
  }
  private noteSaved(): void {
    const now = performance.now();
    this.longestPause = Math.max(this.longestPause, now - this.savedAt);
    this.savedAt = now;
  }
  private write(n: number): void {
    const word = `${n}-${this.words.length}`;
    this.words.push(word);
    this.doc.getMap("words").set(word, true);
  }
  beginMeasuring(): void {
    [this.longestPause, this.savedAt] = [0, performance.now()];
  }
  get isSaved(): boolean {
    return this.link.state.synced && this.link.state.waiting === 0;
  }
  rest(): void {
    clearInterval(this.timer);
  }
  end(): void {
    this.rest();
    this.link.stop();
    this.doc.destroy();
  }
}

test(`${WRITERS} writers while the server stops and starts: none of their words is lost`, {
  timeout: 120_000,
}, async () => {
  const temp = tempDb();
  const port = await freePort();
  let child = await start(temp.file, port);
  const writers = Array.from({ length: WRITERS }, (_, n) => new PausedWriter(port, n));
  const pauses: number[] = [];
  const stops: number[] = [];
  for (let n = 0; n < RESTARTS; n++) {
    await eventually("all are saved at times", () => writers.every((w) => w.isSaved || w.words.length > 20), 30_000);
    await new Promise((done) => setTimeout(done, 500));
    for (const writer of writers) writer.beginMeasuring();
    const ended = await stop(child);
    expect(ended.code).toBe(0);
    stops.push(ended.ms);
    child = await start(temp.file, port);
    await eventually(
      "all have come back",
      () => writers.every((w) => w.longestPause > 0 && w.codes.length > n),
      30_000,
    );
    await new Promise((done) => setTimeout(done, 500));
    pauses.push(Math.max(...writers.map((w) => w.longestPause)));
  }
  for (const writer of writers) writer.rest();
  await eventually("all is saved", () => writers.every((w) => w.isSaved), 30_000);
  expect(writers.every((w) => w.toldToWait)).toBe(true);
  expect(writers.every((w) => w.codes.includes(CLOSE.stopping.code))).toBe(true);
  expect((await stop(child)).code).toBe(0);
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
  const child = await start(temp.file, port);
  const slow = fetch(`http://127.0.0.1:${port}/slow`).then((answer) => answer.text());
  await new Promise((done) => setTimeout(done, 150));
  const ended = stop(child);
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

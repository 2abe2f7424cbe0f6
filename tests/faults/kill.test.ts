/**
 * kill -9 in a burst of edits, again and again (fifty times in a long run): whatever was called saved, and whatever a
 * peer had already been sent, is in the database afterwards; and the next process gets the lock and the document at once.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { loadDoc } from "#server/doc-log/stored-doc.ts";
import { bundleServer, ROOT } from "#tests/support/bundle-server.ts";
import { eventually } from "#tests/support/eventually.ts";
import { often } from "#tests/support/long.ts";
import { RawClient } from "#tests/support/raw-client.ts";
import { type TempDb, tempDb } from "#tests/support/temp-db.ts";

const BUNDLES = join(ROOT, "dist-tests/kill");
const CHECKPOINTS = join(ROOT, "db/file/checkpoint-worker.mjs");
const RUNS = often(4, 50);
const LANES = 2;
/** Of each lane: on the thread that serves people, as short logs are, or on a thread of its own. */
const FOLDS = ["here", "beside"];

const ENTRIES = {
  "kill-server": "tests/support/kill-server.ts",
  // Where the server's bundle looks for it.
  "fold-worker": "server/doc-log/fold-worker.ts",
};
beforeAll(() => bundleServer(ENTRIES, BUNDLES));
const children: ChildProcess[] = [];
afterAll(() => {
  for (const child of children) child.kill("SIGKILL");
});

async function startChild(file: string, folds: string): Promise<{ child: ChildProcess; url: string }> {
  const child = spawn(process.execPath, [join(BUNDLES, "kill-server.js"), file, CHECKPOINTS, folds], {
    cwd: ROOT,
    stdio: ["ignore", "pipe", "pipe"],
  });
  children.push(child);
  let said = "";
  child.stdout?.on("data", (chunk: Buffer) => {
    said += chunk.toString();
  });
  child.stderr?.on("data", (chunk: Buffer) => {
    said += chunk.toString();
  });
  const port = await eventually(`the server starts: ${said}`, () => /port (\d+)/.exec(said)?.[1], 60_000);
  return { child, url: `ws://127.0.0.1:${port}` };
}

/** Writes words until its socket is gone; remembers which of them have been called saved. */
class Typist {
  readonly client: RawClient;
  readonly words: string[] = [];
  private readonly key: string;
  private readonly timer: NodeJS.Timeout;
  /** Document messages that were sent before the first word. */
  private before = 0;

  constructor(url: string, plan: string, key: string) {
    this.key = key;
    this.client = new RawClient(url, { kind: "plan", key: plan }, { cookie: key });
    this.timer = setInterval(() => this.type(), 1);
  }
  private type(): void {
    if (this.client.closeCode !== undefined) clearInterval(this.timer);
    else if (this.client.heard.some((h) => h.kind === "step2")) this.burst();
  }
  private burst(): void {
    if (this.words.length === 0) this.before = this.client.sent;
    for (let i = 0; i < 3; i++) {
      const word = `${this.key}${this.words.length}`;
      this.words.push(word);
      this.client.edit((doc) => doc.getMap("words").set(word, true));
    }
  }
  get saved(): string[] {
    return this.words.slice(0, Math.max(0, this.client.savedCount - this.before));
  }
  /** Words of the other that reached this page. */
  heardOf(key: string): string[] {
    return [...this.client.doc.getMap("words").keys()].filter((word) => word.startsWith(key));
  }
  end(): void {
    clearInterval(this.timer);
    this.client.end();
  }
}

interface Outcome {
  readonly saved: number;
  readonly typed: number;
  readonly heard: number;
  readonly missing: readonly string[];
}

async function run(temp: TempDb, index: number): Promise<Outcome> {
  const plan = `run-${index}`;
  const { child, url } = await startChild(temp.file, FOLDS[index % LANES] ?? "here");
  const typists = ["a", "b"].map((key) => new Typist(url, plan, key));
  // The moment differs from run to run: between 1 and 100 words called saved.
  await eventually(
    "words are saved",
    () => typists.every((t) => t.saved.length >= 1 + Math.floor((index / RUNS) * 50) * 2),
    60_000,
  );
  child.kill("SIGKILL");
  await eventually("it is dead", () => child.signalCode === "SIGKILL");
  await Promise.all(typists.map((t) => t.client.closed()));
  const told = [
    ...typists.flatMap((t) => t.saved),
    ...(typists[0]?.heardOf("b") ?? []),
    ...(typists[1]?.heardOf("a") ?? []),
  ];
  const db = temp.open({ readOnly: true });
  const silent = () => undefined;
  const doc = loadDoc(db, `plan/${plan}`, { info: silent, warn: silent, error: silent })?.doc;
  const missing = told.filter((word) => doc?.getMap("words").has(word) !== true);
  db.close();
  for (const t of typists) t.end();
  return {
    saved: typists.reduce((sum, t) => sum + t.saved.length, 0),
    typed: typists.reduce((sum, t) => sum + t.words.length, 0),
    heard: told.length,
    missing,
  };
}

test(`kill -9, ${RUNS} of ${RUNS} runs: nothing that was called saved or sent on is missing`, {
  timeout: 600_000,
}, async () => {
  const outcomes: Outcome[] = [];
  const lane = async (first: number) => {
    const temp = tempDb();
    for (let i = first; i < RUNS; i += LANES) outcomes.push(await run(temp, i));
    temp.remove();
  };
  await Promise.all(Array.from({ length: LANES }, (_, i) => lane(i)));
  expect(outcomes.length).toBe(RUNS);
  expect(outcomes.flatMap((o) => o.missing)).toEqual([]);
  // Not vacuous: much was saved, and most kills caught words on their way.
  expect(outcomes.reduce((sum, o) => sum + o.saved, 0)).toBeGreaterThan(RUNS * 50);
  expect(outcomes.filter((o) => o.typed > o.saved).length).toBeGreaterThan(RUNS / 2);
});

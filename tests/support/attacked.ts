/**
 * A server under attack, seen from outside: how long requests wait meanwhile (measured from a separate thread), and
 * whether a writer next to the attacker keeps every word.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { rmSync } from "node:fs";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { expect } from "vitest";
import { planParts } from "#lib/doc/layout.ts";
import { bundleServer, ROOT } from "./bundle-server.ts";
import { eventually } from "./eventually.ts";
import { LONG } from "./long.ts";
import { RawClient } from "./raw-client.ts";

/** The server with its thread next to it, where it looks for it; one folder for each test process. */
const BUNDLES = join(ROOT, "dist-tests");
const ENTRIES = { "attack-server": "tests/support/attack-server.ts", "fold-worker": "server/doc-log/fold-worker.ts" };
/** Longest that anybody's request may wait. */
export const WAIT_MS = 500;
/** Other tests run at the same time, on as few as two processors. */
const MOST_RUNS = 5;
const PLAN = { kind: "plan", key: "p" } as const;

/** What the server prints when it starts. */
interface Said {
  /** For live documents, `ws://...`. */
  readonly url: string;
  /** For routes behind the gate, on the same thread. */
  readonly http: string;
  /** Of the studio's own pages. */
  readonly origin: string;
  /** For sockets, by person. */
  readonly sessions: Readonly<Record<string, string>>;
  /** For routes, by person. */
  readonly cookies: Readonly<Record<string, string>>;
  readonly pairingCode: string;
}

export interface Attacked extends Said {
  readonly child: ChildProcess;
  page(user: "ines" | "jonas" | "sam"): RawClient;
  /**
   * Runs the attack with a writer beside it, whose words are checked. Gives the longest wait of a request (ms): the least of
   * up to five runs, since what else the machine does may take half a second of one, and what the attack does is in all.
   * A long run has it written out.
   */
  under(attack: () => Promise<unknown>): Promise<number>;
  stop(): Promise<void>;
}

export async function startAttacked(): Promise<Attacked> {
  const outdir = join(BUNDLES, String(process.pid));
  await bundleServer(ENTRIES, outdir);
  const child = spawn(process.execPath, [join(outdir, "attack-server.js")], {
    cwd: ROOT,
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  for (const stream of [child.stdout, child.stderr]) stream?.on("data", (chunk) => (said += String(chunk)));
  const line = await eventually("the server starts", () => /^\{.*\}$/m.exec(said)?.[0], 60_000);
  const told = JSON.parse(line) as Said;
  const { url, sessions } = told;
  const clients: RawClient[] = [];
  const page: Attacked["page"] = (user) => {
    const client = new RawClient(url, PLAN, { cookie: sessions[user] ?? "" });
    clients.push(client);
    return client;
  };
  const once = async (attack: () => Promise<unknown>) => {
    const writer = await page("ines").synced();
    const before = writer.sent;
    const typing = setInterval(() => writer.edit((doc) => doc.getArray("words").push(["word"])), 10);
    const gap = await longestWait({ url: `${told.http}/api/health`, pid: child.pid }, attack);
    clearInterval(typing);
    await writer.saved(20_000);
    if (writer.closeCode !== undefined) throw new Error(`the writer was closed with ${writer.closeCode}`);
    const reader = await page("sam").synced();
    await eventually("every word is there", () => reader.doc.getArray("words").length >= writer.sent - before);
    return gap;
  };
  return {
    ...told,
    child,
    page,
    async under(attack) {
      let least = Number.POSITIVE_INFINITY;
      for (let run = 0; run < MOST_RUNS && least > WAIT_MS; run++) least = Math.min(least, await once(attack));
      if (LONG) console.info(`${least.toFixed(0)} ms: ${expect.getState().currentTestName}`);
      return least;
    },
    async stop() {
      for (const client of clients) client.end();
      child.kill("SIGKILL");
      await eventually("it is dead", () => child.signalCode === "SIGKILL");
      rmSync(outdir, { recursive: true, force: true });
    },
  };
}

/** The title as the server stores it, as a new page reads it. */
export const titleOf = (client: RawClient): string => planParts(client.doc).title.toString();

/**
 * A thread that asks again as soon as it is answered, so that this process's own work is not measured. What the server's thread
 * and this one stood in line for a processor is taken off, where the system tells (Linux, "schedstats": the second number of
 * /proc/PID/task/TID/schedstat, ns): on a busy machine that is most of a wait, and none of the attack's doing.
 */
const ASKER = `
const { parentPort, workerData } = require("node:worker_threads");
const { Agent, get } = require("node:http");
const { readFileSync } = require("node:fs");
const agent = new Agent({ keepAlive: true });
let longest = 0, asked = 0, over = false;
const lines = ["/proc/" + workerData.pid + "/task/" + workerData.pid, "/proc/thread-self"];
const stood = () => {
  try {
    return lines.reduce((ms, line) => ms + Number(readFileSync(line + "/schedstat", "utf8").split(" ")[1]) / 1e6, 0);
  } catch {
    return 0;
  }
};
const ask = () => {
  const from = performance.now() - stood();
  const done = () => {
    longest = Math.max(longest, performance.now() - stood() - from);
    asked++;
    if (over) { agent.destroy(); parentPort.postMessage({ longest, asked }); parentPort.close(); }
    else setTimeout(ask, 5);
  };
  get(workerData.url, { agent }, (answer) => answer.resume().on("end", done)).on("error", done);
};
ask();
parentPort.once("message", () => { over = true; });
`;

async function longestWait(asked: { url: string; pid: number | undefined }, attack: () => Promise<unknown>) {
  const asker = new Worker(ASKER, { eval: true, workerData: asked });
  const told = new Promise<{ longest: number }>((resolve, reject) => {
    asker.once("message", resolve);
    asker.once("error", reject);
  });
  try {
    await attack();
  } finally {
    asker.postMessage("over");
  }
  return (await told).longest;
}

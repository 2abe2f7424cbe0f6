/**
 * This program's sync server (signing in, storing, checking) against the y-websocket project's own (which does none of the
 * three), in one run, with the same pages. Prints a table; the target is a p99 of at most 1.25 times the stock server's.
 */
import { cpus } from "node:os";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import type { Ready } from "./child.ts";
import { bundleServers, KINDS, type Kind, startServer } from "./servers.ts";
import { quantile } from "./timing.ts";
import { Crowd, PLAN_KEY, type Where } from "./workload.ts";

const WARM_UP_MS = 1000;
const EDIT_EVERY_MS = 200;
const FLOOD_EACH = 20;
const TARGET = 1.25;

export interface SyncOptions {
  readonly rounds: number;
  readonly seconds: number;
  readonly writers: readonly number[];
}

interface Sample {
  readonly p50: number;
  readonly p99: number;
  /** Edits a second, when everybody types as fast as they can. */
  readonly flood: number;
  readonly rssMb: number;
  /** Share of one processor while typing at the usual pace. */
  readonly cpu: number;
}

function whereOf(kind: Kind, { port, cookies }: Ready): Where {
  const base = `ws://127.0.0.1:${port}`;
  if (kind === "stock") return { base, room: PLAN_KEY, params: {}, cookies: [] };
  const params = { d: String(PLAN_DOC_VERSION), e: String(EDITOR_VERSION) };
  return { base: `${base}/sync`, room: `plan/${PLAN_KEY}`, params, cookies };
}

async function measure(kind: Kind, writers: number, seconds: number): Promise<Sample> {
  const server = await startServer(kind, { writers, plans: 0 });
  try {
    const crowd = await Crowd.join(whereOf(kind, server.ready), writers);
    await crowd.typeFor(WARM_UP_MS, EDIT_EVERY_MS);
    const before = await server.cost();
    const latencies = await crowd.typeFor(seconds * 1000, EDIT_EVERY_MS);
    const after = await server.cost();
    const flood = await crowd.flood(FLOOD_EACH);
    crowd.end();
    const sorted = Float64Array.from(latencies).sort();
    return {
      p50: quantile(sorted, 0.5),
      p99: quantile(sorted, 0.99),
      flood,
      rssMb: after.rss / 1024 / 1024,
      cpu: (after.cpu - before.cpu) / (seconds * 1_000_000),
    };
  } finally {
    server.remove();
  }
}

function medianOf(samples: readonly Sample[]): Sample {
  const mid = (key: keyof Sample) => quantile(Float64Array.from(samples, (s) => s[key]).sort(), 0.5);
  return { p50: mid("p50"), p99: mid("p99"), flood: mid("flood"), rssMb: mid("rssMb"), cpu: mid("cpu") };
}

const COLUMNS = [
  "writers",
  "server",
  "p50 ms",
  "p99 ms",
  "p99 ratio",
  "edits/s",
  "receipts/s",
  "RSS MB",
  "CPU",
] as const;

function row(writers: number, kind: Kind, s: Sample, stock: Sample): string {
  const cells = [
    String(writers),
    kind,
    s.p50.toFixed(2),
    s.p99.toFixed(2),
    (s.p99 / stock.p99).toFixed(2),
    s.flood.toFixed(0),
    (s.flood * (writers - 1)).toFixed(0),
    s.rssMb.toFixed(0),
    `${(s.cpu * 100).toFixed(0)} %`,
  ];
  return cells.map((cell, i) => cell.padStart(COLUMNS[i] === "server" ? 12 : 10)).join(" ");
}

/** True when the target is met. */
export async function benchSync({ rounds, seconds, writers: sizes }: SyncOptions): Promise<boolean> {
  // Each y-websocket provider listens for the end of the process.
  process.setMaxListeners(0);
  await bundleServers();
  const kinds = KINDS;
  console.log(
    `${cpus().length} processors, Node ${process.version}; a plan of 30 items; every writer edits every ${EDIT_EVERY_MS} ms`,
  );
  console.log(
    `for ${seconds} s, then ${FLOOD_EACH} edits each as fast as they can; median of ${rounds} rounds, order alternating.`,
  );
  console.log(COLUMNS.map((name) => name.padStart(name === "server" ? 12 : 10)).join(" "));
  let worst = 0;
  for (const writers of sizes) {
    const samples = new Map<Kind, Sample[]>(kinds.map((kind) => [kind, []]));
    for (let round = 0; round < rounds; round++)
      for (const kind of round % 2 ? [...kinds].reverse() : kinds)
        samples.get(kind)?.push(await measure(kind, writers, seconds));
    const stock = medianOf(samples.get("stock") ?? []);
    for (const kind of kinds) console.log(row(writers, kind, medianOf(samples.get(kind) ?? []), stock));
    worst = Math.max(worst, medianOf(samples.get("own") ?? []).p99 / stock.p99);
  }
  const verdict = worst <= TARGET ? "met" : "missed";
  console.log(`Target: p99 at most ${TARGET} times the stock server's. Worst: ${worst.toFixed(2)}. ${verdict}.`);
  return worst <= TARGET;
}

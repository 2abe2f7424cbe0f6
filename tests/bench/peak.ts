/**
 * A thousand pages over two hundred plans, one time changed a second in each: this program's server, which signs people in,
 * stores and checks, against the y-websocket project's own, which does none of the three, in turns in one run.
 */
import { cpus } from "node:os";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import type { Measured, Wanted } from "./peak-load.ts";
import { answerOf, bundleServers, KINDS, type Kind, startBundle, startServer } from "./servers.ts";
import { quantile } from "./timing.ts";

export interface PeakOptions {
  readonly rounds: number;
  readonly seconds: number;
  readonly plans: number;
  readonly pages: number;
}
interface Sample extends Measured {
  /** Share of one processor, checking threads included. */
  readonly cpu: number;
  readonly rssMb: number;
}

/** Below what the gate lets one person have. */
const PAGES_OF_PERSON = 40;

/** Our own choice: ratios to the stock server, a share of a processor, bytes a second a page. */
const TARGETS = { p50: 2, p99: 5, cpu: 0.4, beyond: 1000 } as const;

async function measure(kind: Kind, { seconds, plans, pages }: PeakOptions): Promise<Sample> {
  const writers = Math.max(pages, Math.ceil((plans * pages) / PAGES_OF_PERSON));
  const server = await startServer(kind, { writers, plans });
  const load = startBundle("peak-load", []);
  try {
    const { port, cookies } = server.ready;
    const host = `ws://127.0.0.1:${port}`;
    const where =
      kind === "stock"
        ? { address: `${host}/`, query: "" }
        : { address: `${host}/sync/plan/`, query: `?d=${PLAN_DOC_VERSION}&e=${EDITOR_VERSION}` };
    load.send({ ...where, base: server.base, cookies, plans, pages, seconds } satisfies Wanted);
    await answerOf<"warm">(load);
    const before = await server.cost();
    load.send("measure");
    const measured = await answerOf<Measured>(load);
    const after = await server.cost();
    if (measured.edits === 0) throw new Error(`the ${kind} server sent no edit on`);
    const cpu = (after.cpu - before.cpu) / (seconds * 1_000_000);
    return { ...measured, cpu, rssMb: after.rss / 1024 / 1024 };
  } finally {
    load.kill();
    server.remove();
  }
}

function medianOf(samples: readonly Sample[]): Sample {
  const mid = (key: keyof Sample) => quantile(Float64Array.from(samples, (s) => s[key]).sort(), 0.5);
  const keys: readonly (keyof Sample)[] = ["p50", "p99", "edits", "missing", "beyond", "mostBeyond", "cpu", "rssMb"];
  return Object.fromEntries(keys.map((key) => [key, mid(key)])) as unknown as Sample; // every key of it
}

const COLUMNS = ["server", "p50 ms", "p99 ms", "missing", "CPU", "B/s beyond", "most", "RSS MB"] as const;
const cells = (values: readonly string[]) => values.map((value) => value.padStart(11)).join(" ");

const row = (kind: Kind, s: Sample): string =>
  cells([
    kind,
    s.p50.toFixed(2),
    s.p99.toFixed(2),
    s.missing.toFixed(0),
    `${(s.cpu * 100).toFixed(0)} %`,
    s.beyond.toFixed(0),
    s.mostBeyond.toFixed(0),
    s.rssMb.toFixed(0),
  ]);

/** True when every target is met. */
export async function benchPeak(options: PeakOptions): Promise<boolean> {
  const { rounds, seconds, plans, pages } = options;
  await bundleServers();
  console.log(
    `${cpus().length} processors, Node ${process.version}; ${plans} plans with ${pages} pages each, one change of`,
  );
  console.log(`a time a second in each; ${seconds} s; median of ${rounds} rounds, order alternating.`);
  console.log(cells(COLUMNS));
  const samples: Record<Kind, Sample[]> = { stock: [], own: [] };
  for (let round = 0; round < rounds; round++)
    for (const kind of round % 2 ? [...KINDS].reverse() : KINDS) samples[kind].push(await measure(kind, options));
  const [stock, own] = [medianOf(samples.stock), medianOf(samples.own)];
  console.log(row("stock", stock));
  console.log(row("own", own));
  const results = {
    p50: own.p50 / stock.p50,
    p99: own.p99 / stock.p99,
    cpu: own.cpu,
    beyond: own.beyond,
  };
  const words = Object.entries(TARGETS).map(([name, most]) => {
    const got = results[name as keyof typeof TARGETS];
    return `${name} ${got.toFixed(2)} of ${most}: ${got <= most ? "met" : "missed"}`;
  });
  console.log(`Ratios and shares against their targets: ${words.join("; ")}.`);
  return Object.entries(TARGETS).every(([name, most]) => results[name as keyof typeof TARGETS] <= most);
}

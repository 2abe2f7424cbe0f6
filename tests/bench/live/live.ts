/**
 * The live server compared with two others in the same run: the stock server, which has no sign-in, stores nothing and
 * checks nothing, and Hocuspocus, which stores a document some time later. Alternating rounds, medians, one table of ratios.
 */
import { cpus } from "node:os";
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { spread } from "../timing.ts";
import type { Said, Wanted } from "./load.ts";
import { answerOf, bundleServers, KINDS, type Kind, type Server, startBundle, startServer } from "./servers.ts";
import { type Row, showRows } from "./table.ts";
import type { Numbers, Sizes, Work } from "./work.ts";
import { WORKS } from "./works.ts";

export interface LiveOptions extends Sizes {
  readonly rounds: number;
  /** Names of works; all when empty. */
  readonly works: readonly string[];
}

async function measure(kind: Kind, work: Work, sizes: Sizes): Promise<Numbers> {
  const server = await startServer(kind, work.needs(sizes));
  const load = startBundle("load");
  try {
    const { port, cookies } = server.ready;
    const query = `?d=${PLAN_DOC_VERSION}&e=${EDITOR_VERSION}`;
    const { seconds, plans, pages } = sizes;
    const wanted: Wanted = {
      ...{ work: work.name, door: { kind, port, cookies, query }, baseFile: server.baseFile },
      ...{ seconds, plans, pages },
    };
    load.send(wanted);
    return await figuresOf(load, server);
  } finally {
    load.kill();
    server.remove();
  }
}

/** Answers the load's questions until it reports its figures. */
async function figuresOf(load: ReturnType<typeof startBundle>, server: Server): Promise<Numbers> {
  for (;;) {
    const said = await answerOf<Said>(load);
    if ("figures" in said) return said.figures;
    if ("failed" in said) throw new Error(said.failed);
    load.send(await server.cost(said.ask));
  }
}

type Samples = Readonly<Record<Kind, Numbers[]>>;

const medianOf = (samples: readonly Numbers[], key: string): number =>
  spread(samples.map((sample) => sample[key] ?? Number.NaN)).p50;

const rowsOf = (work: Work, samples: Samples): Row[] =>
  work.measures.map(({ key, label, target }) => ({
    label,
    stock: medianOf(samples.stock, key),
    hocuspocus: medianOf(samples.hocuspocus, key),
    own: medianOf(samples.own, key),
    ...(target ? { target } : {}),
  }));

/** True when every target is met. */
export async function benchLive({ rounds, works, ...sizes }: LiveOptions): Promise<boolean> {
  await bundleServers();
  console.log(
    `${cpus().length} processors, Node ${process.version}; ${sizes.plans} plans with ${sizes.pages} pages each where`,
  );
  console.log(`there are many; ${sizes.seconds} s; median of ${rounds} rounds, order turning.`);
  let met = true;
  for (const work of WORKS.filter(({ name }) => works.length === 0 || works.includes(name))) {
    const samples: Samples = { stock: [], hocuspocus: [], own: [] };
    for (let round = 0; round < rounds; round++)
      for (const kind of round % 2 ? [...KINDS].reverse() : KINDS) samples[kind].push(await measure(kind, work, sizes));
    console.log(`\n${work.label}`);
    if (!showRows(rowsOf(work, samples))) met = false;
  }
  return met;
}

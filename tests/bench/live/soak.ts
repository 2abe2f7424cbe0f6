/** The live server for half an hour: whether all copies of each document agree at the end, and whether memory is stable. */
import { EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { answerOf, bundleServers, type Server, startBundle, startServer } from "./servers.ts";
import type { SoakSaid, SoakWanted } from "./soak-load.ts";

const WRITERS = 100;
const PLANS = 40;
/** Share of the time after which memory must be stable: rooms are open and everything was done once. */
const SETTLED = 1 / 3;
const MiB = 1024 * 1024;
/** Allowed growth beyond the documents' own, which the load's copies show. Our own choice. */
const MOST_GROWTH = 20 * MiB;

interface Sample {
  readonly minute: number;
  readonly server: number;
  /** The size of one copy of every document, from the load's copies. */
  readonly documents: number;
}

async function sampleOf(said: { minute: number; used: number; edits: number }, server: Server): Promise<Sample> {
  const { used, rss } = await server.cost("used");
  const cells = [
    `minute ${String(said.minute).padStart(2)}`,
    `${said.edits} edits`,
    `server in use ${(used / MiB).toFixed(0)} MB`,
    `process ${(rss / MiB).toFixed(0)} MB`,
    `load in use ${(said.used / MiB).toFixed(0)} MB`,
  ];
  console.log(cells.join("; "));
  return { minute: said.minute, server: used, documents: (said.used * PLANS) / WRITERS };
}

/** How much the server grew beyond its documents once it had settled, bytes. */
function growthOf(samples: readonly Sample[]): number {
  const from = samples[Math.floor(samples.length * SETTLED)];
  const to = samples.at(-1);
  if (!from || !to) return 0;
  return to.server - from.server - Math.max(0, to.documents - from.documents);
}

/** True when all copies agree and memory is stable. */
export async function benchSoak(minutes: number): Promise<boolean> {
  await bundleServers();
  console.log(
    `${WRITERS} writers over ${PLANS} plans for ${minutes} minutes, one edit a second each; one leaves every five`,
  );
  console.log("seconds and comes back with what it wrote meanwhile.");
  const server = await startServer("own", { plans: PLANS, people: WRITERS });
  const load = startBundle("soak");
  const samples: Sample[] = [];
  try {
    const { port, cookies } = server.ready;
    const door = { kind: "own", port, cookies, query: `?d=${PLAN_DOC_VERSION}&e=${EDITOR_VERSION}` } as const;
    load.send({ door, writers: WRITERS, plans: PLANS, minutes } satisfies SoakWanted);
    for (;;) {
      const said = await answerOf<SoakSaid>(load);
      if ("failed" in said) throw new Error(said.failed);
      if ("minute" in said) samples.push(await sampleOf(said, server));
      else return verdict(said.apart, said.edits, growthOf(samples));
    }
  } finally {
    load.kill();
    server.remove();
  }
}

function verdict(apart: readonly string[], edits: number, growth: number): boolean {
  const isFlat = growth <= MOST_GROWTH;
  console.log(apart.length === 0 ? `After ${edits} edits every document is one.` : `Apart: ${apart.join(", ")}.`);
  console.log(
    `After a third of the time the server grew by ${(growth / MiB).toFixed(1)} MB beyond its documents; ` +
      `at most ${MOST_GROWTH / MiB}: ${isFlat ? "met" : "missed"}.`,
  );
  return apart.length === 0 && isFlat;
}

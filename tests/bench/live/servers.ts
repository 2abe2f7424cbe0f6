/**
 * The servers that are measured, each bundled and in a process of its own: the y-websocket project's stock server, in memory,
 * Hocuspocus with its SQLite extension, and this one with all that it does in production.
 */
import { type ChildProcess, fork, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import type { Cost, CostQuestion, Ready } from "./child.ts";
import { monthFileBeside, monthUpdate } from "./months.ts";
import { baseUpdate } from "./plans.ts";

const ROOT = join(import.meta.dirname, "../../..");
/** In the same depth as the built server, which looks for its checking threads next to itself. */
const BUNDLES = join(ROOT, "dist-bench");
const ENTRIES = {
  "stock-server": "tests/bench/live/stock-server.ts",
  "own-server": "tests/bench/live/own-server.ts",
  load: "tests/bench/live/load.ts",
  "month-page": "tests/bench/live/month-page.ts",
  soak: "tests/bench/live/soak-load.ts",
  "check-worker": "server/check/worker.ts",
  "fold-worker": "server/doc-log/fold-worker.ts",
  "checkpoint-worker": "db/file/checkpoint-worker.mjs",
};
/** Packages of their own, beside which the bundle lies. */
const PEERS = join(ROOT, "tests/bench/peers");
const PEER_ENTRIES = { "hocuspocus-server": "tests/bench/live/hocuspocus-server.ts" };

export const KINDS = ["stock", "hocuspocus", "own"] as const;
export type Kind = (typeof KINDS)[number];

export interface Needs {
  readonly plans: number;
  /** How many people have an account and a session. */
  readonly people: number;
}

export interface Server {
  readonly ready: Ready;
  /** File of the update that every plan begins with. */
  readonly baseFile: string;
  cost(question: CostQuestion): Promise<Cost>;
  remove(): void;
}

export async function bundleServers(): Promise<void> {
  const how = { bundle: true, packages: "external", platform: "node", format: "esm", absWorkingDir: ROOT } as const;
  await build({ entryPoints: ENTRIES, outdir: BUNDLES, ...how });
  installPeers();
  await build({ entryPoints: PEER_ENTRIES, outdir: join(PEERS, "dist"), ...how });
}

/** Packages that ask for a newer Node than this project stay out of its own `npm ci`: the bench gets them when it first runs. */
function installPeers(): void {
  if (existsSync(join(PEERS, "node_modules"))) return;
  const { status } = spawnSync("npm", ["ci"], { cwd: PEERS, stdio: "inherit" });
  if (status !== 0) throw new Error(`The servers to compare with could not be installed. Run npm ci in ${PEERS}.`);
}

/** Starts one of the bundles; it is gone with this process. */
export function startBundle(
  name: keyof typeof ENTRIES | keyof typeof PEER_ENTRIES,
  args: readonly string[] = [],
): ChildProcess {
  const how = { cwd: ROOT, env: { ...process.env, NODE_ENV: "production" as const }, execArgv: ["--expose-gc"] };
  return fork(join(name in PEER_ENTRIES ? join(PEERS, "dist") : BUNDLES, `${name}.js`), args, how);
}

export async function startServer(kind: Kind, { plans, people }: Needs): Promise<Server> {
  const folder = mkdtempSync(join(tmpdir(), "springline-bench-"));
  const baseFile = join(folder, "base.update");
  writeFileSync(baseFile, baseUpdate());
  writeFileSync(monthFileBeside(baseFile), monthUpdate(Date.now()));
  const child = startBundle(`${kind}-server`, [folder, String(people), String(plans), baseFile]);
  const ready = await answerOf<Ready>(child);
  return {
    ready,
    baseFile,
    cost: (question) => {
      child.send(question);
      return answerOf<Cost>(child);
    },
    remove: () => {
      child.kill("SIGKILL");
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The next message of a child. Rejects when the child ends instead. */
export function answerOf<T>(child: ChildProcess): Promise<T> {
  return new Promise((resolve, reject) => {
    const ended = () => reject(new Error("a measured process ended by itself"));
    child.once("exit", ended);
    child.once("message", (message) => {
      child.off("exit", ended);
      resolve(message as T); // what the bundles of this folder send
    });
  });
}

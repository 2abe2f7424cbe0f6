/** The two servers that are measured, each bundled and in a process of its own: the stock y-websocket server and this one. */
import { type ChildProcess, fork } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import * as Y from "yjs";
import { createPlanDoc } from "#lib/doc/create.ts";
import type { Cost, Ready } from "./child.ts";
import { peakPlan } from "./workload.ts";

const ROOT = join(import.meta.dirname, "../..");
/** As deep as the built server, which looks for its checking threads beside itself. */
const BUNDLES = join(ROOT, "dist-bench");
const ENTRIES = {
  "stock-server": "tests/bench/stock-server.ts",
  "own-server": "tests/bench/own-server.ts",
  "peak-load": "tests/bench/peak-load.ts",
  "check-worker": "server/check/worker.ts",
};

export type Kind = "stock" | "own";
export const KINDS: readonly Kind[] = ["stock", "own"];

export interface Size {
  /** How many people have an account and a session. */
  readonly writers: number;
  /** How many plans there are beside the one that all share. */
  readonly plans: number;
}

export interface Server {
  readonly ready: Ready;
  /** File of the update that every plan of the busy hour begins with. */
  readonly base: string;
  cost(): Promise<Cost>;
  remove(): void;
}

export async function bundleServers(): Promise<void> {
  const how = { bundle: true, packages: "external", platform: "node", format: "esm" } as const;
  await build({ absWorkingDir: ROOT, entryPoints: ENTRIES, outdir: BUNDLES, ...how });
}

/** Starts one of the bundles; it is gone with this process. */
export function startBundle(name: keyof typeof ENTRIES, args: readonly string[]): ChildProcess {
  return fork(join(BUNDLES, `${name}.js`), args, { cwd: ROOT, env: { ...process.env, NODE_ENV: "production" } });
}

export async function startServer(kind: Kind, { writers, plans }: Size): Promise<Server> {
  const folder = mkdtempSync(join(tmpdir(), "springline-bench-"));
  const base = join(folder, "base.update");
  writeFileSync(base, Y.encodeStateAsUpdate(createPlanDoc(peakPlan(), { carry: true })));
  const child = startBundle(`${kind}-server`, [folder, String(writers), String(plans), base]);
  const ready = await answerOf<Ready>(child);
  return {
    ready,
    base,
    cost: () => {
      child.send("cost");
      return answerOf<Cost>(child);
    },
    remove: () => {
      child.kill("SIGKILL");
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The next thing that a child says. Rejects when it ends instead. */
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

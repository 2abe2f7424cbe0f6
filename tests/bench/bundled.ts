/** Measures arithmetic as it is shipped: bundled, in its own process. */
import { fork } from "node:child_process";
import { join } from "node:path";
import { build } from "esbuild";

const ROOT = join(import.meta.dirname, "../..");

/** Runs one file of this folder. True when all of its targets are met. */
export async function benchBundled(name: "arithmetic" | "check" | "cues" | "find" | "month"): Promise<boolean> {
  const entry = join(import.meta.dirname, `${name}.ts`);
  const bundle = join(ROOT, `node_modules/.cache/springline-bench/${name}.mjs`);
  const how = { bundle: true, packages: "external", platform: "node", format: "esm" } as const;
  await build({ entryPoints: [entry], outfile: bundle, ...how });
  const child = fork(bundle, { cwd: ROOT, env: { ...process.env, NODE_ENV: "production" } });
  return new Promise((resolve) => child.once("exit", (code) => resolve(code === 0)));
}

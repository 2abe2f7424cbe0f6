/** Arithmetic is measured as it is shipped, bundled, in a process of its own. */
import { fork } from "node:child_process";
import { join } from "node:path";
import { build } from "esbuild";

const ROOT = join(import.meta.dirname, "../..");

/** Runs one file of this folder. True when all its targets are met. */
export async function benchBundled(name: "arithmetic" | "check" | "cues"): Promise<boolean> {
  const entry = join(import.meta.dirname, `${name}.ts`);
  const bundle = join(ROOT, `node_modules/.cache/springline-bench/${name}.mjs`);
  const how = { bundle: true, packages: "external", platform: "node", format: "esm" } as const;
  await build({ entryPoints: [entry], outfile: bundle, ...how });
  const child = fork(bundle, { cwd: ROOT, env: { ...process.env, NODE_ENV: "production" } });
  return new Promise((resolve) => child.once("exit", (code) => resolve(code === 0)));
}

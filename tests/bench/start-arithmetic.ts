/** The arithmetic is measured as it is shipped, bundled, in a process of its own. */
import { fork } from "node:child_process";
import { join } from "node:path";
import { build } from "esbuild";

const ROOT = join(import.meta.dirname, "../..");
const BUNDLE = join(ROOT, "node_modules/.cache/springline-bench/arithmetic.mjs");

/** True when all its targets are met. */
export async function benchArithmetic(): Promise<boolean> {
  const entry = join(import.meta.dirname, "arithmetic.ts");
  const how = { bundle: true, packages: "external", platform: "node", format: "esm" } as const;
  await build({ entryPoints: [entry], outfile: BUNDLE, ...how });
  const child = fork(BUNDLE, { cwd: ROOT, env: { ...process.env, NODE_ENV: "production" } });
  return new Promise((resolve) => child.once("exit", (code) => resolve(code === 0)));
}

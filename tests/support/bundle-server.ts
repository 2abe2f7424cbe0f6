/** A server of the tests as one file but for the native parts: its start is most of what such a test costs. */
import { join } from "node:path";
import { build } from "esbuild";

export const ROOT = join(import.meta.dirname, "../..");
/** What is bundled may still ask for a CommonJS package. */
const banner = { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' };
const external = ["better-sqlite3", "bufferutil", "utf-8-validate"];

/** `entries`: name of the bundle to its source, seen from the project's folder. */
export async function bundleServer(entries: Readonly<Record<string, string>>, outdir: string): Promise<void> {
  const how = { bundle: true, platform: "node", format: "esm", external, banner } as const;
  await build({ absWorkingDir: ROOT, entryPoints: { ...entries }, outdir, ...how });
}

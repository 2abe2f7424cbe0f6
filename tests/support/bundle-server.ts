/** Bundles a test server into one file, native parts excepted, since starting it is most of the cost of such a test. */
import { join } from "node:path";
import { build } from "esbuild";

export const ROOT = join(import.meta.dirname, "../..");
/** The bundle may still require a CommonJS package. */
const banner = { js: 'import { createRequire } from "node:module"; const require = createRequire(import.meta.url);' };
const external = ["better-sqlite3", "bufferutil", "utf-8-validate"];

/**
 * `entries`: from the bundle's name to its source, relative to the project's folder. `packages: "external"`: every package
 * stays outside, as in the program's own bundle.
 */
export async function bundleServer(
  entries: Readonly<Record<string, string>>,
  outdir: string,
  packages: "bundle" | "external" = "bundle",
): Promise<void> {
  const own = packages === "bundle" ? { external, banner } : { packages };
  const how = { bundle: true, platform: "node", format: "esm", ...own } as const;
  await build({ absWorkingDir: ROOT, entryPoints: { ...entries }, outdir, ...how });
}

/**
 * Stands in for `server/worker-threads/thread-file.ts` in vitest (see its config): the program of a thread is bundled once for each
 * test process. Run from its source through a loader, as it is where nothing is built, each thread takes a second to start.
 */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { buildSync } from "esbuild";

const ROOT = join(import.meta.dirname, "../..");
/** Beside `server/`, so that relative paths in the sources still lead somewhere. */
const folder = join(ROOT, `dist-threads-${process.pid}`);
const made = new Set<string>();

function bundledThread(name: string, source: string) {
  const file = join(folder, `${name}.js`);
  const from = join(ROOT, "server", source);
  if (made.size === 0) process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
  if (!made.has(name)) {
    const how = { bundle: true, platform: "node", format: "esm", packages: "external", logLevel: "error" } as const;
    buildSync({ absWorkingDir: ROOT, entryPoints: [from], outfile: file, ...how });
    made.add(name);
  }
  return { file, built: true, source: pathToFileURL(from).href };
}

export { bundledThread as threadFile };

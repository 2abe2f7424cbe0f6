/**
 * Stands in for `server/worker-threads/thread-file.ts` in vitest (see its config): the program of a thread is bundled once for each
 * test process. Run from its source through a loader, as it is where nothing is built, each thread takes a second to start.
 */
import { renameSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { buildSync } from "esbuild";

const ROOT = join(import.meta.dirname, "../..");
const folder = join(ROOT, "dist-tests/threads");
const made = new Set<string>();

function bundledThread(name: string, source: string) {
  const file = join(folder, `${name}.js`);
  const from = join(ROOT, "server", source);
  if (!made.has(name)) {
    const how = { bundle: true, platform: "node", format: "esm", packages: "external", logLevel: "error" } as const;
    const own = `${file}.${process.pid}`;
    buildSync({ absWorkingDir: ROOT, entryPoints: [from], outfile: own, ...how });
    // Another process may make, or start, the same.
    renameSync(own, file);
    made.add(name);
  }
  return { file, built: true, source: pathToFileURL(from).href };
}

export { bundledThread as threadFile };

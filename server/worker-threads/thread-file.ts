/** Where the program of a thread is: next to the server's bundle, or its source when nothing is built. */
import { existsSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

export interface ThreadFile {
  readonly file: string;
  readonly built: boolean;
  /** To be passed as `workerData.source`: what `thread-from-source.mjs` runs when nothing is built. */
  readonly source: string;
}

/** `name` is the built file (`server/build.mjs`), `source` the path of its source from `server/`. */
export function threadFile(name: string, source: string): ThreadFile {
  const built = join(import.meta.dirname, `${name}.js`);
  const fromSource = join(import.meta.dirname, "thread-from-source.mjs");
  const isBuilt = existsSync(built);
  const file = isBuilt ? built : fromSource;
  return { file, built: isBuilt, source: pathToFileURL(join(import.meta.dirname, "..", source)).href };
}

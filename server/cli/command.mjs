/**
 * `npm run -s NAME -- ...`: runs `server/cli/NAME.ts`. It is bundled into `dist-commands/` and reused until one of its
 * sources changes: compiling it each time would take a second, and the plan command is called for many files in a row.
 */
import { existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

// The bundle's folder is next to `server/`, so that relative paths in the sources still work.
const root = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
const kept = join(root, "dist-commands");

const [name = "", ...words] = process.argv.slice(2);
const source = join(root, "server", "cli", `${name}.ts`);
process.argv = [process.argv[0], source, ...words];
if (isFresh() || (await made())) await import(pathToFileURL(bundle()).href);
else await compiledOnce();

function bundle() {
  return join(kept, `${name}.js`);
}

function madeOf() {
  return join(kept, `${name}.json`);
}

/** Whether every source is as it was when the bundle was made. */
function isFresh() {
  if (!existsSync(bundle()) || !existsSync(madeOf())) return false;
  const marks = JSON.parse(readFileSync(madeOf(), "utf8"));
  return Object.entries(marks).every(([path, mark]) => markOf(join(root, path)) === mark);
}

function markOf(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  return stat ? `${stat.mtimeMs} ${stat.size}` : "gone";
}

/** Makes the bundle. False when this account may not write it. */
async function made() {
  const { build } = await import("esbuild");
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    entryPoints: [source],
    outfile: bundle(),
    bundle: true,
    format: "esm",
    platform: "node",
    target: "node20.19",
    packages: "external",
    sourcemap: "inline",
    metafile: true,
    write: false,
    logLevel: "warning",
  });
  const paths = [...Object.keys(metafile.inputs), "package-lock.json"];
  const marks = Object.fromEntries(paths.map((path) => [path, markOf(join(root, path))]));
  try {
    mkdirSync(kept, { recursive: true });
    // The bundle before its marks; two commands that start at once write the same files.
    replace(bundle(), outputFiles[0].contents);
    replace(madeOf(), JSON.stringify(marks));
    return true;
  } catch {
    return false;
  }
}

async function compiledOnce() {
  const { tsImport } = await import("tsx/esm/api");
  await tsImport(pathToFileURL(source).href, import.meta.url);
}

function replace(path, content) {
  const beside = `${path}.${process.pid}`;
  writeFileSync(beside, content);
  renameSync(beside, path);
}

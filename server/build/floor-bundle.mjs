/**
 * Bundles the floor's page: an entry, the screens of a class as a second part, styles and fonts, each named by its content,
 * and `parts.json`, the list of parts for the page's HTML.
 */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { build, context } from "esbuild";

const ENTRY = "app/floor/_page/entry.tsx";

/** The esbuild settings; the bench uses them to bundle screens separately. */
export const bundleSettings = (root, out, dev) => ({
  absWorkingDir: root,
  entryPoints: [ENTRY],
  outdir: out,
  entryNames: "[name]-[hash]",
  chunkNames: "[name]-[hash]",
  assetNames: "[name]-[hash]",
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "browser",
  target: ["chrome111", "firefox111", "safari16.4"],
  jsx: "automatic",
  minify: !dev,
  sourcemap: dev ? "inline" : false,
  define: { "process.env.NODE_ENV": dev ? '"development"' : '"production"' },
  loader: { ".woff2": "file", ".woff": "file" },
  metafile: true,
  logLevel: "warning",
  plugins: [{ name: "parts", setup: ({ onEnd }) => onEnd(({ metafile }) => metafile && writeParts(out, metafile)) }],
});

/** @param pages the folder of the built pages; the floor is written to its subfolder `floor` */
export async function bundleFloor(root, pages) {
  const out = join(pages, "floor");
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  await build(bundleSettings(root, out, false));
}

/** For development: the same in `floor-dev`, rebuilt whenever a source changes. */
export async function watchFloor(root, pages) {
  const out = join(pages, "floor-dev");
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  const watching = await context(bundleSettings(root, out, true));
  await watching.rebuild();
  await watching.watch();
}

function writeParts(out, { outputs }) {
  const files = Object.entries(outputs);
  const [entry] = files.find(([, { entryPoint }]) => entryPoint === ENTRY) ?? [];
  const scripts = closure(outputs, entry);
  const named = (ending) => files.map(([path]) => path).filter((path) => path.endsWith(ending));
  const later = named(".js").filter((path) => !scripts.includes(path));
  // The entry's own styles come first: those of later screens may override them.
  const own = outputs[entry].cssBundle;
  const styles = named(".css").sort((a, b) => Number(b === own) - Number(a === own));
  const parts = { scripts: scripts.map(base), later: later.map(base), styles: styles.map(base) };
  writeFileSync(join(out, "parts.json"), JSON.stringify(parts));
}

const base = (path) => basename(path);

/** A script and everything that it imports statically. */
function closure(outputs, entry) {
  const all = new Set([entry]);
  for (const path of all) {
    for (const { path: to, kind } of outputs[path].imports) if (kind === "import-statement") all.add(to);
  }
  return [...all];
}

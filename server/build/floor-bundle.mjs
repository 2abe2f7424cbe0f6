/**
 * Bundles the floor's page: an entry, the screens of a class as a second piece, styles and type, each named by what is in
 * it; and `parts.json`, which tells the page's HTML what there is.
 */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { build, context } from "esbuild";

const ENTRY = "app/floor/_page/entry.tsx";

/** How the floor is bundled, for whoever bundles its screens apart. */
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

/** @param pages the folder of the built pages: the floor's lie in `floor` under it */
export async function bundleFloor(root, pages) {
  const out = join(pages, "floor");
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  await build(bundleSettings(root, out, false));
}

/** The same while somebody works on it, in `floor-dev`: made anew whenever a source changes. */
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
  // The entry's own styles first: those of the later screens may build on them.
  const own = outputs[entry].cssBundle;
  const styles = named(".css").sort((a, b) => Number(b === own) - Number(a === own));
  const parts = { scripts: scripts.map(base), later: later.map(base), styles: styles.map(base) };
  writeFileSync(join(out, "parts.json"), JSON.stringify(parts));
}

const base = (path) => basename(path);

/** A script and all that it imports before it runs. */
function closure(outputs, entry) {
  const all = new Set([entry]);
  for (const path of all) {
    for (const { path: to, kind } of outputs[path].imports) if (kind === "import-statement") all.add(to);
  }
  return [...all];
}

/**
 * `npm run build`: the pages by Next, the floor's own page, then the server and the demo's seed as plain JavaScript in
 * `dist/`. Packages stay outside the bundle, since some must exist only once and are shared with Next's bundle.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { compressParts } from "./build/compress-parts.mjs";
import { bundleFloor } from "./build/floor-bundle.mjs";
import { namePlanParts } from "./build/plan-parts.mjs";

const root = resolve(dirname(fileURLToPath(import.meta.url)), "..");

/** The output folders, `.next` and `dist`; or `.next-x` and `dist-x` for a second build (SPRINGLINE_DIST=.next-x). */
export function outputs() {
  const pages = process.env.SPRINGLINE_DIST ?? ".next";
  return { pages: join(root, pages), server: join(root, pages.replace(/^\.next/, "dist")) };
}

/** Builds everything; throws when a step fails. */
export async function buildAll() {
  // Taken before anything is read, so that a file saved during the build counts as newer.
  const begun = Date.now();
  const { pages, server } = outputs();
  rmSync(server, { recursive: true, force: true });
  buildPages();
  // Slow, and done on other cores: it runs alongside the rest.
  const compressed = compressParts(join(pages, "static"));
  await namePlanParts(pages);
  await bundleFloor(root, pages);
  await build({
    absWorkingDir: root,
    entryPoints: {
      main: "server/main.ts",
      seed: "seed/run.ts",
      "check-worker": "server/check/worker.ts",
      "fold-worker": "server/doc-log/fold-worker.ts",
      "fill-worker": "server/month-fill/fill-worker.ts",
      "backup-worker": "server/backup/backup-worker.ts",
      "copy-worker": "server/backup/copy-worker.ts",
      "export-worker": "server/studio-files/export-worker.ts",
      "checkpoint-worker": "db/file/checkpoint-worker.mjs",
    },
    outdir: server,
    bundle: true,
    splitting: true,
    chunkNames: "[name]-[hash]",
    format: "esm",
    platform: "node",
    target: "node20.19",
    packages: "external",
    sourcemap: true,
    logLevel: "warning",
  });
  await compressed;
  mkdirSync(server, { recursive: true });
  writeFileSync(join(server, "built-at"), String(begun));
}

function buildPages() {
  const next = join(root, "node_modules", "next", "dist", "bin", "next");
  const env = { ...process.env, NODE_ENV: "production", NEXT_TELEMETRY_DISABLED: "1" };
  const { status } = spawnSync(process.execPath, [next, "build"], { cwd: root, stdio: "inherit", env });
  if (status !== 0) throw new Error("The pages could not be built; the reason is printed above.");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    await buildAll();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
}

/**
 * `npm start` and `npm run demo`: builds when there is no build or a source is newer than it, then runs the server with
 * the same arguments (see main.ts).
 */
import { spawn } from "node:child_process";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { buildAll, outputs } from "./build.mjs";

const root = resolve(dirname(fileURLToPath(import.meta.url)), "..");
const SOURCES = ["app", "db", "lib", "public", "seed", "server", "next.config.ts", "package.json", "package-lock.json"];

try {
  if (isStale()) {
    console.log("Building; this takes about a minute the first time.");
    await buildAll();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
run();

function isStale() {
  const { pages, server } = outputs();
  const stamp = join(server, "built-at");
  if (!existsSync(stamp) || !existsSync(join(server, "main.js")) || !existsSync(join(pages, "BUILD_ID"))) return true;
  const builtAt = Number(readFileSync(stamp, "utf8"));
  return SOURCES.some((source) => newestUnder(join(root, source)) > builtAt);
}

/** The last change of a file, or of anything in a folder (ms); a folder's own time changes when files are removed. */
function newestUnder(path) {
  if (!existsSync(path)) return 0;
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  const inside = readdirSync(path).map((name) => newestUnder(join(path, name)));
  return Math.max(stat.mtimeMs, ...inside);
}

/** In a child process: signals are passed on to it, and this process ends with it. */
function run() {
  const args = [join(outputs().server, "main.js"), ...process.argv.slice(2)];
  const env = { ...process.env, NODE_ENV: "production", NEXT_TELEMETRY_DISABLED: "1" };
  const child = spawn(process.execPath, ["--enable-source-maps", ...args], { cwd: root, stdio: "inherit", env });
  for (const signal of ["SIGINT", "SIGTERM"]) process.on(signal, () => child.kill(signal));
  child.on("exit", (code, signal) => process.exit(code ?? (signal ? 1 : 0)));
}

/**
 * `npm run test:near [-- REVISION]`: format, lint and types, then the vitest tests that import a file changed since
 * REVISION (where this branch left `main`, unless it is named). It opens no browser: what only a screen shows is left to
 * `npm test`. A change to what every test is made with runs them all.
 */
import { spawnSync } from "node:child_process";
import { join } from "node:path";

const bin = (name) => join("node_modules", ".bin", name);
const git = (...args) => {
  const { status, stdout } = spawnSync("git", args, { encoding: "utf8" });
  return status === 0 ? stdout.trim() : undefined;
};

const asked = process.argv[2];
const since = asked
  ? git("rev-parse", "--verify", `${asked}^{commit}`)
  : (git("merge-base", "HEAD", "main") ?? git("rev-parse", "HEAD"));
if (!since) {
  console.error(asked ? `There is no revision ${asked} here.` : "This is no git repository: run npm test.");
  process.exit(1);
}
const changed = [git("diff", "--name-only", since), git("ls-files", "--others", "--exclude-standard")]
  .flatMap((names) => names?.split("\n") ?? [])
  .filter(Boolean);
console.log(`${changed.length} files changed since ${since.slice(0, 8)}.`);
const OF_ALL = /^(package(-lock)?\.json|tsconfig\.json|vitest\.config\.ts|tests\/setup\.ts)$/;
const which = changed.some((name) => OF_ALL.test(name)) ? [] : ["--changed", since, "--passWithNoTests"];

const steps = [
  ["biome", "check", "--error-on-warnings", "."],
  ["tsc", "--noEmit"],
  ["vitest", "run", ...which],
];
const held = steps.map(([name, ...args]) => spawnSync(bin(name), args, { stdio: "inherit" }).status === 0);
if (changed.some((name) => name.startsWith("app/")))
  console.log("Screens changed: run npm test before you hand it on.");
process.exit(held.every(Boolean) ? 0 : 1);

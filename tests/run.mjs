/**
 * `npm test`: formatting and types; then the vitest tests that wait for sockets, processes and disks, with the build
 * beside them; then the browser tests. The rest of vitest begins when the build has ended, and goes on beside both. The last
 * line sums them up. `--long` runs the heavy counts whole (see support/long.ts). Gets itself a Chromium when the machine has none.
 */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { constants, setPriority, tmpdir } from "node:os";
import { join } from "node:path";
import { findChromium } from "./support/chromium.mjs";
import { playwrightFailures, vitestFailures } from "./support/failures.mjs";

const out = mkdtempSync(join(tmpdir(), "springline-tests-"));
const env = { ...process.env, NEXT_TELEMETRY_DISABLED: "1" };
const long = process.argv.includes("--long");
if (long) env.SPRINGLINE_LONG = "1";
let passed = 0;
let failed = 0;
/** What failed, in words: said once more at the end, since the output above is long. */
const failures = [];
const lengths = [];

/** In groups of two to four minutes, the most telling first. */
const WHILE_THERE_IS_TIME = [
  ["keep", "find", "help", "formats"],
  ["first-hour", "month-story", "month-focus", "record", "newer-version"],
  ["proposals", "kept-words", "threads", "month-fill", "paper", "findings"],
  ["accessibility", "keys", "reflow", "body-map"],
  ["safeguards", "back-to-plan", "several-screens", "feeds"],
  ["fit-and-order", "library", "whole-class", "looking-back", "hands"],
  ["floor-geometry", "tracks", "standards", "plates", "load", "paste", "acts"],
];
/** Since the start; while vitest goes on beside the browsers, both take longer. */
const LAST_BEGIN_MS = 13 * 60_000;
const LAST_BEGIN_BESIDE_MS = 11 * 60_000;
let vitestIsDone = false;

const bin = (name) => join("node_modules", ".bin", name);
const run = (command, args, extra = {}) =>
  spawnSync(command, args, { stdio: "inherit", env: { ...env, ...extra } }).status === 0;

/** Runs beside others: what it prints is kept until it has ended. `yields`: it takes only the time that others leave. */
function beside(command, args, { yields = false } = {}) {
  const child = spawn(command, args, { env, stdio: ["ignore", "pipe", "pipe"] });
  if (yields && child.pid) setPriority(child.pid, constants.priority.PRIORITY_BELOW_NORMAL);
  const said = [];
  for (const stream of [child.stdout, child.stderr]) stream.on("data", (chunk) => said.push(chunk));
  return new Promise((done) => {
    child.once("error", (error) => done({ held: false, said: String(error) }));
    child.once("close", (code) => done({ held: code === 0, said: Buffer.concat(said).toString() }));
  });
}

/** Runs in the foreground without keeping what goes on beside it from being heard. */
function along(command, args, extra = {}) {
  const child = spawn(command, args, { stdio: "inherit", env: { ...env, ...extra } });
  return new Promise((done) => {
    child.once("error", () => done(false));
    child.once("close", (code) => done(code === 0));
  });
}

async function timed(name, work) {
  const from = performance.now();
  const answer = await work();
  lengths.push(`${name} ${Math.round((performance.now() - from) / 1000)} s`);
  return answer;
}

function fail(why) {
  failed++;
  failures.push(`  ${why}`);
}

/** A step that either holds or does not: counts as one test. */
function count(name, held) {
  if (held) passed++;
  else fail(`${name}: see above`);
}

function addVitest(name, file, held) {
  if (!existsSync(file)) {
    fail(`${name}: ended without a report`);
    return;
  }
  const report = JSON.parse(readFileSync(file, "utf8"));
  passed += report.numPassedTests;
  failed += report.numFailedTests;
  const found = vitestFailures(report);
  failures.push(...found);
  if (held || report.numFailedTests > 0) return;
  if (found.length > 0) failed += found.length;
  else fail(`${name}: every test passed, and vitest ended with an error`);
}

function addPlaywright(file, held) {
  if (!existsSync(file)) {
    fail("browser: ended without a report");
    return;
  }
  const report = JSON.parse(readFileSync(file, "utf8"));
  const { expected, unexpected, flaky } = report.stats;
  passed += expected;
  failed += unexpected + flaky;
  failures.push(...playwrightFailures(report));
  if (!held && unexpected + flaky === 0) fail("browser: every test passed, and Playwright ended with an error");
}

/**
 * The proxies of README.md, which the fault tests start. Without them those tests read the settings only, and say so. Not where a
 * service manager would start a web server that nobody asked for.
 */
function ensureProxies() {
  const isThere = (name) => ["/usr/sbin", "/usr/local/sbin", "/usr/bin"].some((dir) => existsSync(join(dir, name)));
  const missing = [!isThere("nginx") && "nginx-light", !isThere("haproxy") && "haproxy"].filter(Boolean);
  if (missing.length === 0 || process.getuid?.() !== 0 || !existsSync("/usr/bin/apt-get")) return;
  if (existsSync("/run/systemd/system")) return;
  console.log(`Installing ${missing.join(" and ")} for the tests of the proxy blocks.`);
  const quietly = { DEBIAN_FRONTEND: "noninteractive" };
  const install = () => run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...missing], quietly);
  if (!install() && run("apt-get", ["update", "-qq"])) install();
}

function ensureChromium() {
  if (findChromium()) return true;
  console.log("No Chromium found; installing one.");
  const asRoot = process.getuid?.() === 0;
  if (asRoot && existsSync("/usr/bin/apt-get")) {
    run("apt-get", ["update", "-qq"]);
    const quietly = { DEBIAN_FRONTEND: "noninteractive" };
    if (!run("apt-get", ["install", "-y", "-qq", "chromium-headless-shell"], quietly))
      run("apt-get", ["install", "-y", "-qq", "chromium"], quietly);
  }
  if (!findChromium()) run(bin("playwright"), ["install", "chromium"]);
  if (findChromium()) return true;
  console.error(
    "No Chromium could be installed. Install one (Debian: apt-get install chromium), or set SPRINGLINE_CHROMIUM to its path, and run npm test again.",
  );
  return false;
}

/**
 * The browser files in the order in which they are run. The last ones are begun only while there is time: a machine half as fast
 * as the one that this is measured on would take more than twenty minutes, and says by name what it did not run.
 */
function browserFiles() {
  const all = readdirSync("tests/browser").filter((name) => name.endsWith(".spec.ts"));
  const first = all.filter((name) => !WHILE_THERE_IS_TIME.flat().includes(name.replace(".spec.ts", "")));
  return [first, ...WHILE_THERE_IS_TIME.map((names) => names.map((name) => `${name}.spec.ts`))];
}

async function browse() {
  const left = [];
  for (const [n, files] of browserFiles().entries()) {
    const isTime = performance.now() < (vitestIsDone ? LAST_BEGIN_MS : LAST_BEGIN_BESIDE_MS);
    if (n > 0 && !long && !isTime) {
      left.push(...files);
      continue;
    }
    const report = join(out, `browser-${n}.json`);
    const paths = files.map((name) => `tests/browser/${name}`);
    addPlaywright(report, await along(bin("playwright"), ["test", ...paths], { SPRINGLINE_JSON_REPORT: report }));
  }
  if (left.length > 0)
    console.log(`\nNOT RUN, for want of time on this machine: ${left.join(", ")}. npm run test:long runs them.`);
}

console.log("\n== lint, style sheets, types, exports that nobody needs");
const CHECKS = [
  ["biome", "check", "--error-on-warnings", "."],
  ["stylelint", "app/**/*.css"],
  ["tsc", "--noEmit"],
  ["knip", "--no-progress"],
];
const checks = await timed("checks", () => Promise.all(CHECKS.map(([name, ...args]) => beside(bin(name), args))));
for (const [n, { held, said }] of checks.entries()) {
  process.stdout.write(said);
  count(CHECKS[n][0], held);
}

/** They measure how long somebody waits, so only one thing at a time runs beside them: the build, then the rest, which yields. */
const WAITING = ["tests/sync/", "tests/faults/"];
const reportTo = (file) => ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`];
/** What the first run of vitest has compiled serves the second. */
const compiled = ["--experimental.fsModuleCache", `--experimental.fsModuleCachePath=${join(out, "compiled")}`];

console.log("\n== sync, faults; the build goes on beside them, then unit, reference, property tests");
ensureProxies();
const building = timed("build", () => beside(process.execPath, ["server/build.mjs"]));
const waitingReport = join(out, "waiting.json");
const waiting = ["run", ...WAITING, ...compiled, ...reportTo(waitingReport)];
const pureReport = join(out, "pure.json");
const pure = ["run", ...WAITING.map((path) => `--exclude=${path}**`), ...compiled, ...reportTo(pureReport)];
const waited = timed("sync and faults", () => along(bin("vitest"), waiting));
// Whole counts have limits of their own, which they might not keep on the time that others leave: then one after the other.
const working = (long ? waited.then(() => building) : building).then(() =>
  timed("the rest of vitest", () => beside(bin("vitest"), pure, { yields: true })),
);
void working.then(() => {
  vitestIsDone = true;
});
addVitest("sync and faults", waitingReport, await waited);

const built = await building;
console.log("\n== build");
process.stdout.write(built.said);
count("build", built.held);

console.log("\n== browser; unit, reference, property tests go on beside them");
const ready = built.held && ensureChromium();
if (long) await working;
if (ready) {
  await timed("browser", browse);
} else {
  fail(built.held ? "browser: no Chromium" : "browser: needs the build, which failed");
}
const worked = await working;
console.log("\n== unit, reference, property");
process.stdout.write(worked.said);
addVitest("the rest of vitest", pureReport, worked.held);

rmSync(out, { recursive: true, force: true });
if (failures.length > 0) console.log(`\n== failed\n${failures.join("\n")}`);
console.log(`\n${lengths.join(", ")}`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

/**
 * `npm test`: formatting, types, every vitest test, the build, every browser test; the last line sums them up. Build and
 * browser tests go on beside the vitest tests, since all of them also wait: both cores are busy until the end. `--long` runs the heavy counts whole (see support/long.ts).
 * Gets itself a Chromium when the machine has none.
 */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findChromium } from "./support/chromium.mjs";

const out = mkdtempSync(join(tmpdir(), "springline-tests-"));
const env = { ...process.env, NEXT_TELEMETRY_DISABLED: "1" };
if (process.argv.includes("--long")) env.SPRINGLINE_LONG = "1";
let passed = 0;
let failed = 0;
const lengths = [];

const bin = (name) => join("node_modules", ".bin", name);
const run = (command, args, extra = {}) =>
  spawnSync(command, args, { stdio: "inherit", env: { ...env, ...extra } }).status === 0;

/** Runs beside others: what it prints is kept until `show` is called, and then let through. */
function beside(command, args, extra = {}) {
  const child = spawn(command, args, { env: { ...env, ...extra }, stdio: ["ignore", "pipe", "pipe"] });
  let kept = [];
  const hear = (chunk) => (kept ? kept.push(chunk) : process.stdout.write(chunk));
  for (const stream of [child.stdout, child.stderr]) stream.on("data", hear);
  const held = new Promise((done) => {
    child.once("error", (error) => {
      hear(`${error}\n`);
      done(false);
    });
    child.once("close", (code) => done(code === 0));
  });
  const show = () => {
    process.stdout.write(Buffer.concat(kept?.map((chunk) => Buffer.from(chunk)) ?? []));
    kept = undefined;
  };
  return { held, show };
}

async function timed(name, work) {
  const from = performance.now();
  const answer = await work();
  lengths.push(`${name} ${Math.round((performance.now() - from) / 1000)} s`);
  return answer;
}

/** A step that either holds or does not: counts as one test. */
function count(held) {
  if (held) passed++;
  else failed++;
}

function addVitest(file, held) {
  if (!existsSync(file)) {
    failed++;
    return;
  }
  const report = JSON.parse(readFileSync(file, "utf8"));
  passed += report.numPassedTests;
  failed += report.numFailedTests;
  if (!held && report.numFailedTests === 0) failed++;
}

function addPlaywright(file, held) {
  if (!existsSync(file)) {
    failed++;
    return;
  }
  const { stats } = JSON.parse(readFileSync(file, "utf8"));
  passed += stats.expected;
  failed += stats.unexpected + stats.flaky;
  if (!held && stats.unexpected + stats.flaky === 0) failed++;
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

console.log("\n== lint, style sheets, types, exports that nobody needs");
const checks = [
  beside(bin("biome"), ["check", "--error-on-warnings", "."]),
  beside(bin("stylelint"), ["app/**/*.css"]),
  beside(bin("tsc"), ["--noEmit"]),
  beside(bin("knip"), ["--no-progress"]),
];
await timed("checks", () => Promise.all(checks.map(({ held }) => held)));
for (const { held, show } of checks) {
  show();
  count(await held);
}

console.log("\n== unit, reference, property, sync, faults; build and browsers go on beside them");
const hasChromium = ensureChromium();
const vitestReport = join(out, "vitest.json");
const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${vitestReport}`];
const vitest = beside(bin("vitest"), ["run", ...reporters]);
const tested = timed("vitest", () => vitest.held);
vitest.show();

const build = beside(process.execPath, ["server/build.mjs"]);
const built = await timed("build", () => build.held);
const browserReport = join(out, "browser.json");
const canBrowse = built && hasChromium;
const browsers = canBrowse && beside(bin("playwright"), ["test"], { SPRINGLINE_JSON_REPORT: browserReport });
const browsed = browsers && timed("browser", () => browsers.held);

addVitest(vitestReport, await tested);
console.log("\n== build");
build.show();
count(built);

console.log("\n== browser");
if (browsers) {
  browsers.show();
  addPlaywright(browserReport, await browsed);
} else {
  console.error(built ? "There is no Chromium to test with." : "The browser tests need the build, which failed.");
  failed++;
}

rmSync(out, { recursive: true, force: true });
console.log(`\n${lengths.join(", ")}`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

/**
 * `npm test`: formatting, types, every vitest test, then every browser test; the last line sums them up.
 * Gets itself a Chromium when the machine has none.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findChromium } from "./support/chromium.mjs";

const out = mkdtempSync(join(tmpdir(), "springline-tests-"));
const env = { ...process.env, NEXT_TELEMETRY_DISABLED: "1" };
let passed = 0;
let failed = 0;

const run = (command, args, extra = {}) =>
  spawnSync(command, args, { stdio: "inherit", env: { ...env, ...extra } }).status === 0;
const bin = (name) => join("node_modules", ".bin", name);

/** A step that either holds or does not: counts as one test. */
function step(name, command, args) {
  console.log(`\n== ${name}`);
  if (run(command, args)) passed++;
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

step("format and lint", bin("biome"), ["check", "--error-on-warnings", "."]);
step("style sheets", bin("stylelint"), ["app/**/*.css"]);
step("types", bin("tsc"), ["--noEmit"]);

console.log("\n== unit, reference, property, sync, faults");
const vitestReport = join(out, "vitest.json");
addVitest(
  vitestReport,
  run(bin("vitest"), ["run", "--reporter=default", "--reporter=json", `--outputFile.json=${vitestReport}`]),
);

console.log("\n== browser");
if (!ensureChromium()) failed++;
else {
  step("build", process.execPath, ["server/build.mjs"]);
  const browserReport = join(out, "browser.json");
  addPlaywright(browserReport, run(bin("playwright"), ["test"], { SPRINGLINE_JSON_REPORT: browserReport }));
}

rmSync(out, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

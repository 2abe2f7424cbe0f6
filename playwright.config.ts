import { defineConfig } from "@playwright/test";
import { CHROMIUM_ARGS, findChromium } from "./tests/support/chromium.mjs";

export default defineConfig({
  testDir: "tests/browser",
  globalSetup: "./tests/support/seeded-studio.ts",
  outputDir: "test-results",
  fullyParallel: false,
  // A browser test waits more than it works: two of them keep two cores busy.
  workers: 2,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  reporter: process.env.SPRINGLINE_JSON_REPORT
    ? [["line"], ["json", { outputFile: process.env.SPRINGLINE_JSON_REPORT }]]
    : [["line"]],
  use: {
    launchOptions: { executablePath: findChromium(), args: CHROMIUM_ARGS },
    // A recorded trace costs a third of the whole run: asked for with --trace when a failure is looked into.
    trace: "off",
    actionTimeout: 15_000,
  },
});

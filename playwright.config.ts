import { defineConfig } from "@playwright/test";
import { CHROMIUM_ARGS, findChromium } from "./tests/support/chromium.mjs";

/**
 * Left to `npm run test:long` for now: with them `npm test` takes more than its twenty minutes on two cores. To be taken back as soon
 * as the others are quicker.
 */
const LONG_ONLY = [
  ...["acts", "back-to-plan", "fit-and-order", "floor-geometry", "library", "load", "paste", "plates"],
  ...["safeguards", "several-screens", "standards", "tracks", "whole-class"],
].map((name) => `**/${name}.spec.ts`);

export default defineConfig({
  testDir: "tests/browser",
  testIgnore: process.env.SPRINGLINE_LONG === "1" ? [] : LONG_ONLY,
  globalSetup: "./tests/support/seeded-studio.ts",
  outputDir: "test-results",
  fullyParallel: false,
  // A browser test waits more than it works: three of them keep two cores busy.
  workers: 3,
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

/** `npm run pictures`: every screen of the invented studio at three sizes, light and dark, as PNG files in `pictures/`. */
import { defineConfig } from "@playwright/test";
import usual from "../../playwright.config.ts";

export default defineConfig({
  ...usual,
  testDir: ".",
  testMatch: "*.pictures.ts",
  globalSetup: "../support/seeded-studio.ts",
  outputDir: "../../test-results",
  fullyParallel: true,
  timeout: 300_000,
});

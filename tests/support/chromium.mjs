/** Finds the Chromium for the browser tests, or says what to do. */
import { existsSync } from "node:fs";
import { chromium } from "@playwright/test";

/** No GPU and no background traffic, so that a closed network does not slow tests down. */
export const CHROMIUM_ARGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // A page of a test lives for seconds: what optimising its functions takes is never paid back (see tests/README.md).
  "--js-flags=--no-opt --no-maglev",
];

// The shell is the same engine without a window, so it starts faster.
const SYSTEM_PATHS = [
  "/usr/bin/chromium-headless-shell",
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/snap/bin/chromium",
];

/** Path of a Chromium on this machine, or undefined. `SPRINGLINE_CHROMIUM` wins. */
export function findChromium() {
  const named = process.env.SPRINGLINE_CHROMIUM;
  if (named) return named;
  const system = SYSTEM_PATHS.find((path) => existsSync(path));
  if (system) return system;
  const downloaded = chromium.executablePath();
  return downloaded && existsSync(downloaded) ? downloaded : undefined;
}

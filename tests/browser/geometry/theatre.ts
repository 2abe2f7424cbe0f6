/** Bundles the test page once and opens it in a browser with a stopped clock and no storage. */
import { basename } from "node:path";
import type { Browser, Page } from "@playwright/test";
import { build } from "esbuild";
import { bundleSettings } from "#server/build/floor-bundle.mjs";

const ORIGIN = "http://stage.invalid/";
const TYPES: Record<string, string> = {
  js: "text/javascript",
  css: "text/css",
  woff2: "font/woff2",
  woff: "font/woff",
};

type Files = ReadonlyMap<string, Uint8Array>;

export async function bundleStage(): Promise<Files> {
  const { outputFiles } = await build({
    ...bundleSettings(process.cwd(), "/", false),
    entryPoints: { stage: "tests/browser/geometry/stage.tsx" },
    outdir: "/",
    entryNames: "[name]",
    splitting: false,
    metafile: false,
    write: false,
    plugins: [],
  });
  return new Map((outputFiles ?? []).map(({ path, contents }) => [basename(path), contents]));
}

const PAGE = `<!DOCTYPE html><html lang="en-GB"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1"><title>Stage</title>
<link rel="stylesheet" href="/stage.css"></head><body><main class="floor"></main></body></html>`;

/** Runs in the page before anything else. */
function stopClocks(): void {
  performance.now = () => 100_000_000;
  Date.now = () => 100_000_000;
  Object.defineProperty(window, "indexedDB", {
    value: {
      open() {
        throw new Error("the stage keeps nothing");
      },
    },
  });
}

export async function openStage(browser: Browser, files: Files): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  await page.addInitScript(stopClocks);
  await page.route(`${ORIGIN}**`, (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    const file = files.get(name);
    if (name === "") return route.fulfill({ body: PAGE, contentType: "text/html" });
    if (!file) return route.fulfill({ status: 404 });
    return route.fulfill({ body: Buffer.from(file), contentType: TYPES[name.split(".").at(-1) ?? ""] ?? "" });
  });
  await page.goto(ORIGIN);
  await page.addScriptTag({ url: "/stage.js", type: "module" });
  await page.waitForFunction(() => "stage" in window);
  await page.evaluate(() =>
    Promise.all(
      ["400", "700"].flatMap((weight) =>
        ["Next", "Mono"].map((face) => document.fonts.load(`${weight} 20px "Atkinson Hyperlegible ${face}"`)),
      ),
    ),
  );
  return page;
}

/**
 * Every word of every step of the demo's classes, on every screen of the floor, at seven sizes: visible, whole, over
 * nothing and under nothing. These are the floor's own components, drawn at each moment with the clock stopped.
 */
import { expect, test } from "@playwright/test";
import type { Screen } from "./geometry/stage.tsx";
import { bundleStage, openStage } from "./geometry/theatre.ts";

const SIZES = [
  [390, 844],
  [844, 390],
  [1024, 768],
  [1280, 720],
  [1280, 800],
  [1440, 900],
  [1920, 1080],
] as const;

test.describe.configure({ mode: "parallel" });

let files: Awaited<ReturnType<typeof bundleStage>>;
test.beforeAll(async () => {
  files = await bundleStage();
});

for (const screen of ["lead", "sheet", "demonstrator", "crew", "wall"] as const satisfies readonly Screen[]) {
  test(`${screen}: every word of every step can be read`, async ({ browser }) => {
    const page = await openStage(browser, files);
    const faults: string[] = [];
    for (const [width, height] of SIZES) {
      await page.setViewportSize({ width, height });
      const swept = await page.evaluate((one) => window.stage.sweep(one), screen);
      const shots = process.env.SPRINGLINE_SHOTS;
      if (shots) await page.screenshot({ path: `${shots}/${screen}-${width}x${height}.png` });
      faults.push(...swept.faults.map((fault) => `${width}x${height} ${fault}`));
    }
    await page.context().close();
    expect(faults).toEqual([]);
  });
}

/** The floor's screens at the moments that look different, drawn by its own components with the clock stopped. */
import { expect, type Page, test } from "@playwright/test";
import type { Screen, State } from "../browser/geometry/stage.tsx";
import { bundleStage, openStage } from "../browser/geometry/theatre.ts";
import { SIZES, THEMES } from "./sizes.ts";

/** Of the first class: in the middle of work, as the next change is called, in that change. */
const MOMENTS = ["work", "heads-up", "change"] as const;
type MomentName = (typeof MOMENTS)[number];

interface Shot {
  readonly screen: Screen;
  readonly moment: MomentName;
  readonly state?: State;
}

const SHOTS: readonly Shot[] = [
  ...(["lead", "demonstrator", "wall", "crew"] as const).flatMap((screen) =>
    MOMENTS.map((moment): Shot => ({ screen, moment })),
  ),
  { screen: "sheet", moment: "work" },
  { screen: "withdrawn", moment: "work" },
  { screen: "lead", moment: "work", state: "held" },
  { screen: "wall", moment: "change", state: "held" },
  { screen: "wall", moment: "work", state: "alone" },
  { screen: "demonstrator", moment: "change", state: "alone" },
];

let page: Page;
test.beforeAll(async ({ browser }) => {
  page = await openStage(browser, await bundleStage());
});
test.afterAll(() => page.context().close());

for (const shot of SHOTS) {
  const name = ["floor", shot.screen, shot.moment, shot.state].filter(Boolean).join("-");
  test(name, async () => {
    for (const [size, viewport] of Object.entries(SIZES))
      for (const colorScheme of THEMES) {
        await page.setViewportSize(viewport);
        await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
        await page.evaluate(draw, shot);
        await expect(page.locator("main").first()).not.toBeEmpty();
        await page.screenshot({ path: `pictures/${name}-${size}-${colorScheme}.png` });
      }
  });
}

/** Runs in the page. */
function draw({ screen, moment, state }: Shot): void {
  const found = window.stage.moments(0).find((one) => one.name === moment);
  if (!found) throw new Error(`no ${moment} in the first class`);
  window.stage.show({ screen, card: 0, moment: found.moment, state });
}

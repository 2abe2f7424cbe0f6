/** One picture a screen, size and theme. What is asked for by a press is a screen of its own. */
import type { Page } from "@playwright/test";
import { expect, onRail, openPlan, test, type Who } from "../browser/kit.ts";

const SIZES = {
  phone: { width: 390, height: 844 },
  tablet: { width: 1024, height: 768 },
  laptop: { width: 1440, height: 900 },
} as const;
const THEMES = ["light", "dark"] as const;

interface Screen {
  readonly name: string;
  readonly who: Who | null;
  readonly open: (page: Page) => Promise<void>;
}

const at =
  (path: string) =>
  async (page: Page): Promise<void> => {
    await page.goto(path);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  };
const plan =
  (title: string) =>
  (page: Page): Promise<void> =>
    openPlan(page, title);
const month = new Date().toISOString().slice(0, 7);
const whole = "Whole body, steady";
const upper = "Upper body and trunk";
const first = "Arms and chest, first try";

/** The plan's own address and what follows it. */
const below =
  (title: string, rest: string) =>
  async (page: Page): Promise<void> => {
    await openPlan(page, title);
    await at(`${new URL(page.url()).pathname}/${rest}`)(page);
  };

const SCREENS: readonly Screen[] = [
  { name: "sign-in", who: null, open: at("/sign-in") },
  { name: "floor-pairing", who: null, open: at("/floor") },
  ...(["ines", "marta", "jonas", "petra", "sam"] as const).map(
    (who): Screen => ({
      ...{ name: `desk-${who}`, who, open: at("/desk") },
    }),
  ),
  { name: "plan", who: "marta", open: plan(upper) },
  {
    name: "plan-plate-open",
    who: "marta",
    open: async (page) => {
      await openPlan(page, upper);
      await onRail(page, /seconds from/)
        .first()
        .click();
      await expect(page.getByRole("textbox", { name: /^Script of/ })).toBeVisible();
    },
  },
  {
    name: "plan-whole-class",
    who: "marta",
    open: async (page) => {
      await openPlan(page, upper);
      await page.getByRole("button", { name: "Whole class" }).click();
      await expect(page.getByRole("grid", { name: /^The whole class/ })).toBeVisible();
    },
  },
  { name: "plan-in-its-second-round", who: "ines", open: plan(first) },
  { name: "plan-rounds", who: "ines", open: below(first, "rounds") },
  { name: "plan-marks", who: "ines", open: below(first, "marks") },
  { name: "plan-editions", who: "ines", open: below(whole, "editions") },
  { name: "library", who: "ines", open: at("/library") },
  { name: "move", who: "ines", open: at("/library/row-kneeling") },
  { name: "move-edit", who: "ines", open: at("/library/row-kneeling/edit") },
  { name: "rules", who: "ines", open: at("/rules") },
  { name: "rule", who: "petra", open: at("/rules/caution-without-safety-line") },
  { name: "rubric", who: "ines", open: at("/rubric") },
  { name: "remarks", who: "ines", open: at("/remarks") },
  {
    name: "month",
    who: "ines",
    open: async (page) => {
      await page.goto(`/programme/${month}`);
      await expect(page.locator("[data-save]")).toHaveAttribute("data-save", "saved");
    },
  },
  { name: "month-sign", who: "ines", open: at(`/programme/${month}/sign`) },
  { name: "month-looking-back", who: "ines", open: at(`/programme/${month}/looking-back`) },
  { name: "month-wall", who: "ines", open: at(`/programme/${month}?view=wall`) },
  { name: "calendar-addresses", who: "petra", open: at("/programme/feeds") },
  { name: "people", who: "petra", open: at("/people") },
  { name: "studio", who: "petra", open: at("/studio") },
  { name: "record", who: "petra", open: at("/record") },
  { name: "notices", who: "marta", open: at("/notices") },
];

for (const { name, who, open } of SCREENS)
  test(name, async ({ as }) => {
    const page = await as(who);
    for (const [size, viewport] of Object.entries(SIZES)) {
      await page.setViewportSize(viewport);
      await open(page);
      for (const colorScheme of THEMES) {
        await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
        await page.screenshot({ path: `pictures/${name}-${size}-${colorScheme}.png`, fullPage: true });
      }
    }
  });

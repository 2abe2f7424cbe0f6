/** One picture a screen, size and theme. What is asked for by a press is a screen of its own. */
import type { Page } from "@playwright/test";
import { addressOf, EVERY_PAGE, SIGNED_PLAN } from "../browser/every-page.ts";
import { expect, onRail, openPlan, planPath, test, type Who } from "../browser/kit.ts";
import { SIZES, THEMES } from "./sizes.ts";

interface Screen {
  readonly name: string;
  readonly who: Who | null;
  readonly open: (page: Page) => Promise<void>;
}

/** A page of `EVERY_PAGE` by the pattern of its address. */
const everyPage = (name: string, [who, path]: (typeof EVERY_PAGE)[string]): Screen => ({
  name: name.slice(1).replaceAll("/", "-").replaceAll(/[[\]]/g, ""),
  who,
  open: async (page) => {
    const id = path.includes("{id}") ? ((await planPath(page, SIGNED_PLAN)).split("/")[2] ?? "") : "";
    await page.goto(await addressOf(page, path, id));
    await expect(page.getByRole("heading").first()).toBeVisible();
  },
});
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
const upper = "Upper body and trunk";
const first = "Arms and chest, first try";

/** The plan's own address and what follows it. */
const below =
  (title: string, rest: string) =>
  async (page: Page): Promise<void> => {
    await openPlan(page, title);
    await at(`${new URL(page.url()).pathname}/${rest}`)(page);
  };

/** What a button of a plan opens, by the same name. */
const dialog =
  (title: string, name: string) =>
  async (page: Page): Promise<void> => {
    await openPlan(page, title);
    await page.getByRole("button", { name }).filter({ visible: true }).first().click();
    await expect(page.getByRole("dialog", { name })).toBeVisible();
  };

/** What stands on a page only after a press, and pages as others see them. */
const ALSO: readonly Screen[] = [
  ...(["ines", "jonas", "petra", "sam"] as const).map(
    (who): Screen => ({ name: `desk-${who}`, who, open: at("/desk") }),
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
  {
    name: "plan-read-through",
    who: "marta",
    open: async (page) => {
      await openPlan(page, upper);
      await page.getByRole("button", { name: "Read-through" }).click();
      await expect(page.locator("[data-reading]")).toBeVisible();
    },
  },
  { name: "plan-fit", who: "marta", open: dialog(upper, "Fit to length") },
  { name: "plan-review", who: "ines", open: dialog(first, "Review and sign") },
  { name: "plan-in-its-second-round", who: "ines", open: plan(first) },
  { name: "plan-marks", who: "ines", open: below(first, "marks") },
  {
    name: "month",
    who: "ines",
    open: async (page) => {
      await page.goto(`/programme/${month}`);
      await expect(page.locator("[data-save]")).toHaveAttribute("data-save", "saved");
    },
  },
  { name: "month-wall", who: "ines", open: at(`/programme/${month}?view=wall`) },
  {
    name: "find",
    who: "marta",
    open: async (page) => {
      await at("/desk")(page);
      await page.keyboard.press("/");
      await page.getByRole("dialog", { name: "Find" }).getByRole("searchbox").fill("row");
      await expect(page.getByRole("dialog", { name: "Find" }).getByRole("link").first()).toBeVisible();
    },
  },
];

/** Drawn among `ALSO` in the states that matter. */
const ELSEWHERE = ["/plans/[id]", "/plans/[id]/marks", "/programme/[month]"];

const SCREENS: readonly Screen[] = [
  ...Object.entries(EVERY_PAGE)
    .filter(([name]) => !ELSEWHERE.includes(name))
    .map(([name, page]) => everyPage(name, page)),
  ...ALSO,
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

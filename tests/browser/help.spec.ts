/** Help: on every page `?` opens what is about that page; its texts can be read by anybody, and every link of them leads somewhere. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { HELP_PAGES } from "#lib/help/help-pages.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { addressOf, EVERY_PAGE, LEADS_ON, SIGNED_PLAN } from "./every-page.ts";
import { expect, more, openPlan, planPath, test } from "./kit.ts";

const APP = join(import.meta.dirname, "../../app");

test("every page is walked below", () => {
  const found = readdirSync(APP, { recursive: true, encoding: "utf8" })
    .filter((name) => name === "page.tsx" || name.endsWith("/page.tsx"))
    .map((name) => `/${name.replace(/\/?page\.tsx$/, "")}`);
  expect([...Object.keys(EVERY_PAGE), ...LEADS_ON].filter((path) => path !== "/floor").sort()).toEqual(found.sort());
});

const help = (page: Page) => page.getByRole("dialog", { name: "Help" });

async function opensHelp(page: Page): Promise<void> {
  await expect(async () => {
    await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
    await page.keyboard.press("?");
    await expect(help(page)).toBeVisible({ timeout: 500 });
  }).toPass({ timeout: 20_000 });
}

test("on every page ? opens help that knows where one is, with its texts and its keys", async ({ as }) => {
  test.setTimeout(240_000);
  const marta = await as("marta");
  const id = (await planPath(marta, SIGNED_PLAN)).split("/")[2] ?? "";
  for (const [name, [who, path]] of Object.entries(EVERY_PAGE))
    await test.step(name, async () => {
      const page = await as(who);
      await page.goto(await addressOf(page, path, id));
      await opensHelp(page);
      const here = help(page).getByRole("navigation", { name: "Help with this place" });
      await expect(here.getByRole("link", { name: "All help" })).toBeVisible();
      await expect(here.getByRole("listitem").first()).toBeVisible();
      await expect(help(page)).toContainText("close what lies over the page");
      await page.keyboard.press("Escape");
      await expect(help(page)).toHaveCount(0);
    });
});

test("help is reached without a keyboard, on a phone too: in the account’s menu, in a plan, at the door", async ({
  as,
}) => {
  const phone = { viewport: { width: 390, height: 844 }, hasTouch: true };
  const page = await as("marta", phone);
  await page.goto("/desk");
  await page.getByRole("button", { name: /your account$/ }).tap();
  await page.getByRole("button", { name: "Help and keys (?)" }).tap();
  await help(page).getByRole("link", { name: "Write your first class" }).tap();
  await expect(page.getByRole("heading", { level: 1, name: "Write your first class" })).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  await openPlan(page, "Upper body and trunk");
  await more(page, "Help and keys");
  await expect(help(page).getByRole("link", { name: "Fit a class to its length" })).toBeVisible();
  const nobody = await as(null, phone);
  await nobody.goto("/sign-in");
  await nobody.getByRole("link", { name: "Help" }).tap();
  await expect(nobody.getByRole("heading", { level: 1, name: "Help" })).toBeVisible();
});

test("the texts have no barrier by day or night, their pictures are there, and every link leads to a page", async ({
  as,
}) => {
  test.setTimeout(240_000);
  const page = await as("petra");
  const seen = new Set<string>();
  for (const href of ["/help", "/help/rules", ...HELP_PAGES.map((one) => one.href)]) {
    await page.goto(href);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    const main = page.getByRole("main");
    for (const link of await main
      .locator("a[href^='/']")
      .evaluateAll((all) => all.map((one) => one.getAttribute("href") ?? "")))
      seen.add(link);
    for (const image of await main.locator("img").all()) {
      await image.scrollIntoViewIfNeeded();
      await expect
        .poll(() => image.evaluate((one: HTMLImageElement) => one.complete && one.naturalWidth))
        .toBeGreaterThan(300);
    }
    if (["/help", "/help/fit-to-length", "/help/keys", "/help/words", "/help/safety"].includes(href))
      await expectNoBarrierLightOrDark(page);
  }
  expect(seen.size).toBeGreaterThan(60);
  const lead = await as("ines");
  for (const href of seen) {
    const path = href.split("#")[0] ?? "";
    const answers = await Promise.all([page, lead].map((one) => one.request.get(path)));
    expect(
      answers.some((answer) => answer.ok()),
      href,
    ).toBe(true);
  }
});

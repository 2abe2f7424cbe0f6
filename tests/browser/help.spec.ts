/** Help: on every page `?` opens what is about that page; its texts can be read by anybody, and every link of them leads somewhere. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { HELP_PAGES } from "#lib/help/help-pages.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, more, openPlan, planPath, test, type Who } from "./kit.ts";

const APP = join(import.meta.dirname, "../../app");
const MONTH = new Date().toISOString().slice(0, 7);
const SIGNED = "Whole body, steady";

/** Every page of `app/`, who opens it, and the parts of its address that are asked: "{plan}" is a plan's, "{edition}" an edition's. */
const PAGES: Readonly<Record<string, readonly [who: Who | null, path: string]>> = {
  "/desk": ["marta", "/desk"],
  "/editions/[planId]": ["ines", "/editions/{id}"],
  "/editions/[planId]/[number]": ["ines", "/editions/{id}/1"],
  "/editions/[planId]/[number]/classes": ["ines", "/editions/{id}/1/classes"],
  "/editions/[planId]/[number]/crew": ["sam", "/editions/{id}/1/crew"],
  "/editions/[planId]/[number]/print": ["ines", "/editions/{id}/1/print"],
  "/editions/[planId]/compare": ["ines", "/editions/{id}/compare"],
  "/help": [null, "/help"],
  "/help/[topic]": [null, "/help/sign-off"],
  "/help/keys": ["marta", "/help/keys"],
  "/help/rules": [null, "/help/rules"],
  "/help/safety": [null, "/help/safety"],
  "/help/words": [null, "/help/words"],
  "/join/[invitationId]": [null, "/join/none"],
  "/library": ["marta", "/library"],
  "/library/[id]": ["marta", "/library/row-kneeling"],
  "/library/[id]/edit": ["ines", "/library/row-kneeling/edit"],
  "/library/bring": ["ines", "/library/bring"],
  "/library/new": ["ines", "/library/new"],
  "/notices": ["marta", "/notices"],
  "/people": ["petra", "/people"],
  "/people/[userId]": ["jonas", "{own}"],
  "/plans/[id]": ["marta", "/plans/{id}"],
  "/plans/[id]/marks": ["ines", "/plans/{id}/marks"],
  "/plans/[id]/rehearse": ["marta", "/plans/{id}/rehearse"],
  "/programme/[month]": ["marta", `/programme/${MONTH}`],
  "/programme/[month]/looking-back": ["ines", `/programme/${MONTH}/looking-back`],
  "/programme/[month]/sign": ["ines", `/programme/${MONTH}/sign`],
  "/programme/feeds": ["petra", "/programme/feeds"],
  "/record": ["petra", "/record"],
  "/remarks": ["ines", "/remarks"],
  "/reset/[token]": [null, "/reset/none"],
  "/rubric": ["ines", "/rubric"],
  "/rules": ["ines", "/rules"],
  "/rules/[id]": ["petra", "/rules/caution-without-safety-line"],
  "/rules/month/[id]": ["ines", "{monthRule}"],
  "/settings": ["sam", "/settings"],
  "/sign-in": [null, "/sign-in"],
  "/studio": ["petra", "/studio"],
  "/studio/health": ["petra", "/studio/health"],
  "/studio/rooms/[id]/springs/[spring]": ["petra", "{spring}"],
  "/studio/rooms/[id]/timings": ["petra", "{timings}"],
  // Outside `app/`'s own pages: a device's.
  "/floor": [null, "/floor"],
};
/** They lead to another at once, where there is a studio, or where it sends no e-mail. */
const LEADS_ON = ["/", "/first-run", "/programme", "/sign-in/forgotten"];

test("every page is walked below", () => {
  const found = readdirSync(APP, { recursive: true, encoding: "utf8" })
    .filter((name) => name === "page.tsx" || name.endsWith("/page.tsx"))
    .map((name) => `/${name.replace(/\/?page\.tsx$/, "")}`);
  expect([...Object.keys(PAGES), ...LEADS_ON].filter((path) => path !== "/floor").sort()).toEqual(found.sort());
});

const help = (page: Page) => page.getByRole("dialog", { name: "Help" });

async function opensHelp(page: Page): Promise<void> {
  await expect(async () => {
    await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
    await page.keyboard.press("?");
    await expect(help(page)).toBeVisible({ timeout: 500 });
  }).toPass({ timeout: 20_000 });
}

/** A link of a page that begins and ends so. */
async function linkOn(page: Page, from: string, pattern: RegExp): Promise<string> {
  const html = await (await page.request.get(from)).text();
  const found = [...html.matchAll(/href="([^"]+)"/g)].map(([, href = ""]) => href).find((href) => pattern.test(href));
  if (!found) throw new Error(`no link like ${pattern} on ${from}`);
  return found;
}

async function addressOf(page: Page, path: string): Promise<string> {
  if (path === "{own}") return linkOn(page, "/desk", /^\/people\/[^/]+$/);
  if (path === "{monthRule}") return linkOn(page, "/rules", /^\/rules\/month\/.+/);
  if (path === "{spring}") return linkOn(page, "/studio", /\/springs\/[^/]+$/);
  if (path === "{timings}") return linkOn(page, "/studio", /\/timings$/);
  return path;
}

test("on every page ? opens help that knows where one is, with its texts and its keys", async ({ as }) => {
  test.setTimeout(240_000);
  const marta = await as("marta");
  const id = (await planPath(marta, SIGNED)).split("/")[2] ?? "";
  for (const [name, [who, path]] of Object.entries(PAGES))
    await test.step(name, async () => {
      const page = await as(who);
      await page.goto((await addressOf(page, path)).replace("{id}", id));
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

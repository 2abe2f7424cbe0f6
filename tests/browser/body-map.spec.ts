/** Where the work goes on the body: on a move's page, in the whole class and in the class's panel; by pointer and by keyboard. */
import type { Page } from "@playwright/test";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, openClass, openPlan, test } from "./kit.ts";

const PLAN = "Upper body and trunk";
const words = (page: Page) => page.getByRole("list", { name: "Muscles, the most worked first" });
const region = (page: Page, group: string) => page.locator(`[role="img"] [data-group="${group}"]`);

/** Where a group's region is in the window, once it is in view. */
async function boxOf(page: Page, group: string) {
  await region(page, group).scrollIntoViewIfNeeded();
  const box = await region(page, group).boundingBox();
  if (!box) throw new Error(`no ${group}`);
  return box;
}

test("a move's muscles stand on a person and in words, light and dark", async ({ as }) => {
  const page = await as("ines");
  await page.goto("/library/row-kneeling");
  await expect(
    page.getByRole("img", { name: /Upper back prime mover, biceps helper, lower back helper\.$/ }),
  ).toBeVisible();
  await expect(words(page).getByRole("button")).toHaveText([
    /upper back\s*prime mover/,
    /biceps\s*helper/,
    /lower back\s*helper/,
  ]);
  await expect(region(page, "upper-back")).toHaveAttribute("data-shade", "4");
  await expect(region(page, "chest")).toHaveAttribute("data-shade", "0");
  await expectNoBarrierLightOrDark(page);
});

test("a word lights its part and a part its word; what is pressed stays lit", async ({ as }) => {
  const page = await as("ines");
  await page.goto("/library/row-kneeling");
  const biceps = words(page).getByRole("button", { name: /biceps/ });
  await biceps.hover();
  await expect(region(page, "biceps")).toHaveAttribute("data-lit", "true");
  // Right of the middle line, where the two halves part.
  const back = await boxOf(page, "lower-back");
  await page.mouse.move(back.x + 0.7 * back.width, back.y + back.height / 2);
  await expect(words(page).getByRole("button", { name: /lower back/ })).toHaveAttribute("data-lit", "true");
  await expect(region(page, "biceps")).not.toHaveAttribute("data-lit", "true");
  await page.mouse.move(0, 0);
  await biceps.focus();
  await expect(region(page, "biceps")).toHaveAttribute("data-lit", "true");
  await page.keyboard.press("Tab");
  await expect(region(page, "lower-back")).toHaveAttribute("data-lit", "true");
  await page.keyboard.press("Space");
  await expect(words(page).getByRole("button", { name: /lower back/ })).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("Tab");
  await expect(region(page, "lower-back")).toHaveAttribute("data-lit", "true");
});

test("a finger beside a slim part means that part", async ({ as }) => {
  const page = await as("ines", { hasTouch: true, viewport: { width: 390, height: 844 } });
  await page.goto("/library/row-kneeling");
  const box = await boxOf(page, "biceps");
  // The box holds both arms; a little outside the left one.
  await page.touchscreen.tap(box.x - 6, box.y + box.height / 2);
  await expect(words(page).getByRole("button", { name: /biceps/ })).toHaveAttribute("aria-pressed", "true");
  await expect(region(page, "biceps")).toHaveAttribute("data-lit", "true");
});

test("the whole class says each share as its bars do, and what does no work", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, PLAN);
  await page.getByRole("button", { name: "Whole class" }).click();
  const balance = page.getByRole("region", { name: "Balance" });
  await expect(words(page)).toBeVisible();
  const said = await words(page).getByRole("button").allTextContents();
  const bars =
    (await balance.getByRole("figure", { name: "Left against right, weighted seconds" }).textContent()) ?? "";
  expect(said.length).toBeGreaterThan(8);
  for (const word of said) {
    const [, share = "?"] = /([\d.]+%)$/.exec(word) ?? [];
    expect(bars).toContain(share);
  }
  await expect(balance.getByText(/^No work: /)).toBeVisible();
  await expectNoBarrierLightOrDark(page);
});

test("the class's panel shows it lying, with all that works in its name", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, PLAN);
  await openClass(page);
  const panel = page.getByRole("complementary", { name: "The class" });
  await expect(
    panel.getByRole("img", { name: /^Front and back of a person, .*\. Upper back 17\.3%, .*No work: / }),
  ).toBeVisible();
  await expect(panel.locator('[data-layout="lying"] [data-group]')).toHaveCount(20);
});

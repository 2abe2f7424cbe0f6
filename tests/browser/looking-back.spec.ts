/** A month looked back on, at three sizes, on paper, light and dark; and what a lead adds to a log. */
import type { Page } from "@playwright/test";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, test } from "./kit.ts";

const LAST = new Date(Date.UTC(new Date().getUTCFullYear(), new Date().getUTCMonth(), 0)).toISOString().slice(0, 7);
const THIS = new Date().toISOString().slice(0, 7);

/** The invented studio's logs are of the last days, which may be last month's. */
async function openWithLogs(page: Page): Promise<void> {
  for (const month of [THIS, LAST]) {
    await page.goto(`/programme/${month}/looking-back`);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    if ((await page.getByRole("table", { name: "Class by class" }).count()) > 0) return;
  }
}

const SIZES = [
  { name: "phone", width: 390, height: 844 },
  { name: "tablet", width: 820, height: 1180 },
  { name: "laptop", width: 1440, height: 900 },
];

test("reads on a phone, a tablet and a laptop, light and dark, and on paper", async ({ as }) => {
  const page = await as("ines");
  await openWithLogs(page);
  await expect(page.getByRole("table", { name: "By coach" })).toBeVisible();
  for (const { name, ...size } of SIZES)
    await test.step(name, async () => {
      await page.setViewportSize(size);
      const wide = await page.evaluate(() => (document.scrollingElement?.scrollWidth ?? 0) - innerWidth);
      expect(wide).toBeLessThanOrEqual(1);
      await expectNoBarrierLightOrDark(page);
    });
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("button", { name: /^Strike/ }).first()).toBeHidden();
  await expect(page.getByRole("table", { name: "Class by class" })).toBeVisible();
});

test("a log is struck with a reason and counted again", async ({ as }) => {
  const page = await as("ines");
  await openWithLogs(page);
  await page
    .getByRole("button", { name: /^Strike/ })
    .last()
    .click();
  await page.getByLabel("Why it does not count").fill("Begun by mistake.");
  await page.getByRole("button", { name: "Strike it" }).click();
  await expect(page.getByText(/^Struck by Ines .*Begun by mistake/)).toBeVisible();
  await expect(page.getByText(/1 log was struck/)).toBeVisible();
  await page.getByRole("button", { name: "Count it again" }).click();
  await expect(page.getByText(/1 log was struck/)).toHaveCount(0);
});

test("a coach reads everybody else as one sum; crew do not read it", async ({ as }) => {
  const page = await as("marta");
  await openWithLogs(page);
  await expect(page.getByRole("heading", { level: 1, name: /^Looking back on/ })).toBeVisible();
  await expect(page.getByRole("button", { name: /^Strike/ })).toHaveCount(0);
  await expect(page.getByRole("combobox", { name: "Led by" })).toHaveCount(0);
  const sam = await as("sam");
  await sam.goto(`/programme/${THIS}/looking-back`);
  await expect(sam.getByRole("heading", { name: /^Looking back on/ })).toHaveCount(0);
});

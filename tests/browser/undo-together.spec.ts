/** Two people change one item in the same second, and both undo it. */
import { expect, expectSaved, onRail, openPlan, test } from "./kit.ts";

const PLAN = "Upper body and trunk";

test("one person adds seconds, the other subtracts, both undo: the seconds are as before", async ({ as }) => {
  const pages = [await as("marta"), await as("ines")] as const;
  for (const page of pages) {
    await openPlan(page, PLAN);
    await onRail(page, /seconds from/)
      .nth(4)
      .click();
  }
  const [marta, ines] = pages;
  const seconds = (page: typeof marta) => page.getByLabel("Seconds", { exact: true });
  const before = await seconds(marta).inputValue();
  // Neither hears of the other until both have pressed a button.
  for (const page of pages) await page.context().setOffline(true);
  await Promise.all([
    marta.getByRole("button", { name: "5 seconds more" }).click(),
    ines.getByRole("button", { name: "5 seconds less" }).click(),
  ]);
  for (const page of pages) await page.context().setOffline(false);
  for (const page of pages) await expectSaved(page);
  await expect(seconds(marta)).not.toHaveValue(before);
  await expect(seconds(ines)).toHaveValue(await seconds(marta).inputValue());
  await Promise.all(pages.map((page) => page.getByRole("button", { name: "Undo" }).click()));
  for (const page of pages) await expectSaved(page);
  for (const page of pages) await expect(seconds(page)).toHaveValue(before);
});

test("both move one item, both undo: it is back where it was", async ({ as }) => {
  const pages = [await as("marta"), await as("ines")] as const;
  for (const page of pages) await openPlan(page, PLAN);
  const [marta, ines] = pages;
  const order = (page: typeof marta) =>
    page
      .getByRole("listbox", { name: "The class, item by item" })
      .getByRole("option")
      .evaluateAll((items) => items.map((item) => item.id));
  const before = await order(marta);
  for (const page of pages)
    await onRail(page, /seconds from/)
      .nth(4)
      .click();
  // Neither hears of the other until both have moved it; one after the other, up and down would cancel out.
  for (const page of pages) await page.context().setOffline(true);
  await Promise.all([marta.keyboard.press("Alt+ArrowUp"), ines.keyboard.press("Alt+ArrowDown")]);
  for (const page of pages) await page.context().setOffline(false);
  for (const page of pages) await expectSaved(page);
  await expect
    .poll(async () => JSON.stringify(await order(ines)) === JSON.stringify(await order(marta)), "both read the same")
    .toBe(true);
  expect(await order(marta)).not.toEqual(before);
  await Promise.all(pages.map((page) => page.keyboard.press("Control+z")));
  for (const page of pages) await expectSaved(page);
  for (const page of pages) await expect.poll(() => order(page)).toEqual(before);
});

test("Ctrl+Z in Seconds: undoes the typing first, then the plan's last step, and the field shows it", async ({
  as,
}) => {
  const page = await as("marta");
  await openPlan(page, PLAN);
  await onRail(page, /seconds from/)
    .nth(5)
    .click();
  const seconds = page.getByLabel("Seconds", { exact: true });
  const before = await seconds.inputValue();
  await seconds.fill("47");
  await seconds.press("Enter");
  await expect(onRail(page, /47 seconds from/).first()).toBeVisible();
  await seconds.fill("48");
  await seconds.press("Control+z");
  await expect(seconds).toHaveValue("47");
  await seconds.press("Control+z");
  await expect(seconds).toHaveValue(before);
  await expectSaved(page);
});

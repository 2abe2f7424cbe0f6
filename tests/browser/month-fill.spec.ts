/** A month filled by the server: what is proposed, what others change meanwhile, one step of undo; findings accepted by a lead. */
import type { Page } from "@playwright/test";
import { addMonths } from "#lib/calendar/days.ts";
import { expect, test } from "./kit.ts";

/** The pattern gives it classes, none of which has a plan that others of these tests count on. */
const month = addMonths(new Date().toISOString().slice(0, 7), 8);

async function openMonth(page: Page): Promise<void> {
  await page.goto(`/programme/${month}`);
  await expect(page.locator("[data-save]")).toHaveAttribute("data-save", "saved");
}

const fillButton = (page: Page) => page.getByRole("button", { name: /^Fill the \d+ empty$/ });
const panel = (page: Page) => page.getByRole("complementary", { name: "Fill the empty classes" });

test("plans are proposed with the next best; what somebody changes meanwhile is left out; one undo takes all back", async ({
  as,
}) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  await Promise.all([openMonth(marta), openMonth(ines)]);
  const before = (await fillButton(marta).textContent()) ?? "";
  await fillButton(marta).click();
  await expect(panel(marta).getByText(/^(Proven best|Best found)$/)).toBeVisible({ timeout: 60_000 });
  await expect(
    panel(marta)
      .getByText(/^Or left empty: \d+ finding/)
      .first(),
  ).toBeVisible();
  const proposed = marta.locator("button[data-slot][data-proposed]");
  const many = await proposed.count();
  expect(many).toBeGreaterThan(2);

  const first = (await proposed.first().getAttribute("data-slot")) ?? "";
  await ines.locator(`button[data-slot="${first}"]`).click();
  await ines.getByLabel("Begins").fill("06:10");
  await expect(panel(marta).getByText(/the class was changed meanwhile/)).toHaveCount(1);
  await panel(marta)
    .getByRole("button", { name: `Take the other ${many - 1}` })
    .click();
  await expect(proposed).toHaveCount(1);
  await expect(ines.locator(`button[data-slot="${first}"]`)).toHaveAttribute("data-standing", "none");
  await panel(marta).getByRole("button", { name: "Close" }).click();
  await expect(fillButton(marta)).not.toHaveText(before);
  await marta.keyboard.press("Control+z");
  await expect(fillButton(marta)).toHaveText(before);
});

test("what a fill keeps to is set in its panel and counts the next time", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page);
  await fillButton(page).click();
  await expect(panel(page).getByText(/^(Proven best|Best found)$/)).toBeVisible({ timeout: 60_000 });
  await panel(page).getByText("What the fill keeps to").click();
  await panel(page).getByLabel("One plan at most so many times").fill("1");
  await page.keyboard.press("Tab");
  await panel(page).getByRole("button", { name: "Work the plans out again" }).click();
  await expect(panel(page).getByText(/classes stay empty/)).toBeVisible({ timeout: 60_000 });
  const titles = await panel(page).locator("ol > li b").allInnerTexts();
  expect(titles.length).toBeGreaterThan(0);
  expect(new Set(titles).size).toBe(titles.length);
});

test("a lead accepts a finding with a reason: it leaves the count, is listed apart, and can be ended", async ({
  as,
}) => {
  const [ines, marta] = [await as("ines"), await as("marta")];
  await Promise.all([openMonth(ines), openMonth(marta)]);
  const corner = ines.getByRole("region", { name: "The chosen finding" });
  const accept = corner.getByRole("button", { name: "Accept, say why" });
  for (let i = 0; i < 60 && !(await accept.isVisible()); i++)
    await corner.getByRole("button", { name: "Next" }).click();
  await expect(marta.getByRole("button", { name: "Accept, say why" })).toHaveCount(0);
  await accept.click();
  await ines.getByLabel("Why it may stay as it is").fill("The hall is closed then");
  await ines.getByRole("button", { name: "Accept", exact: true }).click();
  const count = (page: Page) => page.getByRole("button", { name: /^\d+ accepted$/ });
  for (const page of [ines, marta]) await expect(count(page)).toBeVisible();
  const list = ines.getByRole("complementary", { name: "Accepted as they stand" });
  await expect(list.getByText("The hall is closed then").first()).toBeVisible();
  const ends = list.getByRole("button", { name: /Accept it no longer/ });
  while ((await ends.count()) > 0) {
    const left = await ends.count();
    await ends.first().click();
    await expect(ends).toHaveCount(left - 1);
  }
  await expect(count(marta)).toHaveCount(0);
});

test("a month in which something must be fixed is not signed: pressing says what", async ({ as }) => {
  const page = await as("ines");
  await openMonth(page);
  // Two classes of one coach at the same time.
  for (const theme of ["Twice at noon", "Again at noon"]) {
    await page.locator(`[data-day="${month}-11"]`).click();
    await page.getByLabel("Theme").fill(theme);
    await page.getByLabel("Begins").fill("12:00");
    await page.getByLabel("Coach").selectOption({ label: "Marta Lindqvist" });
    await page.getByRole("button", { name: "Add the class" }).click();
  }
  await page.getByRole("button", { name: "Sign the month off" }).click();
  await expect(
    page.getByRole("status").filter({ hasText: /^Not yet, \d+ findings? must be fixed first: / }),
  ).toHaveCount(1);
  await expect(page).toHaveURL(new RegExp(`/programme/${month}`));
});

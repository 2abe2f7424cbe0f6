/** Two people in one month: each sees the other's acts, undo reverts only one's own, going offline is said, nothing is lost. */
import type { Page } from "@playwright/test";
import { addMonths } from "#lib/calendar/days.ts";
import { expect, test } from "./kit.ts";

/** A near month without classes in the invented studio; only near months are open. */
const month = addMonths(new Date().toISOString().slice(0, 7), 3);
const MONTH = `/programme/${month}`;
const DAY = `${month}-12`;

const save = (page: Page) => page.locator("[data-save]");
const classOf = (page: Page, theme: string) =>
  page.locator(`[data-date="${DAY}"]`).getByRole("button", { name: theme });

async function openMonth(page: Page): Promise<void> {
  await page.goto(MONTH);
  await expect(save(page)).toHaveAttribute("data-save", "saved");
}

async function addClass(page: Page, theme: string): Promise<void> {
  await page.locator(`[data-day="${DAY}"]`).click();
  await page.getByLabel("Theme").fill(theme);
  await page.getByRole("button", { name: "Add the class" }).click();
}

test("[INV-08] two coaches plan one day; undo by key reverts only one's own act and says so", async ({ as }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  await Promise.all([openMonth(marta), openMonth(ines)]);
  await Promise.all([addClass(marta, "Rows at noon"), addClass(ines, "Quiet legs")]);
  for (const page of [marta, ines]) {
    await expect(classOf(page, "Rows at noon")).toBeVisible();
    await expect(classOf(page, "Quiet legs")).toBeVisible();
  }
  await marta.keyboard.press("Control+z");
  await expect(classOf(ines, "Rows at noon")).toHaveCount(0);
  await expect(classOf(ines, "Quiet legs")).toBeVisible();
  await expect(marta.getByRole("status").filter({ hasText: "Undone: Rows at noon" })).toHaveCount(1);
  await marta.keyboard.press("Control+Shift+z");
  await expect(classOf(ines, "Rows at noon")).toBeVisible();
});

test("a month that goes offline says so at once, keeps what is written, and sends it when back", async ({ as }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  await Promise.all([openMonth(marta), openMonth(ines)]);
  await marta.context().setOffline(true);
  await expect(save(marta)).toHaveAttribute("data-save", "offline", { timeout: 1500 });
  await addClass(marta, "Planned at sea");
  await expect(save(marta)).toHaveText("offline, kept on this device");
  await expect(classOf(ines, "Planned at sea")).toHaveCount(0);
  await marta.context().setOffline(false);
  await expect(classOf(ines, "Planned at sea")).toBeVisible({ timeout: 30_000 });
  await expect(save(marta)).toHaveText("saved");
});

test("arrows lead from day to day and from week to week, Home and End to the ends of the month", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page);
  const day = (number: string) => page.locator(`[data-day="${month}-${number}"]`);
  await day("12").focus();
  for (const [key, number] of [
    ["ArrowRight", "13"],
    ["ArrowDown", "20"],
    ["ArrowLeft", "19"],
    ["ArrowUp", "12"],
    ["Home", "01"],
    ["ArrowLeft", "01"],
  ] as const) {
    await page.keyboard.press(key);
    await expect(day(number)).toBeFocused();
  }
  await page.keyboard.press("End");
  await expect(page.locator(`[data-day^="${month}-"]`).last()).toBeFocused();
});

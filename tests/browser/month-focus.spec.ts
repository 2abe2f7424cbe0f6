/** In the month by hand the focus is never lost, what was added is where one is, and a dragged class stays under the hand. */
import type { Page } from "@playwright/test";
import { addMonths, dateOfDay, dayNumber, daysOfMonth, isoWeekday } from "#lib/calendar/days.ts";
import { dayOfMonth } from "#lib/formats/dates.ts";
import { expect, test } from "./kit.ts";

/** The pattern gives it classes, which other tests do not count. */
const month = addMonths(new Date().toISOString().slice(0, 7), 5);
const days = daysOfMonth(month).slice(8);
/** A Tuesday, whose evening the pattern leaves free, so that no class lies over one that is dragged. */
const DAY = days.find((date) => isoWeekday(date) === 2) ?? "";
const DAY_AFTER = dateOfDay(dayNumber(DAY) + 1);

const row = (page: Page, date: string) => page.locator(`tr[data-date="${date}"]`);
const classOf = (page: Page, theme: string, date = DAY) => row(page, date).getByRole("button", { name: theme });
const beside = (page: Page) => page.getByRole("complementary");

async function openMonth(page: Page): Promise<void> {
  await page.goto(`/programme/${month}`);
  await expect(page.locator("[data-save]")).toHaveAttribute("data-save", "saved");
  await expect(page.locator("tbody tr")).not.toHaveCount(0);
}

async function addClass(page: Page, theme: string, start: string): Promise<void> {
  await page.locator(`[data-day="${DAY}"]`).click();
  await page.getByLabel("Theme").fill(theme);
  await page.getByLabel("Begins").fill(start);
  await page.getByRole("button", { name: "Add the class" }).click();
  await expect(classOf(page, theme)).toBeVisible();
}

const openFromMenu = async (page: Page, panel: string) => {
  await page.getByRole("button", { name: "More", exact: true }).click();
  await page.getByRole("button", { name: panel, exact: true }).click();
};

test("ten px of dragging are minutes, said beside the class; undo of a move to another day keeps the focus on it", async ({
  as,
}) => {
  const page = await as("marta");
  await openMonth(page);
  await addClass(page, "Held by hand", "18:15");
  await page.keyboard.press("Escape");
  const mark = classOf(page, "Held by hand");
  const box = await mark.boundingBox();
  if (!box) throw new Error("nothing to drag");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let dx = 2; dx <= 30; dx += 2) await page.mouse.move(x + dx, y);
  const [, hour = "", minute = ""] = /, (\d\d):(\d\d)$/.exec((await mark.textContent()) ?? "") ?? [];
  const later = Number(hour) * 60 + Number(minute) - (18 * 60 + 15);
  expect(later).toBeGreaterThan(5);
  expect(later).toBeLessThan(120);
  expect((await mark.boundingBox())?.x).toBeCloseTo(box.x + 30, -1);
  await page.keyboard.press("Escape");
  await page.mouse.up();

  await mark.focus();
  await page.keyboard.press("m");
  await page.keyboard.press("ArrowDown");
  await expect(classOf(page, "Held by hand", DAY_AFTER)).toContainText(`${dayOfMonth(DAY_AFTER)}, 18:15`);
  await page.keyboard.press("Enter");
  const moved = classOf(page, "Held by hand", DAY_AFTER);
  await expect(moved).toBeFocused();
  await page.keyboard.press("Control+z");
  await expect(mark).toBeFocused();
});

test("adding a note goes to its field, and Escape leads back to the class", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page);
  const ofPattern = page.locator(`button[data-slot*="-${month.replace("-", "")}"]`).last();
  await ofPattern.focus();
  await page.keyboard.press("Enter");
  await beside(page).getByRole("button", { name: "Add a note" }).press("Enter");
  await expect(beside(page).getByLabel("Note")).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(beside(page)).toHaveCount(0);
  await expect(ofPattern).toBeFocused();
});

test("F goes to a class of the next finding; with a class open beside, that follows and leaves the focus", async ({
  as,
}) => {
  const page = await as("marta");
  await openMonth(page);
  await addClass(page, "Found by key", "05:15");
  await page.keyboard.press("Escape");
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute("data-slot") ?? null);
  await page.locator(`[data-day="${DAY}"]`).focus();
  await page.keyboard.press("f");
  await expect.poll(focused).not.toBeNull();
  const first = await focused();
  await expect(page.locator(`button[data-slot="${first}"]`)).toBeInViewport();
  await page.keyboard.press("Enter");
  await expect(beside(page).getByRole("heading", { level: 2 })).toBeFocused();
  await page.locator(`button[data-slot="${first}"]`).focus();
  await page.keyboard.press("f");
  await expect.poll(focused).not.toBeNull();
  const second = await focused();
  await expect(page.locator(`button[data-slot="${second}"]`)).toHaveAttribute("aria-expanded", "true");
});

test("what is added to a list is in view and ready to be typed over; offline is said beside the month, too", async ({
  as,
}) => {
  const page = await as("marta");
  await openMonth(page);
  await openFromMenu(page, "Themes and promises");
  for (const name of ["Typed first", "Typed second"]) {
    await beside(page).getByRole("button", { name: "Add a theme" }).click();
    await expect.poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement)?.value)).toBe("New theme");
    await page.keyboard.type(name);
    await expect(page.locator("input:focus")).toHaveValue(name);
    await expect(page.locator("input:focus")).toBeInViewport();
  }
  await openFromMenu(page, "The weekly pattern");
  await beside(page).getByRole("button", { name: "Add a line" }).click();
  await expect(beside(page).locator("details[open] input:focus")).toBeInViewport();
  await openFromMenu(page, "Coaches' times");
  await beside(page).getByRole("button", { name: "Add days away" }).click();
  await expect(beside(page).locator('input[type="date"]:focus')).toBeInViewport();
  await expect(beside(page).getByRole("button", { name: "Remove these days" }).last()).toBeVisible();
  await page.context().setOffline(true);
  await expect(beside(page).getByText("offline, kept on this device")).toBeVisible();
  await page.context().setOffline(false);
});

test("last month is taken over only after it was said what would come, and adds no class twice", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page);
  await openFromMenu(page, "Copy a week, take last month over");
  const part = beside(page).getByRole("region", { name: "Last month" });
  await expect(part.getByLabel("Themes further on by")).toHaveValue("0");
  await expect(part.getByText(/would be added/)).toBeVisible();
  const many = Number(/^(\d+) class/.exec((await part.getByRole("status").textContent()) ?? "")?.[1] ?? 0);
  if (many > 0) {
    const before = await page.locator("tbody button[data-slot]").count();
    await part.getByRole("button", { name: /^Take them over/ }).click();
    await expect(page.locator("tbody button[data-slot]")).toHaveCount(before + many);
  }
  await expect(part.getByText(/^No class would be added; \d+ stand there already/)).toBeVisible();
});

test("what is said of a value that was replaced covers none of the acts beside the month", async ({ as }) => {
  const pages = [await as("marta"), await as("ines")] as const;
  const [marta, ines] = pages;
  for (const page of pages) {
    await openMonth(page);
    await page.locator("tbody button[data-slot]").nth(3).click();
  }
  await marta.context().setOffline(true);
  await expect(marta.locator("[data-save]")).toHaveAttribute("data-save", "offline");
  await beside(marta).getByLabel("Minutes").fill("41");
  await beside(ines).getByLabel("Minutes").fill("61");
  await expect(ines.locator("[data-save]")).toHaveAttribute("data-save", "saved");
  await marta.context().setOffline(false);
  const notice = (page: Page) => page.getByRole("region", { name: "Values of yours that others replaced" });
  const counts = () => Promise.all(pages.map((page) => notice(page).count()));
  await expect.poll(async () => (await counts()).includes(1), { timeout: 30_000 }).toBe(true);
  const loser = (await counts())[0] === 1 ? marta : ines;
  const acts = beside(loser).getByRole("button", { name: /Take out|Move with the arrows/ });
  expect(await acts.count()).toBeGreaterThan(1);
  for (const act of await acts.all()) await act.click({ trial: true });
  await notice(loser).getByRole("button", { name: "Close" }).click();
  await expect(notice(loser)).toHaveCount(0);
});

test("the keys of the month work as soon as it is open, and from a button beside it", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page);
  const focused = () => page.evaluate(() => document.activeElement?.closest("[data-date]")?.getAttribute("data-date"));
  const fromNowhere = async (key: string) => {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.keyboard.press(key);
  };
  expect(await page.evaluate(() => document.activeElement === document.body)).toBe(true);
  await page.keyboard.press("f");
  await expect.poll(() => page.evaluate(() => document.activeElement?.hasAttribute("data-slot"))).toBe(true);
  const last = new Date(Date.UTC(Number(month.slice(0, 4)), Number(month.slice(5)), 0)).toISOString().slice(0, 10);
  await fromNowhere("End");
  await expect.poll(focused).toBe(last);
  await fromNowhere("Home");
  await expect.poll(focused).toBe(`${month}-01`);
  await fromNowhere("ArrowDown");
  await expect.poll(focused).toBe(`${month}-02`);
  await fromNowhere("n");
  await expect(beside(page)).toBeVisible();
  await expect(beside(page).getByLabel("Day")).toHaveValue(`${month}-02`);
  await page.keyboard.press("Escape");
  await page.getByRole("link", { name: "Programme", exact: true }).focus();
  await page.keyboard.press("f");
  await expect.poll(() => page.evaluate(() => document.activeElement?.hasAttribute("data-slot"))).toBe(true);
});

/**
 * The month's sheet: two people at once, undo, offline, the keyboard, a class moved by keys and by hand, three sizes of screen,
 * paper, and the rules a tool can check, light and dark.
 */
import type { Page } from "@playwright/test";
import { addMonths, daysOfMonth, isoWeekday } from "#lib/calendar/days.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, test } from "./kit.ts";

/** A near month that nothing else of the tests writes in; only near months are open. */
const month = addMonths(new Date().toISOString().slice(0, 7), 3);
const MONTH = `/programme/${month}`;
const DAY = `${month}-12`;

const save = (page: Page) => page.locator("[data-save]");
const row = (page: Page, date: string) => page.locator(`tr[data-date="${date}"]`);
const classOf = (page: Page, theme: string, date = DAY) => row(page, date).getByRole("button", { name: theme });

async function openMonth(page: Page, path = MONTH): Promise<void> {
  await page.goto(path);
  await expect(save(page)).toHaveAttribute("data-save", "saved");
  await expect(page.locator("tbody tr")).not.toHaveCount(0);
}

async function addClass(page: Page, theme: string, start = "12:00"): Promise<void> {
  await page.locator(`[data-day="${DAY}"]`).click();
  await page.getByLabel("Theme").fill(theme);
  await page.getByLabel("Begins").fill(start);
  await page.getByRole("button", { name: "Add the class" }).click();
}

test("[INV-08] two coaches plan one day; undo by key reverts only one's own act and says so", async ({ as }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  await Promise.all([openMonth(marta), openMonth(ines)]);
  await Promise.all([addClass(marta, "Rows at noon"), addClass(ines, "Quiet legs", "15:00")]);
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
  await addClass(marta, "Planned at sea", "20:00");
  await expect(save(marta)).toHaveText("offline, kept on this device");
  await expect(classOf(ines, "Planned at sea")).toHaveCount(0);
  await marta.context().setOffline(false);
  await expect(classOf(ines, "Planned at sea")).toBeVisible({ timeout: 30_000 });
  await expect(save(marta)).toHaveText("saved");
});

test("arrows lead from day to day and from class to class, Home and End to the ends of the month", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page);
  const day = (number: string) => page.locator(`[data-day="${month}-${number}"]`);
  await day("12").focus();
  for (const [key, number] of [
    ["ArrowDown", "13"],
    ["PageDown", "20"],
    ["ArrowUp", "19"],
    ["PageUp", "12"],
    ["Home", "01"],
    ["ArrowUp", "01"],
  ] as const) {
    await page.keyboard.press(key);
    await expect(day(number)).toBeFocused();
  }
  await page.keyboard.press("End");
  await expect(page.locator(`[data-day^="${month}-"]`).last()).toBeFocused();
  await addClass(page, "First of two", "05:00");
  const first = classOf(page, "First of two");
  await expect(first).toBeVisible();
  await day("12").focus();
  await page.keyboard.press("ArrowRight");
  await expect(first).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("complementary", { name: /^First of two/ })).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(first).toBeFocused();
});

test("M and arrows move a class, others see it once it is put down, Escape lets it be", async ({ as }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  await Promise.all([openMonth(marta), openMonth(ines)]);
  await addClass(marta, "Moved by keys", "05:30");
  await expect(classOf(ines, "Moved by keys")).toBeVisible();
  await classOf(marta, "Moved by keys").focus();
  await marta.keyboard.press("m");
  await marta.keyboard.press("ArrowRight");
  await marta.keyboard.press("ArrowDown");
  const next = `${month}-13`;
  await expect(classOf(marta, "Moved by keys", next)).toHaveAccessibleName(/^05:35 to/);
  await expect(classOf(ines, "Moved by keys")).toBeVisible();
  await marta.keyboard.press("Escape");
  await expect(classOf(marta, "Moved by keys")).toBeFocused();
  await marta.keyboard.press("m");
  await marta.keyboard.press("ArrowDown");
  await marta.keyboard.press("Enter");
  await expect(classOf(ines, "Moved by keys", next)).toHaveAccessibleName(/^05:30 to/);
  await marta.keyboard.press("Control+z");
  await expect(classOf(ines, "Moved by keys")).toBeVisible();
});

test("a class dragged along its rail changes its time, across the days its day; Escape lets it be", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page);
  await addClass(page, "Dragged along", "06:00");
  const mark = classOf(page, "Dragged along");
  const box = await mark.boundingBox();
  const target = await row(page, `${month}-14`).boundingBox();
  if (!box || !target) throw new Error("nothing to drag");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const dragTo = async (toX: number, toY: number) => {
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 8, y, { steps: 3 });
    await page.mouse.move(toX, toY, { steps: 5 });
  };
  await dragTo(x + 30, target.y + target.height / 2);
  await expect(classOf(page, "Dragged along", `${month}-14`)).toBeVisible();
  await page.keyboard.press("Escape");
  await page.mouse.up();
  await expect(mark).toHaveAccessibleName(/^06:00 to/);
  await dragTo(x + 30, target.y + target.height / 2);
  await page.mouse.up();
  const moved = classOf(page, "Dragged along", `${month}-14`);
  await expect(moved).toBeVisible();
  await expect(moved).not.toHaveAccessibleName(/^06:00 to/);
  await expect(page.getByRole("complementary", { name: /^Dragged along/ })).toHaveCount(0);
});

test("a class opened and its plan looked at: coming back leads to the same place", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page);
  await addClass(page, "Here and back", "04:00");
  await classOf(page, "Here and back").click();
  await expect(page).toHaveURL(/#class=/);
  await page.goto("/desk");
  await page.goBack();
  await expect(page.getByRole("complementary", { name: /^Here and back/ })).toBeVisible();
});

test("the demo's month on a laptop: every day without scrolling, no barrier, light and dark", async ({ as }) => {
  const page = await as("marta");
  await openMonth(page, "/programme");
  const days = daysOfMonth(new Date().toISOString().slice(0, 7)).length;
  await expect(page.locator("tbody tr")).toHaveCount(days);
  await expect(page.locator("tbody tr").last()).toBeInViewport({ ratio: 1 });
  const smallest = await page
    .locator("tbody span")
    .evaluateAll((all) => Math.min(...all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize))));
  expect(smallest).toBeGreaterThanOrEqual(12.5);
  await expectNoBarrierLightOrDark(page);
  await page.locator("button[data-slot]").first().click();
  await expect(page.getByRole("complementary")).toBeVisible();
  await expectNoBarrierLightOrDark(page);
});

test("with fingers a day is a finger high; on a phone classes are words, and all muscles are one press away", async ({
  as,
}) => {
  const tablet = await as("marta", { viewport: { width: 834, height: 1194 }, hasTouch: true, isMobile: true });
  await openMonth(tablet, "/programme");
  const heights = await tablet
    .locator("tbody tr")
    .evaluateAll((rows) => rows.map((one) => one.getBoundingClientRect().height));
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
  await expectNoBarrierLightOrDark(tablet);

  const phone = await as("marta", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await openMonth(phone, "/programme");
  await expect(phone.getByRole("columnheader")).toHaveCount(2 + 6);
  await expectNoBarrierLightOrDark(phone);
  await phone.getByRole("button", { name: "All 16 muscles" }).tap();
  await expect(phone.getByRole("columnheader")).toHaveCount(2 + 16);
});

test("on paper the month is one page of A4 with what is open in words", async ({ as }) => {
  const page = await as("marta");
  // Whatever day the test is run on: a month in work, two that nobody has begun, and one of 28 days.
  const short = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14]
    .map((n) => addMonths(month, n - 3))
    .find((one) => one.endsWith("-02"));
  for (const one of [addMonths(month, -3), addMonths(month, -2), addMonths(month, -1), short]) {
    await openMonth(page, `/programme/${one}`);
    // What browsers leave free unless somebody asks for less.
    const paper = await page.pdf({
      format: "A4",
      margin: { top: "1cm", bottom: "1cm", left: "0.9cm", right: "0.9cm" },
    });
    expect(paper.toString("latin1").match(/\/Type\s*\/Page\b/g), one).toHaveLength(1);
  }
  await openMonth(page, "/programme");
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("region", { name: "What is open" })).toBeVisible();
  await expect(page.getByRole("button", { name: "More", exact: true })).toHaveCount(0);
});

test("a room's week for the wall has the classes of the next month where it reaches into it", async ({ as }) => {
  const page = await as("marta");
  const crossing = [4, 5, 6, 7].map((n) => addMonths(month, n)).find((one) => weekdayOfEnd(one) <= 4) ?? "";
  await page.goto(`/programme/${crossing}?view=wall&week=${daysOfMonth(crossing).at(-1)}`);
  await page.getByLabel("Room").selectOption({ label: "Loft" });
  const days = page.locator("section");
  await expect(days).toHaveCount(7);
  await expect(days.nth(5).getByRole("listitem")).toContainText(["09:30 Whole body, Marta, 50 min"]);
});

const weekdayOfEnd = (one: string): number => isoWeekday(daysOfMonth(one).at(-1) ?? "");

test("every act of the head can be pressed on laptops from 1180 px on, also in the longest month", async ({ as }) => {
  const page = await as("ines");
  const longest = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14]
    .map((n) => addMonths(month, n - 3))
    .find((one) => one.endsWith("-09"));
  for (const width of [1180, 1280, 1366, 1440]) {
    await page.setViewportSize({ width, height: 800 });
    await openMonth(page, `/programme/${longest}`);
    for (const name of [/^Fill the/, "Sign the month off", "More"])
      await page.getByRole("button", { name }).or(page.getByRole("link", { name })).first().click({ trial: true });
    if (width < 1280) continue;
    const ends = await page.getByRole("button", { name: "More" }).boundingBox();
    const figure = await page.locator("svg[class*=body]").boundingBox();
    // Its head begins four pixels in.
    expect((ends?.x ?? 0) + (ends?.width ?? 0)).toBeLessThanOrEqual((figure?.x ?? 0) + 4);
  }
});

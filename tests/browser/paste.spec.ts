/** Paste a list: a spreadsheet's cells and a message become items, doubts are answered by keys, one undo takes all out. */
import type { Page } from "@playwright/test";
import { expectNoBarrier } from "../support/barriers.ts";
import { expect, onRail, openPlan, test } from "./kit.ts";

/** Cells as a spreadsheet copies them, with two ambiguous rows. */
const CELLS = [
  "Exercise\tTime (s)\tSprings\tSide\tCues",
  "Pulls again:\t\t\t\t",
  "Kneeling row\t60\t1 light, 1 middle\t\telbows close",
  "Leg press\t90\t1 firm\t\t",
  "Water\t20\t\t\t",
  "Side lunge\t40-50\t2 red\tL/R\t",
].join("\n");

const field = (page: Page) => page.getByRole("textbox", { name: "Your list or table" });
const counts = (page: Page, words: string) => expect(page.getByText(words, { exact: true })).toBeVisible();
const items = (page: Page) => onRail(page, /./);
const choice = (page: Page, name: string) => page.getByRole("dialog").getByRole("button", { name, exact: true });

async function openPaste(page: Page): Promise<void> {
  await page.getByRole("button", { name: "More", exact: true }).press("Enter");
  await page.getByRole("button", { name: "Paste a list" }).first().press("Enter");
  await expect(field(page)).toBeFocused();
}

for (const colorScheme of ["light", "dark"] as const) {
  test(`the doubts of a pasted list, ${colorScheme}, have no accessibility fault that a tool can find`, async ({
    as,
  }) => {
    const page = await as("ines", { colorScheme });
    await openPlan(page, "Upper body and trunk");
    await openPaste(page);
    await page.keyboard.insertText(CELLS);
    await counts(page, "3 rows ready, 3 doubts, 0 skipped");
    await expectNoBarrier(page);
  });
}

test("a spreadsheet's cells are added by keyboard alone, and one undo removes them all", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Upper body and trunk");
  const before = await items(page).count();
  await openPaste(page);
  await page.keyboard.insertText(CELLS);
  await counts(page, "3 rows ready, 3 doubts, 0 skipped");

  const put = page.getByRole("button", { name: "Add 3 items" });
  await expect(put).toHaveAttribute("aria-disabled", "true");
  await put.press("Enter");
  await expect(choice(page, "Supine leg press")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(choice(page, "40 s")).toBeFocused();
  await page.keyboard.press("Tab");
  await expect(choice(page, "50 s")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(choice(page, "“red” is light")).toBeFocused();
  await page.keyboard.press("Enter");
  await counts(page, "5 rows ready, 0 doubts, 0 skipped");
  await expect(page.getByRole("button", { name: "Add 6 items" })).toBeFocused();
  await expect(page.getByText("“red” means light in this list.")).toBeVisible();

  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await expect(items(page)).toHaveCount(before);
  await openPaste(page);
  await counts(page, "5 rows ready, 0 doubts, 0 skipped");
  await page.getByRole("button", { name: "Add 6 items" }).press("Enter");

  await expect(items(page)).toHaveCount(before + 6);
  await expect(items(page).last()).toBeFocused();
  await expect(items(page).last()).toHaveAccessibleName(/^Side lunge, right, 50 seconds .*two light/);
  await expect(page.getByText("6 items added from the list. One undo removes them all.")).toBeAttached();
  await page.keyboard.press("Control+z");
  await expect(items(page)).toHaveCount(before);
});

test("on a phone a message becomes the first class, without what is in doubt", async ({ as }) => {
  const page = await as("jonas", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await page.goto("/desk");
  await page.getByRole("button", { name: "New plan" }).tap();
  await page.keyboard.type("From a message");
  await page.keyboard.press("Enter");
  await page.waitForURL(/\/plans\//);
  // A new plan has one heading.
  await expect(items(page)).toHaveCount(1);
  await page.getByRole("button", { name: "Paste a list" }).last().tap();
  await field(page).fill("ARMS:\n- Kneeling row  60 s  2 light\n- Jumping jacks 30s\n- plank hold 45");
  await counts(page, "3 rows ready, 1 doubt, 0 skipped");
  await expect(page.getByText("“Jumping jacks” is not in the library. Choose a move, or skip the row.")).toBeVisible();
  await expect(page.getByText("springs not named: starting choice")).toBeVisible();
  const tooWide = await page.getByRole("dialog").evaluate((d) => d.scrollWidth > d.clientWidth);
  expect(tooWide).toBe(false);

  await page.getByRole("button", { name: "Leave out 1 doubtful row" }).tap();
  await counts(page, "3 rows ready, 0 doubts, 1 skipped");
  await page.getByRole("button", { name: "Add 3 items" }).tap();
  await expect(items(page)).toHaveCount(4);
  await expect(onRail(page, /^Kneeling row, 60 seconds/)).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).tap();
  await expect(items(page)).toHaveCount(1);
});

test("short forms in capitals are read; one that fits two moves is offered as a choice", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Upper body and trunk");
  const before = await items(page).count();
  await openPaste(page);
  await page.keyboard.insertText("1) LAT P/D .75 MIN 2 LIGHT\n2) S/A ROW 60 E/S 1 LIGHT\n3) OH PRESS X45 1 LIGHT");
  await counts(page, "2 rows ready, 1 doubt, 0 skipped");
  await expect(page.getByText("“OH PRESS” could be one of several moves. Choose which one.")).toBeVisible();
  await expect(choice(page, "Kneeling overhead press")).toBeVisible();
  await choice(page, "Seated overhead press").click();
  await page.getByRole("button", { name: "Add 4 items" }).click();
  await expect(items(page)).toHaveCount(before + 4);
  await expect(items(page).last()).toHaveAccessibleName(/^Seated overhead press, 45 seconds .*one light/);
  await expect(onRail(page, /^Kneeling single-arm row, right, 60 seconds/).last()).toBeVisible();
});

test("a file can be dropped or chosen; anything but text is refused with a sentence", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Upper body and trunk");
  await openPaste(page);
  const file = page.locator("dialog input[type=file]");
  await file.setInputFiles({ name: "class.zip", mimeType: "", buffer: Buffer.from([0x50, 0x4b, 3, 4, 0, 0]) });
  await expect(page.getByText(/This is not a text file/)).toBeVisible();
  await file.setInputFiles({
    name: "class.csv",
    mimeType: "text/csv",
    buffer: Buffer.from("Move;Time\nPlank hold;0:40\n"),
  });
  await counts(page, "1 row ready, 0 doubts, 0 skipped");
  await expect(page.getByText("“class.csv” read.")).toBeVisible();
});

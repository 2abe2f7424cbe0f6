/**
 * The floor brought back to the plan: a room's seconds out of its classes, a class rehearsed and what was measured taken
 * into the plan, and the sheets that crew and wall are given. Clocks are the test's own.
 */
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect, expectSaved, openFromDesk, test } from "./kit.ts";

test.describe.configure({ mode: "serial" });

const UPPER = "Upper body and trunk";
const clean = async (page: Page) => expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);

test("a manager sees what the classes tell of a room's changes, takes two, and it is on record", async ({ as }) => {
  const page = await as("petra");
  await page.goto("/studio");
  await page.getByRole("link", { name: "Set-up timings of Loft" }).click();
  const told = page.getByRole("region", { name: "From your classes" });
  await expect(told).toContainText("9 classes taught in this room tell of");
  const row = (words: string) => told.getByRole("row", { name: words });
  await expect(row("A quarter turn")).toContainText(/\d+ changes; \d+% from your classes/);
  await expect(told).toContainText("No change tells of:");
  await clean(page);

  for (const box of await told.getByRole("checkbox").all()) await box.uncheck();
  await expect(told.getByRole("button", { name: "Nothing chosen" })).toBeDisabled();
  for (const words of ["A quarter turn", "One spring off"]) await row(words).getByRole("checkbox").check();
  const seconds = (await row("A quarter turn").locator("strong").textContent())?.replace(" s", "") ?? "";
  await told.getByRole("button", { name: "Take 2 numbers for this room" }).click();
  await expect(told.getByText("2 numbers taken. Open plans were timed again.")).toBeVisible();
  await expect(told.getByText(/^Last taken by Petra/)).toContainText(`a quarter turn ${seconds} s`);
  await expect(row("A quarter turn")).toContainText("as now");
  await expect(page.getByLabel("A quarter turn", { exact: true })).toHaveValue(seconds);

  const lead = await as("ines");
  const answer = await lead.goto(page.url());
  expect(answer?.status()).toBe(404);
});

test("a draft is rehearsed with one key, and what is chosen of it is one step in the plan", async ({ as }) => {
  const page = await as("marta");
  await openFromDesk(page, UPPER);
  await expectSaved(page);
  const plan = page.url();
  await page.getByRole("button", { name: "Rehearse" }).click();
  await expect(page.getByText("No rehearsal of this plan yet.")).toBeVisible();
  await page.clock.install();
  await page.getByRole("link", { name: "Rehearse now" }).click();
  await expect(page.getByText("A draft, not signed off: to rehearse with, never to teach from")).toBeVisible();
  await expect(page.getByText(/their own clinician/)).toBeVisible();
  await page.clock.pauseAt(Date.now() + 3_600_000);
  await page.getByRole("button", { name: "Start the rehearsal" }).click();
  await expect(page.getByText("Rehearsal, no class")).toBeVisible();

  const target = page.getByRole("navigation", { name: "The rehearsal" }).getByRole("button").first();
  const setUps = { done: 0, lines: 0 };
  // Every line is said in its own time and a little more; every set-up takes what the clock gives it and six seconds.
  for (let seconds = 0; setUps.done < 4 && seconds < 900; seconds += 1) {
    await page.clock.runFor(1000);
    const words = await target.textContent();
    const waits = await page.getByText("waits for your set-up").isVisible();
    if (words === "said") setUps.lines += 1;
    if (words === "set-up done" && !waits) continue;
    if (words === "set-up done") {
      await page.clock.runFor(5000);
      setUps.done += 1;
    }
    if (words === "said" || words === "set-up done") await page.keyboard.press(" ");
    await page.clock.runFor(100);
  }
  expect(setUps.done).toBe(4);
  expect(setUps.lines).toBeGreaterThan(10);

  // The page is read again: it goes on.
  await page.reload();
  await expect(page.getByText("Rehearsal, no class")).toBeVisible();
  await page.getByRole("button", { name: "end", exact: true }).click();
  await page.getByRole("button", { name: "end now?" }).click();
  await page.clock.runFor(300);
  await expect(page.getByRole("heading", { name: "The rehearsal was ended early" })).toBeVisible();
  await expect(page.getByText(/and 4 set-ups measured/)).toBeVisible();
  await page.clock.resume();
  await page.getByRole("link", { name: "See it beside the plan" }).click();

  const dialog = page.getByRole("dialog", { name: "Rehearse" });
  await expect(dialog.getByText(/of the draft, kept in this browser/)).toBeVisible();
  await expect(dialog.getByRole("table", { name: /planned and yours/ }).getByRole("row")).toHaveCount(5);
  await expect(dialog.getByText(/syllables a second/)).toBeVisible();
  await clean(page);
  for (const box of await dialog.getByRole("checkbox").all()) await box.uncheck();
  const first = dialog
    .getByRole("table", { name: /planned and yours/ })
    .getByRole("row")
    .nth(1);
  await first.getByRole("checkbox").check();
  const [now, to] = [/(\d+) s/, /→ (\d+) s/].map((of) => Number(of.exec("")?.[1]));
  expect([now, to]).toEqual([Number.NaN, Number.NaN]);
  await dialog.getByRole("button", { name: "Take 1 set-up change" }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByRole("button", { name: "Undo" })).toBeEnabled();
  await expectSaved(page);
  expect(page.url()).toBe(plan);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
});

/** Two people at once: typing in one shared text, and one taking out what the other is writing in. */
import type { Locator, Page } from "@playwright/test";
import { addMonths } from "#lib/calendar/days.ts";
import { LONG } from "../support/long.ts";
import { expect, expectSaved, onRail, openClass, openPlan, script, test, toEndOfScript } from "./kit.ts";

const PLAN = "Upper body and trunk";
// A few words each: what the whole run adds are more keys, and every key is drawn on both screens.
const MARTA = LONG ? "all balls roll along the wall. " : "all balls roll. ";
const INES = LONG ? "22 seconds, no more, then rest; " : "22 seconds, no; ";

/** Both type at once, each in their own rhythm; then both read the same text, with each person's words whole. */
async function typeTogether(fields: readonly [Locator, Locator], delays: readonly [number, number]): Promise<void> {
  const [one, other] = fields;
  const before = await one.inputValue();
  await one.focus();
  await one.press("Control+End");
  await other.focus();
  await other.press("Control+Home");
  await Promise.all([
    one.pressSequentially(MARTA, { delay: delays[0], timeout: 60_000 }),
    other.pressSequentially(INES, { delay: delays[1], timeout: 60_000 }),
  ]);
  await expect(one).toHaveValue(new RegExp(INES));
  await expect(other).toHaveValue(new RegExp(MARTA));
  const read = await one.inputValue();
  await expect(other).toHaveValue(read);
  // In an empty text both write in one place, so either order is right.
  if (before === "") expect([INES + MARTA, MARTA + INES]).toContain(read);
  else expect(read).toBe(INES + before + MARTA);
}

test("two people can type in a plan's notes, title, theme and headings at once", async ({ as }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  for (const page of [marta, ines]) {
    await openPlan(page, PLAN);
    await openClass(page);
  }
  const both = (find: (page: Page) => Locator) => [find(marta), find(ines)] as const;
  await typeTogether(
    both((page) => page.getByLabel("Notes for the team")),
    [90, 90],
  );
  await typeTogether(
    both((page) => page.getByLabel("Title", { exact: true })),
    [60, 90],
  );
  await typeTogether(
    both((page) => page.getByLabel("Theme", { exact: true })),
    [90, 60],
  );
  await marta.getByRole("button", { name: "Add at the end" }).click();
  await marta.getByRole("button", { name: "Add a heading" }).click();
  await onRail(ines, /Heading: Heading without words/).click();
  await typeTogether(
    both((page) => page.getByLabel("Name of this block")),
    [90, 170],
  );
  await marta.keyboard.press("Control+z");
  await expect(marta.getByLabel("Name of this block"), "undo takes nothing of hers").toHaveValue(new RegExp(INES));
});

/** A class of the month that nobody else's test writes in, opened. */
const CLASS_DAY = `${addMonths(new Date().toISOString().slice(0, 7), 2)}-09`;
async function openSlot(page: Page): Promise<void> {
  await page.goto(`/programme/${CLASS_DAY.slice(0, 7)}`);
  await page
    .locator(`tr[data-date="${CLASS_DAY}"]`)
    .getByRole("button", { name: /Typed together/ })
    .click();
  await expect(page.getByRole("complementary")).toBeVisible();
}

test("two people can type in a class's note, and it says who took the class out", async ({ as }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  await marta.goto(`/programme/${CLASS_DAY.slice(0, 7)}`);
  await marta.locator(`[data-day="${CLASS_DAY}"]`).click();
  await marta.getByLabel("Theme").fill("Typed together");
  await marta.getByLabel("Begins").fill("05:00");
  await marta.getByRole("button", { name: "Add the class" }).click();
  await openSlot(marta);
  await openSlot(ines);
  const note = (page: Page) => page.getByRole("complementary").getByLabel("Note");
  await typeTogether([note(marta), note(ines)], [90, 90]);
  await Promise.all([
    note(marta).pressSequentially(" until the end", { delay: 40 }),
    ines.getByRole("complementary").getByRole("button", { name: "Take out of the month" }).click(),
  ]);
  const panel = marta.getByRole("complementary");
  await expect(panel).toContainText("Ines Duarte took this class out of the month.");
  await expect(panel.getByLabel("Words of the class")).toHaveValue(new RegExp(MARTA));
  await expect(panel.getByRole("alert")).toBeFocused();
  await panel.getByRole("button", { name: "Put back" }).click();
  await expect(note(marta)).toHaveValue(new RegExp(MARTA));
});

for (const where of ["script", "seconds"] as const) {
  test(`an item taken out while another is in its ${where}: said, kept, can be put back`, async ({ as }) => {
    const [marta, ines] = [await as("marta"), await as("ines")];
    for (const page of [marta, ines]) {
      await openPlan(page, PLAN);
      await onRail(page, /seconds from/)
        .first()
        .click();
    }
    const items = await onRail(marta, /seconds from/).count();
    if (where === "script") {
      await toEndOfScript(marta);
    } else await marta.getByLabel("Seconds", { exact: true }).press("Control+a");
    const typing = marta.keyboard.type(where === "script" ? "Kept to the last letter of a sentence" : "47", {
      delay: 40,
    });
    // After the first letters have arrived; the rest are typed while it is taken out.
    if (where === "seconds") await typing;
    else await expect(script(marta)).toContainText("Kept");
    await Promise.all([typing, ines.getByRole("button", { name: "Take out", exact: true }).click()]);

    const notice = marta.getByRole("region", { name: /^Taken out of the plan: / });
    await expect(notice).toContainText(/Ines Duarte took .+ out of the plan/);
    await expect(notice).toBeFocused();
    if (where === "script") await expect(notice.getByLabel("Words of the item")).toHaveValue(/Kept/);
    else await expect(notice).toContainText("You had typed 47 into “Seconds”");
    await marta.keyboard.type("typed on  a");
    await expect(onRail(marta, /seconds from/), "what is typed on takes nothing out").toHaveCount(items - 1);
    await notice.getByRole("button", { name: "Put back" }).click();
    await expect(onRail(ines, /seconds from/)).toHaveCount(items);
    await expect(notice).toHaveCount(0);
    const field = where === "script" ? script(marta) : marta.getByLabel("Seconds", { exact: true });
    await expect(field).toBeFocused();
    await expectSaved(marta);
  });
}

test("a number being typed stays when another person sets it, and says so", async ({ as }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  for (const page of [marta, ines]) {
    await openPlan(page, PLAN);
    await onRail(page, /seconds from/)
      .nth(1)
      .click();
  }
  const seconds = (page: Page) => page.getByLabel("Seconds", { exact: true });
  await seconds(marta).press("Control+a");
  await marta.keyboard.type("47");
  await ines.getByRole("button", { name: "5 seconds more" }).click();
  const theirs = await seconds(ines).inputValue();
  await expect(marta.getByText(`Somebody else has set “${theirs}” meanwhile.`)).toBeVisible();
  await expect(seconds(marta)).toHaveValue("47");
  await seconds(marta).press("Enter");
  await expect(marta.getByText(`This replaced “${theirs}”`)).toBeVisible();
  await expect(seconds(ines)).toHaveValue("47");
});

test("a lock set while one was offline is told when the page is reopened", async ({ as }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  for (const page of [marta, ines]) {
    await openPlan(page, PLAN);
    await onRail(page, /seconds from/)
      .nth(2)
      .click();
  }
  const seconds = (page: Page) => page.getByLabel("Seconds", { exact: true });
  const before = Number(await seconds(marta).inputValue());
  const device = marta.context();
  await device.setOffline(true);
  await expect(marta.getByText(/^offline, kept on this device/)).toBeVisible();
  await marta.getByRole("button", { name: "5 seconds more" }).click();
  await expect(seconds(marta)).toHaveValue(String(before + 5));
  // The page says so again once this change is on the device too.
  await expect(marta.getByText(/^offline, kept on this device/)).toBeVisible();
  const plan = marta.url();
  await marta.close();
  await ines.getByLabel("Lock this time").check();
  await expectSaved(ines);
  await device.setOffline(false);
  const again = await device.newPage();
  await again.goto(plan);
  const notice = again.getByRole("region", { name: "Values of yours that others replaced" });
  await expect(notice).toContainText(`Ines Duarte locked`);
  await expect(notice).toContainText(`at ${before} s; you had ${before + 5} s.`);
  // Two notices at once do not cover each other's buttons.
  await onRail(again, /seconds from/)
    .nth(3)
    .click();
  await onRail(ines, /seconds from/)
    .nth(3)
    .click();
  await ines.getByRole("button", { name: "Take out", exact: true }).click();
  const gone = again.getByRole("region", { name: /^Taken out of the plan: / });
  await expect(gone).toContainText(/Ines Duarte took .+ out of the plan/);
  await notice.getByRole("button", { name: "Close" }).click();
  await expect(notice).toHaveCount(0);
  await gone.getByRole("button", { name: "Put back" }).click();
  await expect(gone).toHaveCount(0);
  await expectSaved(again);
  await again.reload();
  await expectSaved(again);
  await expect(notice, "said once").toHaveCount(0);
});

/** Two people typing in one line of a script at once, and entering a script by keyboard. */
import { expect, expectSaved, intoScript, onRail, openPlan, script, test } from "./kit.ts";

const PLAN = "Upper body and trunk";
const MARTA = " all balls roll along the wall.";
const INES = "22 seconds, no more. ";

test("at 60 and 110, then at 170 and 110 ms a key: one at the end of a line, one at its start", async ({ as }) => {
  const pages = [await as("marta"), await as("ines")] as const;
  for (const page of pages) await openPlan(page, PLAN);
  for (const [nth, marta, ines] of [
    [2, 60, 110],
    [4, 170, 110],
  ] as const) {
    for (const page of pages) {
      await onRail(page, /seconds from/)
        .nth(nth)
        .click();
      await intoScript(page);
      await page.keyboard.press("Control+Home");
    }
    await pages[0].keyboard.press("End");
    await Promise.all([pages[0].keyboard.type(MARTA, { delay: marta }), pages[1].keyboard.type(INES, { delay: ines })]);
    for (const page of pages) {
      await expect(script(page)).toContainText(MARTA);
      await expect(script(page)).toContainText(INES);
      await expectSaved(page);
    }
  }
});

test("Tab into a script shows a caret, and the first letters typed land in it", async ({ as }) => {
  const page = await as("marta");
  await openPlan(page, PLAN);
  await onRail(page, /seconds from/)
    .nth(3)
    .click();
  await script(page).evaluate((element) => {
    const before = [...document.querySelectorAll<HTMLElement>("button, input, select, a[href], textarea")]
      .filter((other) => other.tabIndex >= 0 && other.offsetParent !== null && !other.matches(":disabled"))
      .filter((other) => element.compareDocumentPosition(other) & Node.DOCUMENT_POSITION_PRECEDING);
    getSelection()?.removeAllRanges();
    before.at(-1)?.focus();
  });
  await page.keyboard.press("Tab");
  await expect(script(page)).toBeFocused();
  await page.keyboard.type("By keyboard.");
  await expect(script(page)).toContainText("By keyboard.");
});

/** How many people change at once: typed in the class's panel, told beside each change, and undone like any other act. */
import { expect, onRail, openClass, openDrawer, openPlan, saveState, test } from "./kit.ts";

test("more people at once make changes longer, and doing and telling are told apart", async ({ as }) => {
  const [marta, petra] = [await as("marta"), await as("petra")];
  await openPlan(marta, "Upper body and trunk");
  await openClass(marta);
  const people = marta.getByLabel("People changing at once");
  await expect(people).toHaveValue("10");
  await onRail(marta, "Kneeling lat pull-down").first().click();
  await openDrawer(marta);
  await expect(
    marta.getByText(/^24 s to do, 7 s to tell\. To do: .*× 1\.23 for the slowest of 10, rounded up\./),
  ).toBeVisible();

  await openClass(marta);
  await people.fill("40");
  await people.press("Enter");
  await expect(saveState(marta)).toHaveAttribute("data-state", "saved");
  await expect(onRail(marta, /A change is planned shorter/).first()).toBeVisible();
  await marta.keyboard.press("Control+z");
  await expect(people).toHaveValue("10");

  await petra.goto("/studio");
  await petra.getByRole("link", { name: "Set-up timings of Harbour room" }).click();
  await petra.getByLabel("How much people differ in a change").fill("101");
  await expect(petra.getByText("Type a percentage from 0 to 100, or leave it empty.")).toBeVisible();
  await petra.getByLabel("How much people differ in a change").fill("30");
  // 9 s of one person; 9 x (1 + 0.3 x 1.53875) = 13.15 of the slowest of ten.
  await expect(petra.getByRole("row", { name: /^Only springs/ })).toContainText(/9 s.*14 s.*9 s/);
  await petra.getByRole("button", { name: "Save", exact: true }).click();
  await expect(petra.getByText("Saved. Open plans were timed again.")).toBeVisible();
  await expect(onRail(marta, /A change is planned shorter/).first()).toBeVisible();
});

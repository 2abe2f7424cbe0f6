/** What somebody types is not lost by what others do meanwhile, no click is lost, and what others do is said. */
import type { Page } from "@playwright/test";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { expect, expectSaved, importPlan, onRail, test, toEndOfScript } from "./kit.ts";
import { SHORT_CLASS } from "./short-class.ts";

const field = (page: Page, label: string | RegExp) => page.getByRole("textbox", { name: label });
const threads = (page: Page) => page.getByRole("article", { name: /^Thread by/ });
const ITEM = /Triceps press/i;
const OTHER = /overhead press/i;

/** Ines and Jonas with a plan of Jonas's own open, on the item of that name. */
async function both(as: (who: "ines" | "jonas") => Promise<Page>, plan: typeof SHORT_CLASS, item: RegExp) {
  const [ines, jonas] = [await as("ines"), await as("jonas")];
  const id = await importPlan(jonas, plan);
  for (const page of [ines, jonas]) {
    await page.goto(`/plans/${id}`);
    await onRail(page, item).first().click();
    await expect(page.locator("[data-comment]").first()).toBeVisible();
  }
  return { ines, jonas, id };
}

const first = { ...FIRST_TRY, title: "Words kept" };

test("a word of a remark moves no button and loses no click; a slash lays the list over the form", async ({ as }) => {
  const { ines } = await both(as, first, ITEM);
  await ines.locator("[data-comment]").click();
  const text = field(ines, /^Comment on/);
  const send = ines.getByRole("button", { name: "Comment", exact: true }).last();
  const before = await send.boundingBox();
  await text.pressSequentially("Read it aloud with a watch");
  await expect(ines.getByRole("listbox", { name: "Remarks of the studio" })).toHaveCount(0);
  await text.press("End");
  await text.pressSequentially(" /");
  await expect(ines.getByRole("listbox", { name: "Remarks of the studio" })).toBeVisible();
  expect((await send.boundingBox())?.y).toBe(before?.y);
  await ines.keyboard.press("Escape");
  await ines.keyboard.press("Backspace");
  await send.click();
  await expect(threads(ines)).toContainText("Read it aloud with a watch");
});

test("a reply stays, with the keyboard, when somebody settles its thread", async ({ as }) => {
  const { ines, jonas } = await both(as, first, ITEM);
  await jonas.locator("[data-comment]").click();
  await field(jonas, /^Comment on/).fill("Which one?");
  await field(jonas, /^Comment on/).press("ControlOrMeta+Enter");
  await threads(jonas).getByRole("button", { name: "Reply" }).click();
  await field(jonas, "Reply").pressSequentially("I meant the left");
  await threads(ines).getByRole("button", { name: "Settle" }).click();
  await expect(threads(jonas).getByText(/^The thread was settled while you wrote/)).toBeVisible();
  await expect(field(jonas, "Reply")).toBeFocused();
  await jonas.keyboard.type(" one.");
  await expect(field(jonas, "Reply")).toHaveValue("I meant the left one.");
  await field(jonas, "Reply").press("ControlOrMeta+Enter");
  await expect(threads(jonas)).toContainText("I meant the left one.");
});

test("a comment stays when another plate is opened, when the page is loaded again, and when its plate is taken out", async ({
  as,
}) => {
  const { ines, jonas } = await both(as, first, ITEM);
  await ines.locator("[data-comment]").click();
  await field(ines, /^Comment on/).fill("Mind the wrists here");
  await onRail(ines, OTHER).first().click();
  await expect(field(ines, /^Comment on/)).toHaveCount(0);
  await onRail(ines, ITEM).first().click();
  await expect(field(ines, /^Comment on/)).toHaveValue("Mind the wrists here");
  await ines.reload();
  await onRail(ines, ITEM).first().click();
  await expect(field(ines, /^Comment on/)).toHaveValue("Mind the wrists here");
  await jonas.keyboard.press("Escape");
  await onRail(jonas, ITEM).first().focus();
  await jonas.keyboard.press("Delete");
  const kept = ines.getByRole("region", { name: "Your words are kept here" });
  await expect(kept.getByRole("textbox")).toHaveValue("Mind the wrists here");
  const notice = ines.getByRole("region", { name: /^Taken out/ });
  await expect(notice).toContainText("whoever writes the plan can put it back");
  await expect(notice).not.toContainText("yours included");
  await jonas.keyboard.press("ControlOrMeta+z");
  await expect(kept).toHaveCount(0);
});

test("a comment on a finding stays where it is, with the keyboard, when the finding is mended", async ({ as }) => {
  // The left side is 15 s short of the right one.
  const { ines, jonas } = await both(as, { ...SHORT_CLASS, title: "Mended meanwhile" }, /^Seated row, left/);
  const slip = ines.locator('article[data-finding][data-level="must"]').first();
  const key = await slip.getAttribute("data-finding");
  const same = (page: Page) => page.locator(`article[data-finding="${key}"]`).first();
  await same(ines).getByRole("button", { name: "Comment on this finding" }).click();
  const text = same(ines).getByRole("textbox");
  await text.pressSequentially("Is this on purpose");
  await jonas.keyboard.press("Escape");
  await onRail(jonas, /^Seated row, left/).focus();
  for (const press of ["+", "+", "+"]) await jonas.keyboard.press(press);
  await expect(same(jonas)).toHaveCount(0);
  await expect(same(ines)).toContainText("This is not found any more. Your words are kept here");
  await expect(text).toBeFocused();
  await ines.keyboard.type("?");
  await text.press("ControlOrMeta+Enter");
  await expect(threads(ines)).toContainText("Is this on purpose?");
  await expect(same(ines)).toHaveCount(0);
});

async function offer(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Offer for reading" }).click();
  const dialog = page.getByRole("dialog", { name: "Offer for reading" });
  await dialog.getByRole("button", { name: "Offer for reading" }).click();
  await expect(dialog).toHaveCount(0);
}

test("a return is kept by Escape, told of a taking back, and not sent into the next round", async ({ as }) => {
  const { ines, jonas } = await both(as, { ...SHORT_CLASS, title: "Taken back" }, /^Seated row, left/);
  await offer(jonas);
  await ines.getByRole("button", { name: "Take up the reading" }).click();
  await ines.getByRole("button", { name: "Return with notes" }).click();
  const dialog = ines.getByRole("dialog", { name: "Return with notes" });
  await dialog.getByLabel("What should be changed").fill("Slower, please.");
  await dialog.getByLabel("Main point 1").fill("The rows");
  await ines.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  await ines.getByRole("button", { name: "Return with notes" }).click();
  await expect(dialog.getByLabel("What should be changed")).toHaveValue("Slower, please.");
  await expect(dialog.getByLabel("Main point 1")).toHaveValue("The rows");

  await jonas.getByRole("button", { name: "Take back" }).click();
  const ask = jonas.getByRole("dialog", { name: "Take it back?" });
  await expect(ask.getByText(/^Ines Duarte has been reading it since/)).toBeVisible();
  await ask.getByRole("button", { name: "Leave it with them" }).click();
  await expect(jonas.getByRole("button", { name: "Take back" })).toBeFocused();
  await jonas.getByRole("button", { name: "Take back" }).click();
  await ask.getByRole("button", { name: "Take back" }).click();
  await expect(dialog.getByText(/^Jonas Okafor took the plan back on .* Your words are kept here/)).toBeVisible();
  const send = dialog.getByRole("button", { name: "Return with notes" });
  await expect(send).toHaveAttribute("aria-disabled", "true");
  await offer(jonas);
  await expect(dialog.getByText(/offered again as round 2/)).toBeVisible();
  await expect(send).toHaveAttribute("aria-disabled", "true");
  await dialog.getByRole("button", { name: "Not now" }).click();
  const told = ines.getByRole("region", { name: /^Jonas Okafor took the plan back on/ });
  await expect(told).toContainText("Your note is kept for the next round.");
  await told.getByRole("button", { name: "Close" }).click();
  await expect(told).toHaveCount(0);

  await ines.getByRole("button", { name: "Return with notes" }).click();
  await expect(dialog.getByLabel("What should be changed")).toHaveValue("Slower, please.");
  await send.click();
  const returned = jonas.getByRole("region", { name: /^Ines Duarte returned the plan with notes/ });
  await expect(returned).toContainText("The rows");
  await expect(dialog).toHaveCount(0);
});

test("the lead's note to an edition outlives a plan that has to be read again; writing in a signed plan is said", async ({
  as,
}) => {
  test.setTimeout(120_000);
  const items = SHORT_CLASS.items.map((item) => (item.id === "row-left" ? { ...item, seconds: 60 } : item));
  const plan = { ...SHORT_CLASS, items, title: "Signed in the end" } as typeof SHORT_CLASS;
  const { ines, jonas, id } = await both(as, plan, /^Seated row, left/);
  await offer(jonas);
  await ines.getByRole("button", { name: "Review and sign" }).click();
  const dialog = ines.getByRole("dialog", { name: "Review and sign" });
  const note = dialog.getByLabel("A note to go with the edition (optional)");
  await note.fill("Well built.");
  await toEndOfScript(jonas);
  await jonas.keyboard.type(" Go on.");
  await expectSaved(jonas);
  const tick = dialog.getByRole("checkbox");
  if ((await tick.count()) > 0) await tick.check();
  await dialog.getByRole("button", { name: /^Sign off edition/ }).click();
  await dialog.getByRole("button", { name: "Read it again" }).click();
  await expect(note).toHaveValue("Well built.");
  if ((await tick.count()) > 0) {
    await expect(dialog.getByText(/^The plan was read again, so this is asked again/)).toBeVisible();
    await tick.check();
  }
  await dialog.getByRole("button", { name: /^Sign off edition/ }).click();
  await expect(dialog).toHaveCount(0);
  await jonas
    .getByRole("region", { name: /^Ines Duarte signed the plan off/ })
    .getByRole("button")
    .click();
  await toEndOfScript(jonas);
  await jonas.keyboard.type(" On.");
  await expect(jonas.getByRole("region", { name: /^Edition 1 stays signed/ })).toHaveCount(1);

  await ines.goto(`/editions/${id}/1`);
  await ines.getByLabel("Reason, shown on the devices").fill("A spring is worn");
  await ines.getByRole("button", { name: "Withdraw edition 1" }).click();
  await expect(ines.getByRole("button", { name: "Keep the edition" })).toBeFocused();
  await ines.getByRole("button", { name: "Withdraw it for good" }).click();
  await expect(ines.getByText(/^Edition 1 is withdrawn\. Withdrawn by Ines Duarte/)).toBeInViewport();
});

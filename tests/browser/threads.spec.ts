/** Threads between people: in the same second, settled against an answer, names and remarks by typing, an accepted finding. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { expect, importPlan, onRail, openClass, test } from "./kit.ts";

const PLAN = { ...FIRST_TRY, title: "Read by two" };
const field = (page: Page, label: string | RegExp) => page.getByRole("textbox", { name: label });
const threads = (page: Page) => page.getByRole("article", { name: /^Thread by/ });

/** Ines and Jonas on a plan of Jonas's own, on the item of that name. */
async function both(as: (who: "ines" | "jonas") => Promise<Page>, title: string, item: RegExp) {
  const [ines, jonas] = [await as("ines"), await as("jonas")];
  const path = `/plans/${await importPlan(jonas, { ...PLAN, title })}`;
  for (const page of [ines, jonas]) {
    await page.goto(path);
    await onRail(page, item).first().click();
    await expect(page.getByRole("button", { name: /^Comment on / }).first()).toBeVisible();
  }
  return { ines, jonas };
}
const ITEM = /Triceps press/i;

async function comment(page: Page, words: string): Promise<void> {
  await page.locator("[data-comment]").click();
  await field(page, /^Comment on/).fill(words);
  await page.getByRole("button", { name: "Comment", exact: true }).last().click();
}

test("two people comment in the same second, and both comments are there for both", async ({ as }) => {
  const { ines, jonas } = await both(as, "Two at once", ITEM);
  for (const [page, words] of [
    [ines, "From Ines"],
    [jonas, "From Jonas"],
  ] as const) {
    await page.locator("[data-comment]").click();
    await field(page, /^Comment on/).fill(words);
  }
  await Promise.all([ines, jonas].map((page) => field(page, /^Comment on/).press("ControlOrMeta+Enter")));
  for (const page of [ines, jonas]) {
    await expect(threads(page)).toHaveCount(2);
    for (const words of ["From Ines", "From Jonas"])
      await expect(threads(page).getByText(words, { exact: true })).toBeVisible();
  }
});

test("a thread is not settled over an answer that was not in sight: it is shown first", async ({ as }) => {
  const { ines, jonas } = await both(as, "Answered since", ITEM);
  await comment(ines, "Which one?");
  await expect(threads(jonas)).toHaveCount(1);
  // Her page has not heard of the answer when she settles.
  await ines.evaluate(() => {
    const { fetch: real } = window;
    window.fetch = async (input, init) => {
      if (String(input).endsWith("/settle")) {
        window.fetch = real;
        await new Promise<void>((go) => Object.assign(window, { letGo: go }));
      }
      return real(input, init);
    };
  });
  await threads(ines).getByRole("button", { name: "Settle" }).click();
  await threads(jonas).getByRole("button", { name: "Reply" }).click();
  await threads(jonas).getByLabel("Reply").fill("The firm one.");
  await threads(jonas).getByRole("button", { name: "Send the reply" }).click();
  await expect(threads(jonas)).toContainText("1 reply");
  // A field that is open holds its thread in sight.
  await threads(jonas).getByRole("button", { name: "Fold" }).click();
  await ines.evaluate(() => (window as unknown as { letGo(): void }).letGo());
  await expect(threads(ines).getByRole("alert").filter({ hasText: "Jonas Okafor has answered since" })).toBeVisible();
  await expect(threads(ines)).toContainText("The firm one.");
  await expect(threads(jonas)).toHaveCount(1);
  await threads(ines).getByRole("button", { name: "Settle" }).click();
  await expect(threads(ines)).toHaveCount(0);
  await expect(threads(jonas)).toHaveCount(0);
  // Both see it again once it is opened.
  await jonas.getByRole("button", { name: "Show 1 settled" }).click();
  await threads(jonas).getByRole("button", { name: "Open again" }).click();
  await expect(threads(ines)).toHaveCount(1);
});

test("by keyboard: a colleague is named, a remark of the studio is put in, and an empty field closes", async ({
  as,
}) => {
  const { ines, jonas } = await both(as, "Named", ITEM);
  await ines.locator("[data-comment]").press("Enter");
  const text = field(ines, /^Comment on/);
  await text.pressSequentially("See this, @jon");
  const names = ines.getByRole("listbox", { name: "Colleagues" });
  await expect(names.getByRole("option")).toHaveText(["Jonas Okafor"]);
  await expect(text).toHaveAttribute("aria-activedescendant", /-0$/);
  await ines.keyboard.press("Enter");
  await expect(text).toHaveValue("See this, @Jonas Okafor ");
  await expect(names).toHaveCount(0);
  await text.pressSequentially("/");
  const remarks = ines.getByRole("listbox", { name: "Remarks of the studio" });
  await expect(remarks.getByRole("option").first()).toBeVisible();
  expect((await new AxeBuilder({ page: ines }).include("aside").analyze()).violations).toEqual([]);
  await ines.keyboard.press("Escape");
  await expect(remarks).toHaveCount(0);
  await expect(text).toBeFocused();
  await ines.keyboard.press("Backspace");
  await text.pressSequentially("/watch");
  await ines.keyboard.press("Enter");
  await expect(text).toHaveValue(
    "See this, @Jonas Okafor Read this aloud with a watch: it takes longer than it looks.",
  );
  await ines.keyboard.press("ControlOrMeta+Enter");
  await expect(threads(jonas)).toContainText("names you");
  await expect(threads(ines)).toBeFocused();
  await ines.locator("[data-comment]").press("Enter");
  await expect(text).toBeFocused();
  await ines.keyboard.press("Escape");
  await expect(text).toHaveCount(0);
  await expect(ines.locator("[data-comment]")).toBeFocused();
});

test("a thread on the change and one on a finding stand where they belong, also once what it found is gone", async ({
  as,
}) => {
  const { ines, jonas } = await both(as, "Where they belong", ITEM);
  await ines.getByRole("button", { name: "Comment on the change" }).click();
  await field(ines, "Comment on the change").fill("Slowly here.");
  await ines.getByRole("button", { name: "Comment", exact: true }).last().click();
  const onChange = ines.getByRole("region", { name: "Threads on the change before this item" });
  await expect(onChange.getByRole("article")).toContainText(/on the change before/);

  const finding = ines.locator("article[data-finding]").first();
  const title = await finding.getAttribute("aria-label");
  await finding.getByRole("button", { name: "Comment on this finding" }).click();
  await field(ines, "Comment on this finding").fill("On purpose?");
  await field(ines, "Comment on this finding").press("ControlOrMeta+Enter");
  const under = ines
    .locator('li:has(> article[data-finding]) + li > article[id^="thread-"]')
    .filter({ hasText: "still found" })
    .first();
  await expect(under).toContainText(`on “${title}”. It is still found.`);
  await jonas.getByRole("button", { name: /^Take out/ }).click();
  await openClass(ines);
  await expect(ines.getByText(/was taken out; it stood at \d/).first()).toBeVisible();
});

test("a lead accepts a look again; it stands again when its values change", async ({ as }) => {
  const { ines, jonas } = await both(as, "Accepted", ITEM);
  const look = ines.getByRole("button", { name: /^\d+ look again$/ });
  await look.click();
  const slip = ines.locator('article[data-finding][data-level="look"]:focus');
  await expect(slip).toHaveCount(1);
  const key = await slip.getAttribute("data-finding");
  const same = (page: Page) => page.locator(`article[data-finding="${key}"]`).first();
  const before = Number((await look.textContent())?.split(" ")[0]);
  await slip.getByRole("button", { name: "Accept as it is" }).click();
  const reason = field(ines, "Why it may stay as it is");
  await reason.fill("Too short");
  await same(ines).getByRole("button", { name: "Accept as it is" }).click();
  await expect(same(ines).getByRole("alert")).toContainText("at least three words");
  await reason.fill("They know this one well.");
  await same(ines).getByRole("button", { name: "Accept as it is" }).click();
  await expect(same(ines)).toContainText("Accepted by Ines Duarte: They know this one well.");
  for (const page of [ines, jonas]) {
    await expect(page.getByText("1 accepted", { exact: true }).first()).toBeVisible();
    await expect(page.getByRole("button", { name: `${before - 1} look again` })).toBeVisible();
  }
  expect((await new AxeBuilder({ page: ines }).analyze()).violations).toEqual([]);
  await same(ines)
    .getByText(/^Accepted by/)
    .click();
  await same(ines).getByRole("button", { name: "End the acceptance" }).click();
  await expect(ines.getByRole("button", { name: `${before} look again` })).toBeVisible();
  await expect(jonas.getByRole("button", { name: `${before} look again` })).toBeVisible();
});

test("a lead writes remarks, and takes them out of use", async ({ as }) => {
  const ines = await as("ines");
  await ines.goto("/rules");
  await ines.getByRole("link", { name: "Remarks of the studio" }).click();
  await ines.getByLabel("Words").fill("Breathe before you speak.");
  await ines.getByLabel("Belongs to").selectOption({ label: "anywhere" });
  await ines.getByRole("button", { name: "Add a remark" }).click();
  const row = ines.getByRole("listitem").filter({ hasText: "Breathe before you speak." });
  await expect(row).toHaveCount(1);
  await row.getByRole("button", { name: /^Take out of use/ }).click();
  await expect(row.getByRole("button", { name: /^Use again/ })).toBeVisible();
});

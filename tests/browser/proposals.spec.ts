/** Proposals (INV-29): a lead edits a copy of a plate, the trainee takes it whole, in part, or declines it, and goes on typing. */
import type { Page } from "@playwright/test";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, expectSaved, importPlan, more, onRail, script, test, toEndOfScript } from "./kit.ts";
import { SHORT_CLASS } from "./short-class.ts";

const SHOTS = process.env.SPRINGLINE_SHOTS;
const shot = async (page: Page, name: string) => {
  if (SHOTS) await page.screenshot({ path: `${SHOTS}/proposals-${name}.png` });
};

/** One short script, so that what goes and comes is told letter by letter. */
function planToPropose(): Plan {
  const items = SHORT_CLASS.items.map((item): Plan["items"][number] =>
    item.kind === "move"
      ? {
          ...item,
          script: [
            { kind: "setup", text: "Kneel and take the handles." },
            { kind: "form", text: "Long neck." },
          ],
        }
      : item,
  );
  return { ...SHORT_CLASS, title: "To propose for", items };
}
const firstMove = (plan: Plan): MoveItem => {
  const found = plan.items.find((item) => item.kind === "move");
  if (!found) throw new Error("no move");
  return found;
};

async function openBoth(as: (who: "jonas" | "ines") => Promise<Page>) {
  const jonas = await as("jonas");
  const plan = planToPropose();
  const id = await importPlan(jonas, plan);
  const ines = await as("ines");
  const item = firstMove(plan);
  const name = plan.moves[item.move]?.name ?? "";
  for (const page of [jonas, ines]) {
    await page.goto(`/plans/${id}`);
    await expect(onRail(page, new RegExp(name)).first()).toBeVisible();
  }
  return { jonas, ines, name, item };
}

const openPlate = async (page: Page, name: string) => {
  await onRail(page, new RegExp(name)).first().click();
  await expect(page.getByRole("complementary", { name: "The chosen item" })).toBeVisible();
};
const copyOf = (page: Page) => page.getByRole("dialog", { name: /^Propose a change/ });
const proposalOn = (page: Page) => page.getByRole("region", { name: "Proposal by Ines Duarte" });

/** Ines proposes other words, a line more, and a time of 75 s. */
async function propose(ines: Page, name: string) {
  await openPlate(ines, name);
  await ines.getByRole("button", { name: "Propose a change" }).click();
  const copy = copyOf(ines);
  await copy.getByRole("textbox", { name: "Seconds" }).fill("75");
  await copy.getByRole("textbox", { name: "Words of line 2" }).fill("Long neck, soft knees.");
  await copy.getByRole("button", { name: "Add a line" }).click();
  await expect(copy.getByRole("textbox", { name: "Words of line 3" })).toBeFocused();
  await ines.keyboard.type("Breathe out as you pull.");
  await copy.getByRole("combobox", { name: "Kind of line 3" }).selectOption("breath");
  await copy.getByRole("textbox", { name: /^Why/ }).fill("The room is new to this.");
  await expect(copy.getByRole("row", { name: /^The class/ })).toContainText(/[+−]\d/);
  await shot(ines, "copy");
  await copy.getByRole("button", { name: "Send the proposal" }).click();
  await expect(copy).toHaveCount(0);
}

test("[INV-29] a lead proposes, and the trainee takes it while typing in the same line; one undo takes it back", async ({
  as,
}) => {
  const { jonas, ines, name, item } = await openBoth(as);
  await propose(ines, name);
  await expect(onRail(jonas, new RegExp(`${name}.*1 proposal`)).first()).toBeVisible();
  await expect(jonas.getByRole("button", { name: "1 proposal" })).toBeVisible();
  await openPlate(jonas, name);
  const proposal = proposalOn(jonas);
  await expect(proposal).toContainText("The room is new to this.");
  await expect(proposal.locator("ins").filter({ hasText: "soft knees" })).toBeVisible();
  await expect(proposal.getByRole("row", { name: /^The class/ })).toContainText(/[+−]\d/);
  await shot(jonas, "plate");
  // Typed after the proposal was made, in the line that it changes.
  await toEndOfScript(jonas);
  await jonas.keyboard.type(" And smile.");
  await expect(script(jonas)).toContainText("Long neck. And smile.");
  await expectSaved(jonas);
  await proposal.getByRole("button", { name: "Take all" }).click();
  await expect(proposal).toHaveCount(0);
  await expect(script(jonas)).toContainText("Long neck, soft knees. And smile.");
  await expect(script(jonas)).toContainText("Breathe out as you pull.");
  await expect(onRail(jonas, new RegExp(`${name}.*75 seconds`)).first()).toBeVisible();
  const sign = jonas.getByText(/taken from Ines Duarte, \d+ [A-Z][a-z]+/);
  await expect(sign).toBeFocused();
  await expectSaved(jonas);
  await expect(ines.getByText(/taken from Ines Duarte/)).toBeVisible();
  await expect(onRail(jonas, /1 proposal/)).toHaveCount(0);
  await shot(jonas, "taken");

  await sign.getByRole("button", { name: "Undo" }).click();
  await expect(script(jonas)).toContainText("Long neck. And smile.");
  await expect(script(jonas)).not.toContainText("Breathe out as you pull.");
  await expect(onRail(jonas, new RegExp(`${name}.*${item.seconds} seconds`)).first()).toBeVisible();
  await expect(proposal).toBeVisible();
  await expect(sign).toHaveCount(0);
  await expect(jonas.getByRole("complementary", { name: "The chosen item" })).toBeFocused();
});

for (const [device, width, height] of [
  ["phone", 390, 844],
  ["tablet", 834, 1112],
  ["laptop", 1366, 768],
] as const)
  test(`on a ${device} a proposal is written and read, light and dark, without a barrier`, async ({ as }) => {
    const viewport = { width, height };
    const { jonas, ines, name } = await openBoth((who) => as(who, { viewport }));
    await openPlate(ines, name);
    await ines.getByRole("button", { name: "Propose a change" }).click();
    const copy = copyOf(ines);
    await copy.getByRole("textbox", { name: "Words of line 2" }).fill("Long neck, soft knees.");
    await copy.getByRole("button", { name: "One light more" }).click();
    await expect(copy.getByRole("row", { name: /^Force half way/ })).toBeVisible();
    await expectNoBarrierLightOrDark(ines);
    await shot(ines, `copy-${device}`);
    expect(await ines.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    await copy.getByRole("button", { name: "Send the proposal" }).click();
    await expect(copy).toHaveCount(0);
    await openPlate(jonas, name);
    await expect(proposalOn(jonas).getByRole("row", { name: /^Force half way/ })).toBeVisible();
    await expectNoBarrierLightOrDark(jonas);
    await proposalOn(jonas).scrollIntoViewIfNeeded();
    await shot(jonas, `plate-${device}`);
    await jonas.emulateMedia({ colorScheme: "dark" });
    await shot(jonas, `plate-${device}-dark`);
    expect(await jonas.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    await more(jonas, "Proposals");
    await jonas.getByRole("dialog", { name: "Proposals" }).locator("summary").first().click();
    await expect(jonas.getByRole("dialog").getByRole("button", { name: "Take all" })).toBeVisible();
    await expectNoBarrierLightOrDark(jonas);
    await shot(jonas, `list-${device}`);
  });

test("it is taken in part, and what no longer fits is said in a sentence", async ({ as }) => {
  const { jonas, ines, name, item } = await openBoth(as);
  await propose(ines, name);
  await openPlate(jonas, name);
  const proposal = proposalOn(jonas);
  await expect(proposal).toBeVisible();
  await jonas.getByRole("textbox", { name: "Seconds" }).fill("50");
  await jonas.keyboard.press("Enter");
  await expect(proposal).toContainText(`The time was ${item.seconds} s when this was proposed; it is 50 s now.`);
  await expect(proposal.getByRole("button", { name: "Take all that fits" })).toBeVisible();
  await proposal.getByRole("checkbox", { name: /^Words/ }).uncheck();
  await shot(jonas, "in-part");
  await proposal.getByRole("button", { name: "Take the ticked" }).click();
  await expect(proposal).toHaveCount(0);
  await expect(script(jonas)).toContainText("Breathe out as you pull.");
  await expect(script(jonas)).toContainText("Long neck.");
  await expect(onRail(jonas, new RegExp(`${name}.*50 seconds`)).first()).toBeVisible();
});

test("it is declined with a word, which its proposer reads; an unfinished copy is still there after a reload", async ({
  as,
}) => {
  const { jonas, ines, name } = await openBoth(as);
  await propose(ines, name);
  await openPlate(jonas, name);
  await proposalOn(jonas).getByRole("button", { name: "Decline…" }).click();
  await expect(jonas.getByRole("textbox", { name: "Why not, in a word" })).toBeFocused();
  await jonas.keyboard.press("Tab");
  await jonas.keyboard.press("Enter");
  await expect(proposalOn(jonas)).toContainText("Say in a word why you decline it.");
  await jonas.getByRole("textbox", { name: "Why not, in a word" }).fill("They know it from last week.");
  await proposalOn(jonas).getByRole("button", { name: "Decline", exact: true }).click();
  await expect(proposalOn(jonas)).toHaveCount(0);
  await more(ines, "Proposals");
  const list = ines.getByRole("dialog", { name: "Proposals" });
  await expect(list).toContainText("declined by Jonas");
  await expect(list).toContainText("They know it from last week.");
  await ines.keyboard.press("Escape");

  await ines.getByRole("button", { name: "Propose a change" }).click();
  await copyOf(ines).getByRole("textbox", { name: "Words of line 1" }).fill("Kneel, then the handles.");
  await ines.reload();
  await openPlate(ines, name);
  await ines.getByRole("button", { name: "Propose a change" }).click();
  await expect(copyOf(ines).getByRole("textbox", { name: "Words of line 1" })).toHaveValue("Kneel, then the handles.");
  await copyOf(ines).getByRole("button", { name: "Start again from the plan" }).click();
  await expect(copyOf(ines).getByRole("textbox", { name: "Words of line 1" })).toHaveValue(
    "Kneel and take the handles.",
  );
});

test("another order is proposed by keyboard, and taken from the list", async ({ as }) => {
  const { jonas, ines } = await openBoth(as);
  const heading = onRail(ines, /^Heading/).first();
  await heading.click();
  await ines.getByRole("button", { name: "Propose another order" }).click();
  const dialog = ines.getByRole("dialog", { name: /^Propose another order/ });
  const rows = dialog.getByRole("list").first().getByRole("listitem");
  // The list may still be loading.
  await expect(rows.nth(1)).toBeVisible();
  const [first] = await rows.evaluateAll((all) => all.map((one) => one.getAttribute("data-item")));
  await rows.first().getByRole("button", { name: /down$/ }).focus();
  await ines.keyboard.press("Alt+ArrowDown");
  await expect(rows.nth(1)).toHaveAttribute("data-item", first ?? "");
  await shot(ines, "order");
  await dialog.getByRole("button", { name: "Send the proposal" }).click();
  await expect(dialog).toHaveCount(0);

  const before = await jonas.getByRole("option").evaluateAll((all) => all.map((one) => one.id));
  await jonas.getByRole("button", { name: "1 proposal" }).click();
  const list = jonas.getByRole("dialog", { name: "Proposals" });
  await list.locator("summary").first().click();
  await shot(jonas, "list");
  await list.getByRole("button", { name: "Take all" }).click();
  await expect(list).toContainText("No proposal waits for an answer.");
  await expect(list).toContainText("taken by Jonas");
  await jonas.keyboard.press("Escape");
  const after = await jonas.getByRole("option").evaluateAll((all) => all.map((one) => one.id));
  expect(after).not.toEqual(before);
  expect([...after].sort()).toEqual([...before].sort());
});

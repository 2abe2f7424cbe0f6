/** A plan is read in two rounds by two leads: returned with main points, changed, read plate by plate, signed with its eyes open. */
import type { Page } from "@playwright/test";
import { type RunningApp, startApp } from "../support/app.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { test as base, expect, expectSaved, importPlan, more, onRail } from "./kit.ts";
import { SHORT_CLASS } from "./short-class.ts";

/** A studio of its own: Marta is a lead in it. */
const test = base.extend<object, { app: RunningApp }>({
  app: [
    // biome-ignore lint/correctness/noEmptyPattern: the test runner reads the pattern to learn what a fixture needs
    async ({}, use) => {
      const app = await startApp({ demo: true });
      await use(app);
      await app.remove();
    },
    { scope: "worker", timeout: 180_000 },
  ],
});

const shots = process.env.SPRINGLINE_SHOTS;
const shoot = async (page: Page, name: string) => {
  if (shots) await page.screenshot({ path: `${shots}/rounds-${name}.png` });
};

async function makeLead(petra: Page, url: string, name: string): Promise<void> {
  const people: { id: string; name: string }[] = await (await petra.request.get("/api/people")).json();
  const id = people.find((person) => person.name.startsWith(name))?.id;
  const sent = await petra.request.patch(`/api/people/${id}`, {
    headers: { origin: url },
    data: { roles: ["coach", "lead"] },
  });
  expect(sent.ok()).toBe(true);
}

async function openRail(page: Page, id: string): Promise<void> {
  await page.goto(`/plans/${id}`);
  await expect(page.getByRole("listbox", { name: "The class, item by item" })).toBeVisible();
}

async function offer(page: Page, note: string): Promise<void> {
  await page.getByRole("button", { name: "Offer for reading" }).click();
  const dialog = page.getByRole("dialog", { name: "Offer for reading" });
  await dialog.getByLabel("A note to the lead (optional)").fill(note);
  await dialog.getByRole("button", { name: "Offer for reading" }).click();
  await expect(dialog).toHaveCount(0);
}

const changed = (page: Page) => page.getByRole("combobox", { name: "What changed" });
const chosen = (page: Page) => page.getByRole("option", { selected: true });

test("[INV-27] three people and two rounds, to a signed edition", async ({ as, app }) => {
  test.setTimeout(240_000);
  const [jonas, ines, marta, petra] = [await as("jonas"), await as("ines"), await as("marta"), await as("petra")];
  await makeLead(petra, app.url, "Marta");
  const lines = SHORT_CLASS.items.map((item) => (item.id === "row-left" ? { ...item, seconds: 60 } : item));
  const id = await importPlan(jonas, { ...SHORT_CLASS, items: lines } as typeof SHORT_CLASS);

  await test.step("the trainee offers it; one lead takes it up and the other sees it", async () => {
    await openRail(jonas, id);
    await offer(jonas, "My first one");
    await openRail(ines, id);
    await openRail(marta, id);
    await expect(marta.getByText("No lead has taken up the reading yet.")).toBeVisible();
    await ines.getByRole("button", { name: "Take up the reading" }).click();
    await expect(ines.getByText(/^You are reading it, since/)).toBeVisible();
    await expect(marta.getByText(/^Ines .* is reading it, since/)).toBeVisible();
    await expect(jonas.getByText(/^Ines .* is reading it, since/)).toBeVisible();
    await marta.goto("/desk");
    await expect(marta.getByText(/Ines .* is reading it/)).toBeVisible();
    await openRail(marta, id);
  });

  await test.step("the other lead is told before they return it, and takes the reading over knowingly", async () => {
    await marta.getByRole("button", { name: "Return with notes" }).click();
    const dialog = marta.getByRole("dialog", { name: "Return with notes" });
    await expect(dialog.getByText(/Ines .* has been reading this plan/)).toBeVisible();
    await expect(dialog.getByRole("button", { name: "Return with notes" })).toHaveAttribute("aria-disabled", "true");
    await shoot(marta, "return-while-read");
    await dialog.getByRole("button", { name: "Not now" }).click();
    await marta.getByRole("button", { name: /^Take over from Ines/ }).click();
    await expect(ines.getByText(/^Marta .* is reading it, since/)).toBeVisible();
    await ines.getByRole("button", { name: /^Take over from Marta/ }).click();
    await expect(ines.getByText(/^You are reading it/)).toBeVisible();
  });

  await test.step("it is returned with main points, which head the author's plan", async () => {
    await ines.getByRole("button", { name: "Return with notes" }).click();
    const dialog = ines.getByRole("dialog", { name: "Return with notes" });
    await dialog.getByLabel("What should be changed").fill("Nearly there.");
    await dialog.getByLabel("Main point 1").fill("Name the springs");
    await dialog.getByLabel("Main point 2").fill("Start the press sooner");
    await dialog.getByRole("button", { name: "Return with notes" }).click();
    await expect(dialog).toHaveCount(0);
    const points = jonas.getByRole("list", { name: "Main points" }).getByRole("listitem");
    await expect(points).toHaveText(["Name the springs", "Start the press sooner"]);
    await expect(jonas.getByText("Nearly there.")).toBeVisible();
    await shoot(jonas, "returned");
  });

  await test.step("what the author changes since is marked on their plates", async () => {
    await expect(changed(jonas).locator("option:checked")).toContainText("returned it, round 1");
    await onRail(jonas, /^Seated chest press/).focus();
    await jonas.keyboard.press("-");
    for (const key of ["Home", "Delete"]) await jonas.keyboard.press(key);
    await expect(onRail(jonas, /^Seated chest press/)).toContainText("changed");
    await expect(onRail(jonas, /^Seated row, right/)).toContainText("removed above it");
    await onRail(jonas, /^Seated row, left/).click();
    await jonas.getByRole("textbox", { name: /^Script of/ }).click();
    await jonas.keyboard.press("ControlOrMeta+Home");
    await jonas.keyboard.type("Now ");
    await expectSaved(jonas);
    await expect(jonas.getByRole("region", { name: "What changed" }).locator("ins")).toContainText("Now");
    await shoot(jonas, "author");
    await jonas.keyboard.press("Escape");
    await offer(jonas, "Done");
    await expect(jonas.getByRole("list", { name: "Main points" })).toHaveCount(0);
  });

  await test.step("the lead goes through changed plates only, by keyboard, and marks them read", async () => {
    await expect(changed(ines).locator("option:checked")).toContainText("since I returned it, round 1");
    await expect(ines.getByText("0 of 2 changed plates read, one removed")).toBeVisible();
    await onRail(ines, /^Seated row, right/).focus();
    await ines.keyboard.press("n");
    await expect(chosen(ines).and(onRail(ines, /^Seated row, left/))).toBeFocused();
    await expect(ines.getByRole("region", { name: "What changed" }).locator("ins")).toContainText("Now");
    await shoot(ines, "lead-plate");
    await expectNoBarrierLightOrDark(ines);
    await ines.keyboard.press("m");
    await expect(ines.locator("header").getByText("1 of 2 changed plates read")).toBeVisible();
    await expect(ines.getByText("1 of 2 changed plates read, one removed")).toBeVisible();
    await expect(chosen(ines).and(onRail(ines, /^Seated chest press/))).toBeFocused();
    await ines.keyboard.press("m");
    await expect(ines.getByText("2 of 2 changed plates read, one removed")).toBeVisible();
    await ines.reload();
    await expect(ines.getByText("2 of 2 changed plates read, one removed")).toBeVisible();
    await expect(marta.getByText("0 of 2 changed plates read, one removed")).toBeVisible();
  });

  await test.step("a plate that changes again is to be read again", async () => {
    await jonas.reload();
    await onRail(jonas, /^Seated chest press/).focus();
    await jonas.keyboard.press("-");
    await expectSaved(jonas);
    await expect(ines.getByText("1 of 2 changed plates read, one removed")).toBeVisible();
  });

  await test.step("the review tells the same however often it is opened, and leaves nothing open in silence", async () => {
    for (let times = 0; times < 2; times++) {
      await ines.getByRole("button", { name: "Review and sign" }).click();
      const review = ines.getByRole("dialog", { name: "Review and sign" });
      await expect(review.getByText("Changed since you returned it:")).toBeVisible();
      await expect(review).toContainText("Seated chest press: 60 s became");
      await review.getByRole("button", { name: "Close" }).click();
    }
  });

  await test.step("what is left open is ticked before it is signed; the edition ends the second round", async () => {
    for (const key of ["+", "+"]) await jonas.keyboard.press(key); // the class ends on time again
    await expectSaved(jonas);
    await expect(ines.getByText("The one changed plate is read, one removed")).toBeVisible();
    await ines.getByRole("button", { name: "Review and sign" }).click();
    const review = ines.getByRole("dialog", { name: "Review and sign" });
    const sign = review.getByRole("button", { name: /Sign off edition 1/ });
    await expect(sign).toHaveAttribute("aria-disabled", "true");
    await review.getByRole("checkbox", { name: /left open$/ }).scrollIntoViewIfNeeded();
    await shoot(ines, "left-open");
    await review.getByRole("checkbox", { name: /left open$/ }).check();
    await sign.click();
    await expect(ines.getByText(/signed off · edition 1/)).toBeVisible();
    await expect(jonas.getByText(/signed off · edition 1/)).toBeVisible();
  });

  await test.step("every round is there, with what was found and changed between any two moments", async () => {
    await more(ines, "Rounds of reading");
    await expect(ines.getByRole("heading", { name: "Rounds of reading" })).toBeVisible();
    const first = ines.getByRole("region", { name: "Round 1: returned with notes" });
    await expect(first).toContainText("My first one");
    await expect(first).toContainText("Nearly there.");
    await expect(first).toContainText("Name the springs");
    await expect(ines.getByRole("region", { name: "Round 2: signed off as edition 1" })).toContainText("Done");
    const choose = async (label: "From" | "To", words: RegExp) =>
      ines.getByLabel(label, { exact: true }).selectOption({ label: await labelOf(ines, label, words) });
    await choose("From", /^returned by .* round 1/);
    const list = ines.getByRole("list", { name: "What changed" });
    await expect(list).toContainText("was removed.");
    await first.getByText("Findings and threads then").first().click();
    await expect(first).toContainText("No threads.");
    await shoot(ines, "view");
    await choose("From", /^offered by .* round 1/);
    await choose("To", /^returned by .* round 1/);
    await expect(ines.getByText("Nothing has changed.")).toBeVisible();
    await expectNoBarrierLightOrDark(ines);
    await ines.keyboard.press("Escape");
    await expect(ines.getByRole("listbox", { name: "The class, item by item" })).toBeVisible();
  });
});

async function labelOf(page: Page, select: string, words: RegExp): Promise<string> {
  const labels = await page.getByLabel(select, { exact: true }).locator("option").allTextContents();
  return labels.find((label) => words.test(label)) ?? "";
}

for (const [name, width, height] of [
  ["phone", 390, 844],
  ["tablet", 834, 1112],
] as const)
  test(`rounds and changes on a ${name}`, async ({ as, app }) => {
    const [jonas, petra] = [await as("jonas"), await as("petra")];
    await makeLead(petra, app.url, "Marta");
    const marta = await as("marta", { viewport: { width, height } });
    const id = await importPlan(jonas, SHORT_CLASS);
    const step = (page: Page, what: string, data: object) =>
      page.request.post(`/api/plans/${id}/${what}`, { headers: { origin: app.url }, data });
    expect((await step(jonas, "hand-in", {})).ok()).toBe(true);
    expect(
      (await step(marta, "hand-back", { note: "Even sides", mainPoints: ["Sides", "Words", "Springs"] })).ok(),
    ).toBe(true);
    await openRail(jonas, id);
    await onRail(jonas, /^Seated row, left/).focus();
    for (let i = 0; i < 3; i++) await jonas.keyboard.press("+");
    await expectSaved(jonas);
    expect((await step(jonas, "hand-in", {})).ok()).toBe(true);
    await openRail(marta, id);
    const count = (words: string) => marta.getByText(words).filter({ visible: true }).first();
    await expect(count("The one changed plate is not read yet")).toBeVisible();
    await marta.getByRole("button", { name: "Next changed plate" }).click();
    await expect(marta.getByRole("region", { name: "What changed" })).toContainText("45 s became");
    await shoot(marta, `${name}-plate`);
    await marta.getByRole("button", { name: "Mark as read" }).first().click();
    await expect(count("The one changed plate is read")).toBeVisible();
    await marta.getByRole("button", { name: "As a list" }).click();
    await expect(marta.getByRole("region", { name: "Round 1: returned with notes" })).toBeVisible();
    expect(await marta.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    await shoot(marta, `${name}-view`);
    await expectNoBarrierLightOrDark(marta);
  });

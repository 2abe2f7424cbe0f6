/**
 * Writing a script: kinds by key, live fields by typing, lines from the library, lines pasted into another
 * item, the read-through, and the coach's own rate. By mouse, by keyboard, on a phone.
 */
import type { Page } from "@playwright/test";
import { CUE_KINDS, type Plan } from "#lib/plan/schema.ts";
import { expectNoBarrier } from "../support/barriers.ts";
import { longClass } from "../support/long-class.ts";
import { expect, importPlan, intoScript, onRail, openClass, script, test, toEndOfScript } from "./kit.ts";

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;
const editors = (page: Page) => page.locator(".ProseMirror");
const lines = (page: Page) => script(page).locator(".script-line");
const words = (page: Page) => page.getByRole("region", { name: "Read-through" });
const place = (page: Page, kind: string) => words(page).getByRole("button", { name: new RegExp(`${kind}.*coach`) });

/** A plan of its own with two moves of the long class and few lines. */
function twoMoves(): Plan {
  const plan = longClass(60, 400);
  const [first, second] = plan.items.flatMap((item) => (item.kind === "move" ? [item] : []));
  if (!first || !second) throw new Error("no two moves");
  const items = [
    { ...first, script: [{ kind: "setup" as const, text: "One light spring on." }] },
    { ...second, script: [{ kind: "form" as const, text: "Long neck." }] },
  ];
  return { ...plan, title: "Two moves", items };
}

async function openScript(page: Page, nth: number): Promise<void> {
  await onRail(page, /seconds from/)
    .nth(nth)
    .click();
  await intoScript(page);
}

test("in a plan of 60 items and 400 lines an editor exists only where somebody writes", async ({ as }) => {
  const page = await as("ines");
  const id = await importPlan(page, { ...longClass(60, 400), title: "Long class" });
  await page.goto(`/plans/${id}`);
  await expect(onRail(page, /seconds from/).first()).toBeVisible();
  await expect(editors(page)).toHaveCount(0);
  for (const nth of [3, 20, 40]) {
    await openScript(page, nth);
    await expect(editors(page)).toHaveCount(1);
  }
  await page.getByRole("button", { name: "Read-through" }).click();
  await expect(words(page).getByRole("button").first()).toBeVisible();
  expect(await words(page).locator("[data-line]").count()).toBeGreaterThan(400);
  await expect(editors(page)).toHaveCount(1);
});

test("a key for each kind, a live field by typing, a line from the library", async ({ as }) => {
  const page = await as("ines");
  const id = await importPlan(page, twoMoves());
  await page.goto(`/plans/${id}`);
  await openScript(page, 0);
  for (const [i, kind] of CUE_KINDS.entries()) {
    await page.keyboard.press(`Alt+${i + 1}`);
    await expect(lines(page).first()).toHaveAttribute("data-kind", kind);
  }
  await page.keyboard.press("End");
  await page.keyboard.press("Enter");
  await page.keyboard.type("Next is {nex");
  await expect(page.getByRole("listbox", { name: "Live fields" })).toBeVisible();
  await page.keyboard.press("Enter");
  await expect(lines(page).nth(1).locator(".script-field")).toHaveCount(1);

  const before = await lines(page).count();
  await page.locator("summary", { hasText: "from the library" }).click();
  await page.getByRole("button", { name: /add$/ }).first().click();
  await expect(lines(page)).toHaveCount(before + 1);

  await onRail(page, /seconds from/)
    .first()
    .focus();
  await page.keyboard.press("?");
  const help = page.getByRole("dialog", { name: "Help" });
  for (const key of CUE_KINDS.keys()) await expect(help.getByText(`Alt + ${key + 1}`, { exact: true })).toBeVisible();
});

test("talk against time in seconds: in the script's bar, on the rail and for screen readers", async ({ as }) => {
  const page = await as("ines");
  const plan = twoMoves();
  const long = "Long neck, soft knees, ribs heavy, and let the carriage come to you all the way. ".repeat(20);
  const items = plan.items.map((item, i) =>
    i === 1 && item.kind === "move" ? { ...item, script: [{ kind: "form" as const, text: long }] } : item,
  );
  const id = await importPlan(page, { ...plan, items });
  await page.goto(`/plans/${id}`);
  await expect(onRail(page, /s to say, [\d.]+ s of time(?!:)/)).toHaveCount(1);
  const over = onRail(page, /s to say, [\d.]+ s of time: [\d.]+ s too much/);
  await expect(over).toHaveCount(1);
  await expect(over.locator("[data-over]")).toHaveCount(1);
  await expect(over).toContainText("s too much talk");
  await over.click();
  await expect(page.getByRole("region", { name: /^Script of/ })).toContainText(/s of time: [\d.]+ s too much/);
});

test("a line pasted into another item keeps its kind and live field, and reads well elsewhere", async ({ as }) => {
  const page = await as("ines");
  const id = await importPlan(page, twoMoves());
  await page.goto(`/plans/${id}`);
  await openScript(page, 0);
  await page.keyboard.press("End");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Alt+8");
  await page.keyboard.type("Mind your knees, then {next-move}");
  await lines(page)
    .nth(1)
    .locator(".script-words")
    .click({ clickCount: 3, position: { x: 30, y: 12 } });
  await page.keyboard.press("ControlOrMeta+x");
  await expect(lines(page)).toHaveCount(1);

  await onRail(page, /seconds from/)
    .nth(1)
    .click();
  await toEndOfScript(page);
  await page.keyboard.press("ControlOrMeta+v");
  await expect(lines(page)).toHaveCount(2);
  await expect(lines(page).nth(1)).toHaveAttribute("data-kind", "safety");
  await expect(lines(page).nth(1).locator(".script-field")).toHaveCount(1);
  await expect(lines(page).first()).toHaveAttribute("data-kind", "form");

  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.press("ControlOrMeta+c");
  await openClass(page);
  const notes = page.getByRole("textbox", { name: "Notes for the team" });
  await notes.click();
  await page.keyboard.press("ControlOrMeta+v");
  await expect(notes).toHaveValue(/form: Long neck\.\nsafety: Mind your knees, then \{next-move\}/);
});

test("read-through by keyboard: from the rail, line by line, into the script and back", async ({ as }) => {
  const page = await as("ines");
  const id = await importPlan(page, { ...longClass(60, 400), title: "Long class" });
  await page.goto(`/plans/${id}`);
  await onRail(page, /seconds from/)
    .first()
    .focus();
  await page.keyboard.press("r");
  await expect(page).toHaveURL(/view=read-through/);
  await expect(words(page)).toContainText("set aside");
  await expect(words(page)).toContainText("Coming up:");
  const first = words(page).locator("[data-line]").first();
  await expect(first).toBeFocused();
  await page.keyboard.press("PageDown");
  await page.keyboard.press("ArrowDown");
  const line = words(page).locator("[data-line]:focus");
  const said = await line.locator("span").last().textContent();
  await page.keyboard.press("Enter");
  await expect(script(page)).toBeFocused();
  const held = await page.evaluate(
    () => getSelection()?.anchorNode?.parentElement?.closest(".script-line")?.textContent,
  );
  expect(held).toContain((said ?? "?").slice(0, 12));
  await page.keyboard.type(" Tall.");
  await expect(words(page)).toContainText("Tall.");
  await page.getByRole("button", { name: "Rail", exact: true }).click();
  await expect(onRail(page, /seconds from/).first()).toBeVisible();
});

test("the read-through on a phone, accessible, and on paper", async ({ as }) => {
  const page = await as("ines", PHONE);
  const id = await importPlan(page, twoMoves());
  await page.goto(`/plans/${id}?view=read-through`);
  await place(page, "form").first().tap();
  await expect(script(page)).toBeVisible();
  await expect(lines(page).first()).toContainText("Long neck.");
  await page.getByRole("button", { name: "Back to the read-through" }).click();
  await expect(place(page, "form").first()).toBeVisible();
  await expectNoBarrier(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("button", { name: "Rail", exact: true })).toBeHidden();
  await expect(words(page)).toContainText("Long neck.");
});

const sheet = (page: Page) => page.getByRole("dialog", { name: "Find your own rate" });

test("the read-aloud check: a double tap is refused, readings are combined and taken as one step", async ({ as }) => {
  const page = await as("ines");
  const id = await importPlan(page, { ...longClass(60, 400), title: "Long class" });
  await page.goto(`/plans/${id}`);
  await page.getByRole("button", { name: "of the class is talk" }).click();
  const panel = page.getByRole("complementary", { name: "The class" });
  await expect(panel).toContainText("heads-ups and count-ins included");
  await panel.getByRole("button", { name: "Read aloud to find your rate" }).click();
  await page.clock.install();

  await sheet(page).getByRole("button", { name: "Start reading" }).click();
  await sheet(page).getByRole("button", { name: "I have finished" }).click();
  await expect(sheet(page).getByRole("alert")).toContainText("too short");
  await expect(sheet(page).getByRole("button", { name: /^Take/ })).toHaveCount(0);

  const read = async (seconds: number, name: RegExp) => {
    await sheet(page).getByRole("button", { name }).focus();
    await page.keyboard.press("Space");
    await page.clock.fastForward(seconds * 1000);
    await page.keyboard.press("Space");
  };
  await read(60, /Start reading/);
  await expect(sheet(page)).toContainText("From one reading.");
  await read(50, /Read again/);
  await expect(sheet(page)).toContainText("2 readings taken together");
  await expect(sheet(page)).toContainText("read once more, or leave out");
  await sheet(page).getByRole("button", { name: "Leave this one out" }).last().click();
  const table = sheet(page).getByRole("table", { name: "What it changes in this plan" });
  await expect(table.getByRole("row", { name: /^Syllables a second/ })).toContainText("4.5");
  const take = sheet(page).getByRole("button", { name: /^Take .* syllables a second$/ });
  const rate = /Take ([\d.]+)/.exec((await take.textContent()) ?? "")?.[1] ?? "";
  expect(Number(rate)).toBeLessThan(4.5);
  await take.click();
  await expect(sheet(page)).toHaveCount(0);
  const field = panel.getByLabel("Rate, syllables a second");
  await expect(field).toHaveValue(rate);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(field).toHaveValue("");
});

test("the read-aloud check on a phone, accessible", async ({ as }) => {
  const page = await as("ines", PHONE);
  const id = await importPlan(page, twoMoves());
  await page.goto(`/plans/${id}`);
  await page.getByRole("button", { name: "of the class is talk" }).tap();
  await page.getByRole("button", { name: "Read aloud to find your rate" }).tap();
  await expect(sheet(page).getByRole("button", { name: "Start reading" })).toBeInViewport();
  await page.clock.install();
  await sheet(page).getByRole("button", { name: "Start reading" }).tap();
  await page.clock.fastForward(55_000);
  await sheet(page).getByRole("button", { name: "I have finished" }).tap();
  await expect(sheet(page).getByRole("table")).toBeVisible();
  await expectNoBarrier(page, { within: "dialog[open]" });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});

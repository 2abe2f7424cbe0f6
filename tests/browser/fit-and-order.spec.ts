/**
 * Fit to length and Fewer set-ups with two people in one plan: previews stay current, what is taken is what was shown, one
 * undo restores exactly what was there, and what the other person wrote meanwhile stays.
 */
import type { Page } from "@playwright/test";
import type { Plan } from "#lib/plan/schema.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { expectNoBarrier, expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, expectSaved, importPlan, more, onRail, openClass, openDrawer, test, toEndOfScript } from "./kit.ts";
import { TURNING_CLASS } from "./turning-class.ts";

/** A plan of the whole team, opened. */
async function make(page: Page, plan: Plan = TURNING_CLASS): Promise<string> {
  const id = await importPlan(page, plan, { team: true });
  await open(page, id);
  return id;
}

async function open(page: Page, id: string): Promise<void> {
  await page.goto(`/plans/${id}`);
  await expect(onRail(page, /Kneeling press/).first()).toBeVisible();
  await expectSaved(page);
}

/** The plan as the server stores it. */
async function file(page: Page, id: string): Promise<Plan> {
  const parsed = parsePlan(await (await page.request.get(`/api/plans/${id}/file`)).text());
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.plan;
}
const times = ({ items, closingSeconds }: Plan) => [
  ...items.map((item) => [item.id, item.kind === "heading" ? null : item.seconds]),
  ["closing", closingSeconds],
];
const clock = (page: Page, total: string) => page.locator("main > header").getByText(total, { exact: true });
const fitDialog = (page: Page) => page.getByRole("dialog", { name: "Fit to length" });
const orderDialog = (page: Page) => page.getByRole("dialog", { name: "Fewer set-ups" });
const rowOf = (page: Page, name: RegExp) => fitDialog(page).getByRole("row", { name });
const cells = (page: Page, name: RegExp) => rowOf(page, name).first().getByRole("cell");

/** Presses Tab until the button of that name has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    await page.keyboard.press("Tab");
    const here = await page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");
    if (here === name) return;
  }
  throw new Error(`no way to ${name} by Tab`);
}

test("the preview follows what the other writes; taking it is one step, and one undo restores exactly the old times", async ({
  as,
}) => {
  const marta = await as("marta");
  const ines = await as("ines");
  const id = await make(marta);
  await open(ines, id);
  await expect(clock(marta, "8:34")).toBeVisible();
  await marta.getByRole("button", { name: "Fit to length" }).click();
  await expect(fitDialog(marta)).toContainText("of 10:00 · 86 s free");
  await expect(fitDialog(marta)).toContainText("of 10:00 · to the second");
  await expect(fitDialog(marta)).toContainText("the closing takes the 3 s left over and is 63 s long");
  await expect(fitDialog(marta)).toContainText("Largest difference: Side reach, left, 19 s longer (42%)");
  await expect(cells(marta, /^Kneeling press/)).toHaveText([/^60$/, /^72$/, /^\+12$/, /30 to 90 s/, /Keep 60 s/]);

  await openClass(ines);
  await ines.getByRole("textbox", { name: "Title" }).fill("Turning about at dusk");
  await onRail(ines, /Kneeling press/)
    .first()
    .click();
  await ines.getByLabel("Seconds", { exact: true }).fill("70");
  await ines.keyboard.press("Enter");
  await expect(
    fitDialog(marta).getByText(/The plan changed while this was open: the times below are up to date/),
  ).toBeVisible();
  await expect(cells(marta, /^Kneeling press/).first()).toHaveText("70");
  await expect(clock(ines, "8:44"), "nothing is taken yet").toBeVisible();
  await expectSaved(ines);
  const before = await file(marta, id);

  await fitDialog(marta).getByRole("button", { name: "Take these times" }).click();
  await expect(fitDialog(marta)).toHaveCount(0);
  for (const page of [marta, ines]) {
    await expect(clock(page, "10:00")).toBeVisible();
    await expect(page.getByText("of 10:00 · to the second")).toBeVisible();
  }
  await expectSaved(marta);
  const taken = await file(marta, id);
  // What whole repetitions leave over, less than one grid step, goes to the closing.
  expect(taken.closingSeconds).toBeGreaterThanOrEqual(60);
  expect(taken.closingSeconds).toBeLessThan(65);
  const sides = taken.items
    .filter((item) => item.id.startsWith("reach"))
    .map((item) => "seconds" in item && item.seconds);
  expect(new Set(sides).size, "left and right get the same").toBe(1);

  await onRail(ines, /Kneeling pull/)
    .first()
    .click();
  await toEndOfScript(ines);
  await ines.keyboard.type(" Elbows by the ribs.");
  await expectSaved(ines);
  await marta.getByRole("button", { name: "Undo" }).click();
  for (const page of [marta, ines]) await expect(clock(page, "8:44")).toBeVisible();
  await expectSaved(marta);
  const after = await file(marta, id);
  expect(times(after)).toEqual(times(before));
  expect(after.title).toBe("Turning about at dusk");
  expect(after.items.find((item) => item.id === "pull-1")).toMatchObject({
    script: [{ kind: "setup", text: expect.stringContaining("Elbows by the ribs.") }],
  });
});

test("a class with all times locked says what stops it and leads there; with one lock less it fits", async ({ as }) => {
  const marta = await as("marta");
  const id = await make(marta);
  await marta.getByRole("button", { name: "Fit to length" }).click();
  const boxes = fitDialog(marta).getByRole("checkbox");
  await expect(boxes).toHaveCount(6);
  for (let i = 0; i < 5; i++) await boxes.nth(i).check();
  await expect(rowOf(marta, /^Side reach, right/)).toContainText("kept");
  await expect(rowOf(marta, /^Side reach, left/)).toContainText("as its other side");
  await boxes.nth(5).check();
  await expect(fitDialog(marta).locator(".problem")).toHaveText(
    "Nothing in the class may change: it takes 8 min 34 s, 86 s less than its slot.",
  );
  await expect(fitDialog(marta).getByRole("button", { name: "Take these times" })).toHaveCount(0);
  await expectNoBarrier(marta);
  await fitDialog(marta)
    .getByRole("list", { name: "What prevents it" })
    .getByRole("button", { name: "Kneeling pull" })
    .last()
    .click();
  await expect(fitDialog(marta)).toHaveCount(0);
  await expect(onRail(marta, /Kneeling pull/).last()).toBeFocused();
  await expect(onRail(marta, /Kneeling pull/).last()).toHaveAttribute("aria-selected", "true");
  await expect(marta.getByLabel("Lock this time")).toBeChecked();

  await marta.getByRole("button", { name: "Fit to length" }).click();
  await fitDialog(marta)
    .getByRole("button", { name: /Let them? change/ })
    .first()
    .click();
  await expect(fitDialog(marta).getByRole("button", { name: "Take these times" })).toBeVisible();
  await marta.keyboard.press("Escape");
  await expectSaved(marta);
  expect(times(await file(marta, id)), "no time has changed").toEqual(times(TURNING_CLASS));
});

test("Fewer set-ups by keyboard: it saves what it said, and one undo restores everything", async ({ as }) => {
  const marta = await as("marta");
  const id = await make(marta);
  await onRail(marta, /Heading: To and fro/).focus();
  await marta.keyboard.press("Home");
  await marta.keyboard.press("Enter");
  await tabTo(marta, "Fewer set-ups");
  await marta.keyboard.press("Enter");
  await expect(orderDialog(marta)).toContainText("27 s less for changes");
  await expect(orderDialog(marta)).toContainText("43 s now, 16 s then");
  await expect(orderDialog(marta)).toContainText("On the clock the class takes 8:34 now and 8:11 then, 23 s less.");
  await expect(orderDialog(marta)).toContainText("Proven");
  await expect(
    orderDialog(marta)
      .getByRole("row", { name: /springs on or off/ })
      .getByRole("cell"),
  ).toHaveText(["4", "1"]);
  await expect(
    orderDialog(marta)
      .getByRole("row", { name: /quarter turns/ })
      .getByRole("cell"),
  ).toHaveText(["8", "2"]);
  await expect(clock(marta, "8:34"), "nothing moves before it is taken").toBeVisible();
  await tabTo(marta, "Take this order");
  await marta.keyboard.press("Enter");
  await expect(orderDialog(marta)).toHaveCount(0);
  await expect(clock(marta, "8:11")).toBeVisible();
  await expectSaved(marta);
  const ids = (plan: Plan) => plan.items.map((item) => item.id);
  expect(ids(await file(marta, id))).toEqual([
    "block",
    "pull-1",
    "pull-2",
    "press-1",
    "press-2",
    "sides",
    "reach-right",
    "reach-left",
  ]);
  await marta.keyboard.press("Control+z");
  await expect(clock(marta, "8:34")).toBeVisible();
  await expectSaved(marta);
  expect(ids(await file(marta, id))).toEqual(ids(TURNING_CLASS));
});

test("what holds an item in place is seen by both, kept by the new order, and two people can hold one item at once", async ({
  as,
}) => {
  const marta = await as("marta");
  const ines = await as("ines");
  const id = await make(marta);
  await open(ines, id);
  const lastPull = (page: Page) => onRail(page, /Kneeling pull/).last();
  await lastPull(marta).click();
  await openDrawer(marta);
  await marta.getByLabel(/Stays next to the one above/).check();
  await expect(lastPull(ines)).toContainText("stays next to the one above");
  for (const page of [marta, ines])
    await onRail(page, /Kneeling press/)
      .first()
      .click();
  await openDrawer(ines);
  const after = (page: Page) => page.getByRole("combobox", { name: "Comes after" });
  await ines.context().setOffline(true);
  await after(ines).selectOption({ label: "Kneeling press at 3:19" });
  await after(marta).selectOption({ label: "Kneeling pull at 2:10" });
  await ines.context().setOffline(false);
  for (const page of [marta, ines]) {
    await expect(page.getByRole("list", { name: "Comes after" }).getByRole("listitem")).toHaveCount(2, {
      timeout: 30_000,
    });
  }
  await expect(onRail(ines, /Kneeling press/).first()).toContainText("should come after Kneeling p");
  await expect(ines.getByRole("list", { name: "Comes after" })).toContainText("It comes before it now.");

  await more(marta, "Fewer set-ups");
  await expect(orderDialog(marta)).toContainText("Kneeling pull at 4:29 stays right below Kneeling press at 3:19.");
  await expect(orderDialog(marta)).toContainText("Kneeling press at 1:00 comes after Kneeling pull at 2:10.");
  await expect(orderDialog(marta)).toContainText(/Without this, the changes would take \d+ s, \d+ s less/);
  await orderDialog(marta).getByRole("button", { name: "Take this order" }).click();
  await expectSaved(marta);
  const { items } = await file(marta, id);
  const place = (name: string) => items.findIndex((item) => item.id === name);
  expect(place("pull-2")).toBe(place("press-2") + 1);
  expect(place("press-1")).toBeGreaterThan(place("pull-1"));

  await lastPull(ines).click();
  await ines.getByLabel(/Stays next to the one above/).uncheck();
  await expect(lastPull(marta)).not.toContainText("stays next");
});

test("a class without headings explains what a block is, and can make one", async ({ as }) => {
  const marta = await as("marta");
  const id = await make(marta, {
    ...TURNING_CLASS,
    items: TURNING_CLASS.items.filter((item) => item.kind !== "heading"),
  });
  await more(marta, "Fewer set-ups");
  await expect(orderDialog(marta)).toContainText("This class has no heading yet");
  await orderDialog(marta).getByRole("button", { name: "Put a heading at the top" }).click();
  await expect(orderDialog(marta).getByRole("button", { name: "Take this order" })).toBeVisible();
  await expectSaved(marta);
  expect((await file(marta, id)).items[0]?.kind).toBe("heading");
});

test("on a phone: what stops the fit opens its sheet, and the times are taken by touch", async ({ as }) => {
  const marta = await as("marta", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  const stiff = TURNING_CLASS.items.map((item) =>
    item.kind === "move" ? { ...item, locked: item.id !== "pull-2" } : item,
  );
  await make(marta, { ...TURNING_CLASS, items: stiff });
  await more(marta, "Fit to length");
  await expect(fitDialog(marta)).toContainText("Even with everything at its longest");
  for (const box of await fitDialog(marta).getByRole("checkbox").all()) {
    const size = await box.locator("..").boundingBox();
    expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(44);
  }
  await fitDialog(marta).getByRole("list", { name: "What prevents it" }).getByRole("button").tap();
  await expect(marta.getByRole("complementary", { name: "The chosen item" })).toContainText("Kneeling pull");
  await more(marta, "Fit to length");
  for (const name of [/Kneeling press at 1:00/, /Kneeling press at 3:19/, /Kneeling pull at 2:10/]) {
    await fitDialog(marta).getByRole("checkbox", { name }).tap();
  }
  await fitDialog(marta).getByRole("button", { name: "Take these times" }).tap();
  await expect(clock(marta, "10:00")).toBeVisible();
});

test("both previews are accessible, light and dark", async ({ as }) => {
  const marta = await as("marta");
  await make(marta);
  await marta.getByRole("button", { name: "Fit to length" }).click();
  await expect(fitDialog(marta)).toBeVisible();
  await expectNoBarrierLightOrDark(marta);
  await marta.keyboard.press("Escape");
  await onRail(marta, /Kneeling press/)
    .first()
    .click();
  await expectNoBarrierLightOrDark(marta);
  await more(marta, "Fewer set-ups");
  await expect(orderDialog(marta)).toBeVisible();
  await expectNoBarrierLightOrDark(marta);
});

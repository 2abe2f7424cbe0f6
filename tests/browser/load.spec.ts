/**
 * The load of an item, used to decide whether the springs can stay on, which springs are one step lighter or
 * heavier, and where people start; by mouse, by touch and by keyboard. Numbers are looked up in the plan's own file.
 */
import type { Page } from "@playwright/test";
import { keepSprings } from "#lib/load/keep-springs.ts";
import { forceN, travelMm } from "#lib/load/load.ts";
import { moveItems, moveOf } from "#lib/plan/lookup.ts";
import type { MoveItem, Plan } from "#lib/plan/schema.ts";
import { expectNoBarrier } from "../support/barriers.ts";
import { expect, expectSaved, onRail, openClass, openDrawer, openPlan, test } from "./kit.ts";

const PLAN = "Upper body and trunk";
const CURL = "Kneeling biceps curl";

const load = (page: Page) => page.getByRole("region", { name: "Load" });
const slider = (page: Page) => load(page).getByRole("slider", { name: "Start" });
const own = (page: Page) => load(page).getByRole("row", { name: /as it is/ });
const middleOf = async (page: Page) => Number(await own(page).getByRole("cell").nth(1).textContent());

async function openItem(page: Page, name: string): Promise<void> {
  await openPlan(page, PLAN);
  await onRail(page, name).first().click();
  await openDrawer(page);
  await expect(load(page)).toBeVisible();
}

/** The plan as the server stores it, and its item of that name. */
async function stored(page: Page, name: string): Promise<{ plan: Plan; item: MoveItem }> {
  await expectSaved(page);
  const id = /\/plans\/([^/?]+)/.exec(page.url())?.[1];
  const plan: Plan = await (await page.request.get(`/api/plans/${id}/file`)).json();
  const item = moveItems(plan).find((i) => moveOf(plan, i)?.name === name);
  if (!item) throw new Error(`no ${name} in the plan`);
  return { plan, item };
}

function middle(plan: Plan, item: MoveItem, offsetMm = item.offsetMm ?? 0): number {
  const move = moveOf(plan, item);
  if (!move) throw new Error("no move");
  const [from, to] = travelMm(plan, move);
  return Math.round(forceN(plan.equipment, item.springs, { xMm: (from + to) / 2, offsetMm }));
}

test("by mouse: keeping the springs is one step of undo; the slider previews while it moves and writes when released", async ({
  as,
}) => {
  const page = await as("marta");
  await openItem(page, CURL);
  const { plan, item } = await stored(page, CURL);
  const kept = keepSprings(plan, item);
  if (!kept) throw new Error("the demo's curl has an offset to offer");
  const cm = Math.abs(kept.byMm) / 10;
  await expect(load(page)).toContainText(`No spring change needed: kneel ${cm} cm nearer to the anchor.`);
  await load(page)
    .getByRole("button", { name: /^Keep .* on$/ })
    .click();
  await expect(load(page)).not.toContainText("No spring change needed");
  await expect(slider(page)).toHaveValue(String(kept.offsetMm / 10));
  expect(await middleOf(page)).toBe(Math.round(kept.newtons.atMid));
  expect((await stored(page, CURL)).item).toMatchObject({ springs: kept.before.springs, offsetMm: kept.offsetMm });
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(load(page)).toContainText("No spring change needed");
  expect((await stored(page, CURL)).item).toEqual(item);

  await slider(page).scrollIntoViewIfNeeded();
  const box = await slider(page).boundingBox();
  if (!box) throw new Error("no slider");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.75, box.y + box.height / 2, { steps: 4 });
  const tried = Number(await slider(page).inputValue());
  expect(tried).toBeGreaterThan(10);
  await expect(own(page).getByRole("cell").nth(1)).toHaveText(String(middle(plan, item, tried * 10)));
  expect((await stored(page, CURL)).item, "nothing is written while it moves").toEqual(item);
  await page.mouse.up();
  await expect(page.getByRole("button", { name: "Undo" })).toBeEnabled();
  expect((await stored(page, CURL)).item.offsetMm).toBe(tried * 10);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(slider(page)).toHaveValue("0");
});

test("by touch on a phone: every target is a finger wide; one step heavier, one centimetre further", async ({ as }) => {
  const page = await as("marta", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await openItem(page, CURL);
  await load(page)
    .getByText(/in the middle$/)
    .tap();
  for (const button of await load(page).getByRole("button").all()) {
    const box = await button.boundingBox();
    expect(
      Math.min(box?.width ?? 0, box?.height ?? 0),
      (await button.getAttribute("aria-label")) ?? "",
    ).toBeGreaterThanOrEqual(44);
  }
  const before = await middleOf(page);
  const heavier = load(page).getByRole("row", { name: /one step heavier/ });
  const promised = Number(await heavier.getByRole("cell").nth(1).textContent());
  expect(promised).toBeGreaterThan(before);
  await heavier.getByRole("button", { name: /^Take/ }).tap();
  await expect(own(page).getByRole("cell").nth(1)).toHaveText(String(promised));
  await load(page).getByRole("button", { name: "1 cm further" }).tap();
  await expect(load(page).getByRole("status")).toHaveText("1 cm further from the anchor");
  const { plan, item } = await stored(page, CURL);
  expect(item.offsetMm).toBe(10);
  expect(await middleOf(page)).toBe(middle(plan, item));
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(wide, "nothing runs out of the screen").toBeLessThanOrEqual(0);
  await page.getByRole("button", { name: "Undo" }).tap();
  await page.getByRole("button", { name: "Undo" }).tap();
  expect(await middleOf(page)).toBe(before);
});

test("by keyboard alone: the slider says what it does, an arrow held down is one step of undo", async ({ as }) => {
  const page = await as("marta", { colorScheme: "dark" });
  await openItem(page, CURL);
  const { plan, item } = await stored(page, CURL);
  await slider(page).focus();
  await page.keyboard.down("ArrowRight");
  for (let i = 0; i < 4; i++) await page.keyboard.down("ArrowRight");
  await expect(slider(page)).toHaveAttribute(
    "aria-valuetext",
    `5 cm further from the anchor, ${middle(plan, item, 50)} N in the middle`,
  );
  expect((await stored(page, CURL)).item.offsetMm).toBe(item.offsetMm);
  await page.keyboard.up("ArrowRight");
  expect((await stored(page, CURL)).item.offsetMm).toBe(50);
  await page.keyboard.press("Control+z");
  await expect(slider(page)).toHaveValue("0");
  await load(page).getByRole("button", { name: /^Keep/ }).press("Enter");
  await expect(load(page)).not.toContainText("No spring change needed");
  await page.keyboard.press("Control+z");
  await expect(load(page)).toContainText("No spring change needed");
  await expectNoBarrier(page, { all: true, within: 'section[aria-label="Load"]' });
});

test("a reader sees the load and can change nothing; a plank shows the wrist load", async ({ as }) => {
  // Jonas has offered it for reading, and Ines has not returned it: she reads.
  const page = await as("ines");
  await openPlan(page, "Arms and chest, first try");
  await onRail(page, /plank|push-up/i)
    .first()
    .click();
  await openDrawer(page);
  await expect(load(page)).toContainText(/carry about \d\d% of the body's weight \(\d\d to \d\d%\)/);
  await expect(slider(page)).toBeDisabled();
  await expect(load(page).getByRole("button", { name: /Take|Keep/ })).toHaveCount(0);
});

test("minutes of each intensity add up to the class, and energy is worked out for a body mass that is not stored", async ({
  as,
}) => {
  const page = await as("ines");
  await openPlan(page, PLAN);
  await openClass(page);
  const part = page.getByRole("region", { name: "Intensity" });
  const times = await part.getByRole("definition").allTextContents();
  const seconds = times
    .map((text) => /^(\d+):(\d\d)$/.exec(text))
    .reduce((sum, m) => sum + (m ? Number(m[1]) * 60 + Number(m[2]) : 0), 0);
  expect(seconds).toBe(25 * 60);
  const metMinutes = Number(times.find((text) => /^\d+(\.\d)?$/.test(text)));
  await part.getByLabel("Energy for a person of").fill("70");
  await part.getByLabel("Energy for a person of").press("Enter");
  await expect(part).toContainText(`about ${Math.round((metMinutes * 3.5 * 70) / 200)} kcal`);
  await page.reload();
  await openClass(page);
  await expect(page.getByRole("region", { name: "Intensity" }).getByLabel("Energy for a person of")).toHaveValue("");
});

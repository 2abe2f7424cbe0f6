/** One plate in every view: its name, ground, figure, numbers and ink are the same wherever a move is shown, and nothing is cut. */
import type { Locator, Page } from "@playwright/test";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, importPlan, onRail, openPlan, test } from "./kit.ts";

const PLAN = { ...UPPER_BODY_AND_TRUNK, title: "Plates everywhere" };
const SIZES = [
  ["phone", { width: 390, height: 844 }],
  ["tablet", { width: 820, height: 1100 }],
  ["laptop", { width: 1366, height: 900 }],
] as const;

const plates = (page: Page | Locator, density: string) => page.locator(`[data-density="${density}"]`);
/** What each plate says: shape, ground, name, seconds, marks of ink. */
const saidBy = (list: Locator) =>
  list.evaluateAll((all) =>
    all.map((plate) => ({
      shape: plate.getAttribute("data-shape"),
      ground: plate.querySelector("[data-ground]")?.getAttribute("data-ground"),
      words: ["Kneeling row", "Slow push-up", "Side plank on the forearm"].find((name) =>
        plate.textContent?.includes(name),
      ),
      seconds: [...plate.querySelectorAll("span")].find((one) => /^\d+\s+s$/.test(one.textContent ?? ""))?.textContent,
      ink: plate.querySelectorAll(":scope > [aria-hidden] > span[style]").length,
    })),
  );

/** Words that are cut off inside their plate. */
const cutIn = (list: Locator) =>
  list.evaluateAll((all) =>
    all.flatMap((plate) => {
      const box = plate.getBoundingClientRect();
      const out: string[] = [];
      const walk = document.createTreeWalker(plate, NodeFilter.SHOW_TEXT);
      for (let node = walk.nextNode(); node; node = walk.nextNode()) {
        if (node.parentElement?.closest(".visually-hidden")) continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        for (const line of range.getClientRects()) {
          const over = line.bottom > box.bottom + 1 || line.top < box.top - 1 || line.right > box.right + 1;
          if (line.width > 0 && over) out.push(node.textContent ?? "");
        }
      }
      return out;
    }),
  );

test("the read-through shows the plates of the rail, at every size, light and dark", async ({ as }) => {
  const page = await as("ines");
  const id = await importPlan(page, PLAN);
  await page.goto(`/plans/${id}`);
  const drawn = page.locator('[role="option"][data-kind="move"]');
  // Those of the first screen are drawn before the others.
  await expect(drawn).toHaveCount(PLAN.items.filter(({ kind }) => kind === "move").length);
  const rail = await saidBy(drawn);
  await page.goto(`/plans/${id}?view=read-through`);
  for (const [name, size] of SIZES) {
    await page.setViewportSize(size);
    await expect(plates(page, "small")).toHaveCount(rail.length);
    expect(await saidBy(plates(page, "small")), name).toEqual(rail);
    expect(await cutIn(plates(page, "small")), name).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
    await expect(plates(page, "small").first().locator("[data-ground] svg").first()).toBeAttached();
    await expectNoBarrierLightOrDark(page);
  }
});

test("on paper the read-through has every figure, also those that were never scrolled to", async ({ as }) => {
  const page = await as("ines");
  await page.goto(`/plans/${await importPlan(page, PLAN)}?view=read-through`);
  await expect(plates(page, "small").first().locator("[data-ground] svg").first()).toBeAttached();
  await page.pdf();
  const bare = await plates(page, "small").evaluateAll((all) =>
    all.filter((one) => !one.querySelector("[data-ground] svg")),
  );
  expect(bare).toHaveLength(0);
});

test("the whole class shows the windows of the same plates, with figures where they have room", async ({ as }) => {
  const page = await as("ines");
  const id = await importPlan(page, PLAN);
  await page.goto(`/plans/${id}?view=whole-class`);
  const lane = plates(page, "lane").filter({ has: page.locator("[data-ground]") });
  await expect(lane).toHaveCount(PLAN.items.filter(({ kind }) => kind === "move").length);
  const grounds = await lane.evaluateAll((all) =>
    all.map((one) => one.querySelector("[data-ground]")?.getAttribute("data-ground")),
  );
  await expect(lane.first().locator("[data-ground] svg").first()).toBeAttached();
  await expectNoBarrierLightOrDark(page);
  await page.goto(`/plans/${id}`);
  await expect(onRail(page, /Slow push-up/)).toBeVisible();
  const rail = await saidBy(page.locator('[role="option"][data-kind="move"]'));
  expect(grounds).toEqual(rail.map(({ ground }) => ground));
});

test("what changed since a lead's last reading is marked on its plate in the review", async ({ as }) => {
  const ines = await as("ines");
  const jonas = await as("jonas");
  await openPlan(jonas, "Arms and chest, first try");
  await openPlan(ines, "Arms and chest, first try");
  const read = async () => {
    await ines.getByRole("button", { name: "Review and sign" }).click();
    const review = ines.getByRole("dialog", { name: "Review and sign" });
    await expect(plates(review, "small").first()).toBeVisible();
    return review;
  };
  const before = await read();
  // Three times were changed since she returned it.
  await expect(before.locator("del")).toHaveText(["was 45 s", "was 90 s", "was 75 s"]);
  await before.getByRole("button", { name: "Not now" }).click();

  await onRail(jonas, /Slow push-up/).click();
  await jonas.getByRole("button", { name: "5 seconds more" }).click();
  await jonas.getByRole("button", { name: "5 seconds more" }).click();
  await expect(onRail(ines, /Slow push-up.*70 seconds/)).toBeVisible();

  const review = await read();
  const plate = plates(review, "small").filter({ hasText: "Slow push-up" });
  await expect(plate.locator("del")).toHaveText("was 90 s");
  await expect(plate).toContainText("70 s");
  await expect(plate).toContainText("changed");
  await expect(review.locator("del")).toHaveCount(3);
  for (const [name, size] of SIZES) {
    await ines.setViewportSize(size);
    expect(await cutIn(plates(review, "small")), name).toEqual([]);
  }
  await expectNoBarrierLightOrDark(ines);
});

test("the change into an open plate is drawn: what goes on and what stays; on a phone it is asked for", async ({
  as,
}) => {
  const page = await as("ines");
  const id = await importPlan(page, PLAN);
  await page.goto(`/plans/${id}`);
  await onRail(page, /Kneeling lat pull-down/).click();
  const hide = page.getByRole("button", { name: "Hide the change as a figure" });
  await expect(hide).toBeVisible();
  const words = page.locator("svg").filter({ hasText: "stays on" }).locator("text");
  await expect(words).toHaveText(["light", "goes on", "middle", "stays on"]);
  await hide.click();
  await expect(words).toHaveCount(0);
  // Nothing changes into the next one.
  await onRail(page, /Kneeling row/).click();
  await expect(page.getByRole("button", { name: /the change as a figure/ })).toHaveCount(0);

  const phone = await as("ines", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await phone.goto(`/plans/${id}`);
  await onRail(phone, /Kneeling lat pull-down/).tap();
  const show = phone.getByRole("button", { name: "Show the change as a figure" });
  expect((await show.boundingBox())?.height).toBeGreaterThanOrEqual(24);
  await show.tap();
  await expect(phone.locator("svg").filter({ hasText: "stays on" })).toBeVisible();
});

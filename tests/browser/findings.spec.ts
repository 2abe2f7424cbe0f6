/**
 * From the count of findings to each finding on screens without a margin; and another start position, which
 * shows on the rail, is found, and is put into words with one press.
 */
import type { Page } from "@playwright/test";
import type { PlanItem } from "#lib/plan/schema.ts";
import { FIRST_TRY } from "#seed/plans/first-try.ts";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { expect, expectSaved, importPlan, onRail, openClass, openPlan, script, test } from "./kit.ts";

const focusedSlip = (page: Page) => page.locator("article[data-finding]:focus");

test("on a phone, pressing must fix opens the next finding of that level and scrolls it into view", async ({ as }) => {
  const page = await as("jonas", { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  await openPlan(page, FIRST_TRY.title);
  const count = page.getByRole("button", { name: /must fix$/ });
  await expect(count).toBeVisible();
  const seen = new Set<string | null>();
  for (let press = 0; press < 3; press++) {
    await count.tap();
    await expect(focusedSlip(page)).toBeInViewport();
    await expect(focusedSlip(page)).toHaveAttribute("data-level", "must");
    seen.add(await focusedSlip(page).getAttribute("data-finding"));
    // One about the whole class stands in its panel, which lies over the plan here.
    const back = page.getByRole("button", { name: "Back to the rail" });
    if (await back.isVisible()) await back.tap();
  }
  expect(seen.size, "each press goes on to another").toBe(3);
});

test("a start four centimetres further shows on the rail, is found, and is put into words with one press", async ({
  as,
}) => {
  const page = await as("jonas");
  await openPlan(page, FIRST_TRY.title);
  const item = onRail(page, /Forearm plank hold.*starting 4 cm further from the anchor/);
  await expect(item).toBeVisible();
  await item.click();
  const slip = page.getByRole("article", { name: /^A new starting place/ });
  await slip.getByRole("button", { name: /^Say first/ }).click();
  await expect(slip).toHaveCount(0);
  await expect(script(page)).toContainText("4 cm further from the anchor.");
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await expect(slip).toHaveCount(1);
  await expectSaved(page);
});

/** Every move keeps its set-up and form lines, which are a coach's own, and says nothing of breath. */
const BREATHLESS = {
  ...UPPER_BODY_AND_TRUNK,
  title: "Nobody breathes",
  items: UPPER_BODY_AND_TRUNK.items.map((item) =>
    item.kind === "move" ? { ...item, script: item.script?.filter(({ kind }) => kind !== "breath") ?? [] } : item,
  ),
};

test("what one rule found on many plates is one line in the class's panel, with one act and one undo", async ({
  as,
}) => {
  const page = await as("marta");
  await page.goto(`/plans/${await importPlan(page, BREATHLESS)}`);
  await expect(onRail(page, /./).first()).toBeVisible();
  await openClass(page);
  const line = page.getByRole("region", { name: "The same on several plates" }).getByRole("listitem");
  const breath = line.filter({ hasText: "A cue line is missing" });
  await expect(breath).toContainText(/on \d+ plates/);
  await breath.getByRole("button", { name: /^Fix \d+ of \d+$/ }).click();
  await expect(breath).toHaveCount(0);
  await expectSaved(page);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect(breath).toHaveCount(1);
});

test("what the lines claim is checked after the page has opened, also when it loses its network before that", async ({
  as,
  app,
}) => {
  const page = await as("marta");
  await page.addInitScript(IDLE_WHEN_TOLD);
  const claim = { kind: "form" as const, text: "This is the last move of the class." };
  const withClaim = (item: PlanItem) =>
    item.kind === "move" ? { ...item, script: [...(item.script ?? []), claim] } : item;
  const [first, ...rest] = UPPER_BODY_AND_TRUNK.items.filter(({ kind }) => kind === "move");
  const items = UPPER_BODY_AND_TRUNK.items.map((item) => (item === first ? withClaim(item) : item));
  expect(rest.length).toBeGreaterThan(0);
  const made = await page.request.post("/api/plans/import", {
    headers: { origin: app.url },
    data: { ...UPPER_BODY_AND_TRUNK, title: "Trunk, claimed", items },
  });
  await page.goto(`/plans/${(await made.json()).id}`);
  await expectSaved(page);
  const lookAgain = page.getByRole("button", { name: /look again$/ });
  const later = page.getByText("whether the lines match the plan is checked once you are online");
  await expect(page.getByRole("option").first()).toBeVisible();
  await expect(lookAgain).toHaveCount(0);
  // Whatever it would fetch while idle cannot come now.
  await page.context().setOffline(true);
  await page.evaluate("window.beIdle()");
  await expect(later).toBeVisible();
  await page.context().setOffline(false);
  await expectSaved(page);
  await expect(lookAgain).toHaveText("1 look again");
  await expect(later).toHaveCount(0);
  await lookAgain.click();
  await expect(page.getByRole("article", { name: "The script contradicts the plan" })).toBeVisible();
});

/** The page is idle from `beIdle` on, and not before. */
const IDLE_WHEN_TOLD = `
  {
    const waiting = [];
    let idle = false;
    window.requestIdleCallback = (run) => (idle ? setTimeout(run, 0) : waiting.push(run));
    window.beIdle = () => {
      idle = true;
      for (const run of waiting.splice(0)) run();
    };
  }`;

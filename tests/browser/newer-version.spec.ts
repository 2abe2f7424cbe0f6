/**
 * The server stops for a moment, and is there again with a newer build: an open page says both quietly, loses nothing, and is
 * loaded again when its person wants it. The page is made one of an older build by the mark that it carries.
 */
import type { Page } from "@playwright/test";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, expectSaved, importPlan, onRail, test } from "./kit.ts";
import { SHORT_CLASS } from "./short-class.ts";

const NEWER = "A newer version of Springline is here.";
const line = (page: Page) => page.locator("[aria-live] p").filter({ hasText: NEWER });
const ofOlderBuild = (page: Page) =>
  page.evaluate(() => {
    document.documentElement.dataset.build = "an-older-build";
  });

test("a plan says that the server stops for a moment, comes back by itself, and offers the newer version", async ({
  app,
  as,
}) => {
  const page = await as("jonas");
  const id = await importPlan(page, { ...SHORT_CLASS, title: "Over an update" });
  await page.goto(`/plans/${id}`);
  await expect(onRail(page, /./).first()).toBeVisible();
  await expectSaved(page);
  await expect(line(page)).toHaveCount(0);
  await ofOlderBuild(page);
  await app.stop();
  await expect(page.getByText(/the server is stopping for a moment; this page comes back by itself/)).toBeVisible();
  // It goes on: what is done meanwhile is kept.
  const plates = await onRail(page, /./).count();
  await page.keyboard.press("Escape");
  await onRail(page, /./).first().focus();
  await page.keyboard.press("Delete");
  await app.start();
  await expectSaved(page);
  await expect(line(page)).toBeVisible();
  await expectNoBarrierLightOrDark(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expect(line(page)).toBeVisible();
  const after = await onRail(page, /./).count();
  expect(plates).toBeGreaterThan(0);
  await line(page).getByRole("button", { name: "Reload the page" }).click();
  await expect(onRail(page, /./).first()).toBeVisible();
  await expect(line(page)).toHaveCount(0);
  expect(await onRail(page, /./).count()).toBe(after);
});

test("a page without a live document hears of it with the next answer; a part that is gone is no dead end", async ({
  as,
}) => {
  const page = await as("jonas");
  // The part with the legend is gone from the server.
  let updated = true;
  await page.route("**/_next/static/chunks/*.js", async (route) => {
    if (!updated) return route.continue();
    const answer = await route.fetch();
    const isGone = (await answer.text()).includes("rounded at the left: left side");
    return isGone ? route.fulfill({ status: 404 }) : route.fulfill({ response: answer });
  });
  const id = await importPlan(page, { ...SHORT_CLASS, title: "A part is gone" });
  await page.goto(`/plans/${id}`);
  await expect(onRail(page, /./).first()).toBeVisible();
  await ofOlderBuild(page);
  await page.getByRole("button", { name: "More" }).click();
  await page.getByRole("button", { name: "Legend" }).click();
  await expect(page.getByText("This part of the page is of an older version.")).toBeVisible();
  await expect(line(page)).toBeVisible();
  updated = false;
  await line(page).getByRole("button", { name: "Reload the page" }).click();
  await expect(line(page)).toHaveCount(0);
  await expect(onRail(page, /./).first()).toBeVisible();
});

test("a device in a room hears of it with its next answer, where no class runs", async ({ app, as, browser }) => {
  const manager = await as("petra");
  const rooms = await (await manager.request.get("/api/rooms")).json();
  const data = { name: "Tablet of an older build", roomId: rooms[0].id };
  const made = await manager.request.post("/api/devices", { data, headers: { origin: app.url } });
  const context = await browser.newContext({ baseURL: app.url });
  const page = await context.newPage();
  await page.goto("/floor");
  await page.getByLabel("Pairing code").fill((await made.json()).code);
  await page.getByRole("button", { name: "Pair" }).click();
  const fetchAgain = page.getByRole("button", { name: "Fetch editions" });
  await fetchAgain.click();
  const said = page.getByText("A newer version of this page is here.");
  await expect(page.getByText(/Editions fetched/)).toBeVisible();
  await expect(said).toHaveCount(0);
  await ofOlderBuild(page);
  await fetchAgain.click();
  await expect(said).toBeVisible();
  await page.getByRole("button", { name: "Open it again" }).click();
  await expect(fetchAgain).toBeVisible();
  await expect(said).toHaveCount(0);
  await context.close();
});

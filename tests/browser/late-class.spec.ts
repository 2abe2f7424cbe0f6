/**
 * A class that must not fail: the server is gone, the browser is closed and reopened in the middle, the
 * class runs forty seconds late, and one touch makes it end on time. The test controls the clock.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium, expect, type Page, test } from "@playwright/test";
import { type RunningApp, startApp } from "#tests/support/app.ts";
import { CHROMIUM_ARGS, findChromium } from "#tests/support/chromium.mjs";
import { letIn } from "./kit.ts";

let app: RunningApp;
let profile: string;
test.beforeAll(async () => {
  app = await startApp();
  profile = mkdtempSync(join(tmpdir(), "springline-device-"));
});
test.afterAll(async () => {
  await app.remove();
  rmSync(profile, { recursive: true, force: true });
});

/** The device's browser with its storage on disk: closed and reopened it is the same device. */
async function openBrowser(): Promise<{ context: BrowserContext; page: Page }> {
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: findChromium(),
    args: CHROMIUM_ARGS,
    viewport: { width: 1024, height: 768 },
    hasTouch: true,
  });
  const page = context.pages()[0] ?? (await context.newPage());
  // Counts how often the screen is asked to stay on.
  await page.addInitScript(() => {
    const asked = { times: 0 };
    const request = async () => {
      asked.times += 1;
      return { release: async () => undefined };
    };
    Object.defineProperty(navigator, "wakeLock", { value: { request } });
    Object.assign(window, { askedToStayOn: asked });
  });
  return { context, page };
}

async function pairDevice(page: Page): Promise<void> {
  await letIn(page.context(), app.url, "petra");
  const rooms = await (await page.request.get(`${app.url}/api/rooms`)).json();
  const roomId = rooms.find((one: { name: string }) => one.name === "Loft").id;
  const data = { name: "Tablet by the door", roomId };
  const made = await page.request.post(`${app.url}/api/devices`, { data, headers: { origin: app.url } });
  await page.context().clearCookies();
  await page.goto(`${app.url}/floor`);
  await page.getByLabel("Pairing code").fill((await made.json()).code);
  await page.getByRole("button", { name: "Pair" }).click();
  await expect(page.getByText("it opens with no network")).toBeVisible({ timeout: 30_000 });
  await expect(page.locator("ul li button").first()).toBeEnabled();
}

/** Event types of the class that the device stores. */
const keptEvents = (page: Page): Promise<string[]> =>
  page.evaluate(
    () =>
      new Promise((resolve) => {
        const open = indexedDB.open("springline-floor");
        open.onsuccess = () => {
          const get = open.result.transaction("kept").objectStore("kept").get("running");
          get.onsuccess = () => resolve(get.result.log.map((event: { type: string }) => event.type));
        };
      }),
  );

const toSeconds = (figure: string): number => {
  const [minutes = 0, seconds = 0] = figure.split(":").map(Number);
  return minutes * 60 + seconds;
};
/** Seconds left of the class, as the status line says. */
async function secondsLeft(page: Page): Promise<number> {
  const words = (await page.locator("header").textContent()) ?? "";
  return toSeconds(/([\d:]+) left/.exec(words)?.[1] ?? "");
}
/** Like a device that slept: timers that were due fire once, and the page must be right at once. */
async function pass(page: Page, seconds: number): Promise<void> {
  await page.clock.fastForward(Math.round(seconds * 1000) - 200);
  await page.clock.runFor(200);
}

test("no server, browser reopened, forty seconds late: End on time makes it end on time", async () => {
  const paired = await openBrowser();
  await pairDevice(paired.page);
  await paired.context.close();
  await app.stop();

  const began = Date.now() + 60_000;
  const first = await openBrowser();
  await first.page.clock.install({ time: began });
  await first.page.goto(`${app.url}/floor`);
  await expect(first.page.getByText("The studio cannot be reached.")).toBeVisible();
  await first.page.locator("ul li button").first().click();
  await first.page.clock.pauseAt(began + 60_000);
  await first.page.getByRole("button", { name: "Start the class" }).click();
  await first.page.clock.runFor(100);
  const whole = await secondsLeft(first.page);
  await pass(first.page, 200 - 0.1);
  expect(await secondsLeft(first.page)).toBe(whole - 200);
  await first.page.keyboard.press(" ");
  await pass(first.page, 40);
  await first.page.keyboard.press(" ");
  await first.page.clock.runFor(100);
  await expect(first.page.getByText("0:40 late")).toBeVisible();
  await expect.poll(() => keptEvents(first.page)).toEqual(["start", "hold", "resume"]);
  await first.context.close();

  // Restarted 30 s later (240 s after the start, and half a minute): it goes on where the class now is.
  const { context, page } = await openBrowser();
  await page.clock.install({ time: began + 60_000 + 270_000 });
  await page.clock.pauseAt(began + 60_000 + 271_000);
  await page.goto(`${app.url}/floor`);
  await expect(page.getByText("0:40 late")).toBeVisible();
  const left = await secondsLeft(page);
  expect(Math.abs(left - (whole - 231))).toBeLessThanOrEqual(1);

  const asked = () =>
    page.evaluate(() => (window as unknown as { askedToStayOn: { times: number } }).askedToStayOn.times);
  const before = await asked();
  await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
  await expect.poll(asked).toBe(before + 1);

  await page.getByRole("button", { name: "end on time" }).tap();
  const sheet = page.getByRole("dialog", { name: "End on time" });
  await expect(sheet.getByRole("heading", { level: 2 })).toHaveText("The class ends 0:40 late.");
  await expect(sheet.getByText(/items get .* s less/)).toBeVisible();
  await sheet.getByRole("button", { name: "take these times" }).tap();
  await expect(page.getByText("on time", { exact: false }).first()).toBeVisible();
  await page.getByRole("button", { name: "undo" }).tap();
  await expect(page.getByText("0:40 late")).toBeVisible();
  // Opened and left alone it closes by itself; the next item and the targets stay visible throughout.
  await page.getByRole("button", { name: "end on time" }).tap();
  await expect(sheet).toBeVisible();
  for (const target of ["hold", "skip", "undo", "end"])
    await expect(page.getByRole("button", { name: target, exact: true })).toBeVisible();
  // After 20 s, or sooner when a change begins.
  let waited = 0;
  while (waited < 20 && (await sheet.isVisible())) {
    await page.clock.runFor(1000);
    waited++;
  }
  await page.clock.runFor(100);
  await expect(sheet).toBeHidden();
  await expect(page.getByText("Nothing was changed.")).toBeVisible();
  await page.clock.runFor((20 - waited) * 1000);
  // The same by keys alone: asked for, and taken.
  await page.keyboard.press("e");
  await page.clock.runFor(300);
  await page.keyboard.press("e");
  await page.clock.runFor(100);
  await expect(page.locator("header")).toContainText("left · on time");

  const stillLeft = await secondsLeft(page);
  expect(Math.abs(stillLeft - (left - 60))).toBeLessThanOrEqual(1);
  await pass(page, stillLeft - 2);
  await expect(page.getByRole("heading", { name: "The class is done" })).toBeHidden();
  await pass(page, 3);
  await expect(page.getByRole("heading", { name: "The class is done" })).toBeVisible();
  await context.close();
});

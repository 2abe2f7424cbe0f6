/** The floor in a browser: paired once, then offline. Calls come at the card's seconds, on a clock that the test controls. */
import { generateKeyPairSync, sign } from "node:crypto";
import { expect, type Page, test } from "@playwright/test";
import { sealCard } from "#lib/card/card.ts";
import type { CardEnvelope } from "#lib/card/schema.ts";
import { CLASSES_TOLD } from "#seed/steps/add-classes.ts";
import { type RunningApp, startApp } from "#tests/support/app.ts";
import { letIn } from "./kit.ts";

let app: RunningApp;
test.beforeAll(async () => {
  app = await startApp();
});
test.afterAll(() => app.remove());

/** A pairing code for a room, made by the manager, who signs out again. */
async function newCode(page: Page, room: string): Promise<string> {
  await letIn(page.context(), app.url, "petra");
  const rooms = await (await page.request.get(`${app.url}/api/rooms`)).json();
  const roomId = rooms.find((one: { name: string }) => one.name === room).id;
  const data = { name: "Tablet by the door", roomId };
  const made = await page.request.post(`${app.url}/api/devices`, { data, headers: { origin: app.url } });
  await page.context().clearCookies();
  return (await made.json()).code;
}

async function pairWith(page: Page, code: string): Promise<void> {
  await page.goto(`${app.url}/floor`);
  await page.getByLabel("Pairing code").fill(code.toLowerCase());
  await page.getByRole("button", { name: "Pair" }).click();
  await expect(page.getByText("signature verified · kept on this device").first()).toBeVisible();
  await expect(page.getByText("it opens with no network")).toBeVisible({ timeout: 30_000 });
}

/** The card as the device stores it. */
const keptCard = (page: Page): Promise<CardEnvelope> =>
  page.evaluate(
    () =>
      new Promise((resolve) => {
        const open = indexedDB.open("springline-floor");
        open.onsuccess = () => {
          const get = open.result.transaction("kept").objectStore("kept").get("shelf");
          get.onsuccess = () => resolve(get.result.cards[0].envelope);
        };
      }),
  );

/** Presses Space as soon as the held class is on the page, as people do. */
function pressSpaceAtFirstSight(): void {
  const observer = new MutationObserver(() => {
    if (!document.querySelector('[role="timer"][data-held="true"]')) return;
    observer.disconnect();
    window.dispatchEvent(new KeyboardEvent("keydown", { key: " ", bubbles: true }));
  });
  observer.observe(document, { childList: true, subtree: true });
}

const line = (page: Page) => page.locator("[data-now]");
const seconds = (page: Page) => page.getByRole("timer");

test("paired, then without the server: the page opens again and the class runs with the right calls", async ({
  page,
}) => {
  await pairWith(page, await newCode(page, "Loft"));
  await app.stop();
  await page.clock.install();
  await page.reload();
  await expect(page.getByText("The studio cannot be reached.")).toBeVisible();
  const { card } = await keptCard(page);
  await page.getByRole("button", { name: card.edition.title }).click();
  await page.clock.pauseAt(Date.now() + 3_600_000);
  await page.getByRole("button", { name: "Start the class" }).click();

  const first = card.clock.rows.find((row) => row.end > row.start);
  const cues = card.cues.filter((cue) => cue.item === first?.item);
  expect(cues.length).toBeGreaterThan(3);
  let at = 0;
  const runTo = async (time: number) => {
    // Like a device that slept: timers that were due fire once, and the page must be right at once.
    await page.clock.fastForward(Math.round((time - at) * 1000));
    await page.clock.runFor(200);
    at = time + 0.2;
  };
  for (const cue of cues) {
    await runTo((cue.from + cue.to) / 2);
    await expect(line(page)).toHaveText(cue.text);
    await expect(line(page)).toHaveAttribute("data-now", "true");
    if (cue.kind === "heads-up") await expect(page.getByText("coming up: say it now")).toBeVisible();
    if (cue.kind === "count-in") await expect(seconds(page)).toHaveText("2count: two");
  }

  // Twelve seconds into the next item the page is closed and reopened: the class has gone on.
  await runTo((first?.end ?? 0) + 12);
  await page.keyboard.press(" ");
  await expect(seconds(page)).toContainText("held");
  const held = await seconds(page).textContent();
  await page.clock.fastForward(60_000);
  await page.clock.runFor(200);
  expect(await seconds(page).textContent()).toBe(held);
  await expect(page.getByText("1:00 late")).toBeVisible();
  await page.addInitScript(pressSpaceAtFirstSight);
  await page.reload();
  await expect(page.getByText("1:00 late")).toBeVisible();
  await page.clock.runFor(1000);
  await expect(seconds(page)).not.toContainText("held");

  await page.getByRole("button", { name: "end", exact: true }).click();
  await page.getByRole("button", { name: "end now?" }).click();
  await page.getByRole("button", { name: "Back to the editions" }).click();
  await expect(page.getByRole("heading", { name: "Loft" })).toBeVisible();

  // The class log waits for the server, and is filed once however often it is sent.
  const waits = page.getByText("The log of one class is kept here until the studio has it.");
  await expect(waits).toBeVisible();
  await app.start();
  const fetchEditions = page.getByRole("button", { name: "Fetch editions" });
  await fetchEditions.click();
  await expect(waits).toHaveCount(0);
  await fetchEditions.click();
  await expect(fetchEditions).toBeEnabled();
  await letIn(page.context(), app.url, "marta");
  await page.goto(`${app.url}/editions/${card.edition.planId}/${card.edition.number}/classes`);
  // The demo's own classes, and this one.
  await expect(page.getByRole("heading", { level: 2 })).toHaveCount(CLASSES_TOLD + 1);
  await expect(page.getByText("It was ended early").first()).toBeVisible();
  await page.context().clearCookies();
});

test("no answer of the server and no token is in any cache or URL", async ({ page }) => {
  await pairWith(page, await newCode(page, "Loft"));
  const kept = await page.evaluate(async () => {
    const urls: string[] = [];
    for (const name of await caches.keys()) {
      for (const request of await (await caches.open(name)).keys()) urls.push(request.url);
    }
    return urls;
  });
  expect(kept.filter((url) => new URL(url).pathname.startsWith("/api"))).toEqual([]);
  expect(kept.some((url) => url.endsWith("/floor"))).toBe(true);
  expect(page.url()).toBe(`${app.url}/floor`);
});

test("a card with one byte altered, or with another studio's key, is refused with the reason; the last good one stays", async ({
  page,
}) => {
  await pairWith(page, await newCode(page, "Loft"));
  const { card } = await keptCard(page);
  const other = generateKeyPairSync("ed25519").privateKey;
  let spoil = (sealed: CardEnvelope): CardEnvelope => ({ ...sealed, card: { ...sealed.card, dropped: [], cues: [] } });
  await page.route("**/api/devices/cards", async (route) => {
    const answer = await route.fetch();
    const body = await answer.json();
    await route.fulfill({ response: answer, json: { ...body, cards: body.cards.map(spoil) } });
  });
  // The worker does not stand between: it lets every answer of the API pass.
  await page.getByRole("button", { name: "Fetch editions" }).click();
  await expect(page.getByText(/was changed after it was signed.*The last good edition is still here/)).toBeVisible();
  await expect(page.getByRole("button", { name: card.edition.title })).toBeEnabled();

  spoil = (sealed) => sealCard(sealed.card, sealed.keyId, (bytes) => new Uint8Array(sign(null, bytes, other)));
  await page.getByRole("button", { name: "Fetch editions" }).click();
  await expect(
    page.getByText(/not signed with the key of this studio.*The last good edition is still here/),
  ).toBeVisible();
  await expect(page.getByRole("button", { name: card.edition.title })).toBeEnabled();

  // Once expired, the card stays, says so, and cannot be run.
  await page.clock.setSystemTime(Date.parse(card.expiresAt) + 1000);
  spoil = (sealed) => sealed;
  await page.getByRole("button", { name: "Fetch editions" }).click();
  await expect(page.getByText(/was good until \d{4}-\d\d-\d\d.*The last good edition is still here/)).toBeVisible();
  await expect(page.getByRole("button", { name: card.edition.title })).toBeDisabled();
});

test("a device that is no longer paired is told so and fetches nothing more", async ({ page, browser }) => {
  await pairWith(page, await newCode(page, "Loft"));
  const manager = await browser.newPage();
  await letIn(manager.context(), app.url, "petra");
  const devices = await (await manager.request.get(`${app.url}/api/devices`)).json();
  for (const device of devices) {
    await manager.request.delete(`${app.url}/api/devices/${device.id}`, { headers: { origin: app.url } });
  }
  await manager.close();
  await page.getByRole("button", { name: "Fetch editions" }).click();
  await expect(page.getByText("or it was removed").first()).toBeVisible();
});

test("nothing on the floor is cut off or needs scrolling, on a tablet and in the hand", async ({ page }) => {
  await pairWith(page, await newCode(page, "Loft"));
  await page.locator("ul li button").first().click();
  await page.getByRole("button", { name: "Start the class" }).click();
  for (const [width, height] of [
    [1280, 800],
    [1024, 768],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (let n = 0; n < 6; n += 1) {
      await page.keyboard.press("PageDown");
      // Type is fitted in the frame after the screen has changed.
      await expect.poll(() => page.evaluate(tooLarge)).toEqual([]);
    }
  }
});

/** What extends past the page or is too small for a thumb. Runs in the page. */
function tooLarge(): string[] {
  const { scrollWidth, clientWidth, scrollHeight, clientHeight } = document.documentElement;
  const wrong = [];
  if (scrollWidth > clientWidth) wrong.push(`the page is ${scrollWidth} wide`);
  if (scrollHeight > clientHeight) wrong.push(`the page is ${scrollHeight} high`);
  for (const button of document.querySelectorAll("nav button")) {
    const { width, height, bottom } = button.getBoundingClientRect();
    if (Math.min(width, height) < 44 || bottom > innerHeight + 1) wrong.push(button.textContent ?? "");
  }
  const line = document.querySelector("[data-now]")?.parentElement;
  if (line && line.scrollHeight > line.clientHeight + 12) wrong.push(`line cut: ${line.textContent}`);
  return wrong;
}

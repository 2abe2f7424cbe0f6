/**
 * How long a frame takes while somebody scrolls, walks, changes times and types in a plan of sixty items: the gaps between
 * frames as Chromium draws them, with its optimiser, beside an empty page with one field in the same run. Needs a build and a
 * Chromium. Without a screen a frame comes every 16.7 ms.
 */
import { type Browser, chromium, type Page } from "@playwright/test";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { DEMO_PASSWORD } from "#seed/studio/people.ts";
import { startApp } from "#tests/support/app.ts";
import { findChromium } from "#tests/support/chromium.mjs";
import { quantile } from "./timing.ts";

const ITEMS = 60;
const LONGEST_MS = 50;
const LETTERS = " and slow down in the last half of it, then home with a breath";

/** As long as sixty items of a demo class. */
function longPlan() {
  const { items, ...rest } = UPPER_BODY_AND_TRUNK;
  const many = Array.from({ length: Math.ceil((2 * ITEMS) / items.length) }, () => items).flat();
  const some = many.slice(0, ITEMS).map(({ ...item }, n) => ({ ...item, id: `item-${n}` }));
  for (const item of some) if ("after" in item) delete item.after;
  return { ...rest, title: "Sixty plates", lengthSeconds: 5400, items: some };
}

export async function benchFrames(): Promise<boolean> {
  const app = await startApp({ demo: true });
  const path = findChromium();
  const browser = await chromium.launch({
    args: ["--no-sandbox"],
    ...(path === undefined ? {} : { executablePath: path }),
  });
  try {
    const peer = await emptyPage(browser);
    const base = await during(peer, () => typing(peer, peer.locator("[contenteditable]")));
    say("an empty page, typing", base, null);
    const page = await openPlan(browser, app.url);
    let met = true;
    for (const [name, act, counts] of ACTS) {
      const gaps = await during(page, () => act(page));
      if (!say(`the plan, ${name}`, gaps, counts ? LONGEST_MS : null)) met = false;
    }
    return met;
  } finally {
    await browser.close();
    await app.remove();
  }
}

async function emptyPage(browser: Browser): Promise<Page> {
  const page = await browser.newPage();
  await page.setContent('<div contenteditable="true" style="min-height: 10rem"></div>');
  return page;
}

async function openPlan(browser: Browser, url: string): Promise<Page> {
  const context = await browser.newContext({ baseURL: url, viewport: { width: 1366, height: 850 } });
  const headers = { origin: url };
  const data = { email: "marta@tholepin.example", password: DEMO_PASSWORD };
  await context.request.post("/api/auth/sign-in/email", { headers, data });
  const made = await context.request.post("/api/plans/import", { headers, data: longPlan() });
  if (!made.ok()) throw new Error(`The plan could not be brought in: ${made.status()} ${await made.text()}`);
  const page = await context.newPage();
  await page.goto(`/plans/${(await made.json()).id}`);
  await rail(page)
    .nth(ITEMS / 2)
    .waitFor();
  // Late parts and figures have come.
  await page.waitForTimeout(4000);
  return page;
}

const rail = (page: Page) => page.getByRole("option");

/** Whether its longest frame counts against the target. */
const ACTS: readonly (readonly [string, (page: Page) => Promise<void>, boolean])[] = [
  ["scrolling", scrolling, true],
  ["arrows from plate to plate", (page) => pressing(page, "ArrowDown", 25), false],
  ["a time longer", (page) => pressing(page, "+", 15), false],
  ["opening a plate", (page) => pressing(page, "Enter", 1), false],
  ["typing", (page) => typing(page, page.getByRole("textbox", { name: /^Script of/ })), true],
];

async function scrolling(page: Page): Promise<void> {
  for (const way of [1, -1])
    for (let step = 0; step < 60; step++) {
      await page.mouse.wheel(0, way * 120);
      await page.waitForTimeout(16);
    }
  await rail(page).nth(3).focus();
}

async function pressing(page: Page, key: string, times: number): Promise<void> {
  for (let press = 0; press < times; press++) {
    await page.keyboard.press(key);
    await page.waitForTimeout(80);
  }
  await page.waitForTimeout(600);
}

async function typing(page: Page, field: ReturnType<Page["locator"]>): Promise<void> {
  await field.click();
  await page.keyboard.type(LETTERS, { delay: 70 });
}

/** In the page, as a script: notes the gap before each frame until it is told to stop. */
const WATCH = `(() => {
  const seen = { gaps: [], on: true };
  window.frames60 = seen;
  let last = performance.now();
  requestAnimationFrame(function frame() {
    const now = performance.now();
    seen.gaps.push(now - last);
    last = now;
    if (seen.on) requestAnimationFrame(frame);
  });
})()`;
const STOP = "(() => { window.frames60.on = false; return window.frames60.gaps; })()";

/** ms between the frames that were drawn during an act. */
async function during(page: Page, act: () => Promise<void>): Promise<readonly number[]> {
  await page.evaluate(WATCH);
  await act();
  return (await page.evaluate(STOP)) as number[];
}

function say(name: string, gaps: readonly number[], most: number | null): boolean {
  const sorted = Float64Array.from(gaps).sort();
  const ms = (share: number) => quantile(sorted, share).toFixed(1);
  const longest = Math.max(...gaps);
  const met = most === null || longest <= most;
  const verdict = most === null ? "" : `; at most ${most}: ${met ? "met" : "missed"}`;
  console.log(`  ${name}: p50 ${ms(0.5)} ms, p99 ${ms(0.99)}, longest ${longest.toFixed(1)}${verdict}`);
  return met;
}

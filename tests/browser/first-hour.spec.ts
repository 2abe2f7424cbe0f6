/**
 * A new studio's first hour by the README alone: from an empty data folder to a class that plays on a paired device, through
 * the desk's first steps. Every click and key is counted, and what is counted is kept with the run.
 */
import AxeBuilder from "@axe-core/playwright";
import { test as base, type Locator, type Page } from "@playwright/test";
import { type RunningApp, startApp } from "../support/app.ts";
import { expect } from "./kit.ts";

const test = base.extend<object, { empty: RunningApp }>({
  empty: [
    // biome-ignore lint/correctness/noEmptyPattern: the test runner reads the pattern to learn what a fixture needs
    async ({}, use) => {
      const app = await startApp({ demo: false });
      await use(app);
      await app.remove();
    },
    { scope: "worker", timeout: 180_000 },
  ],
});

/** One person's hands: what they press and type. */
class Hands {
  clicks = 0;
  keys = 0;

  async press(on: Locator): Promise<void> {
    this.clicks += 1;
    await on.click();
  }

  /** Goes on with the keyboard, as from field to field of a form. */
  async type(page: Page, words: string, then: "Tab" | "Enter" | null = null): Promise<void> {
    this.keys += words.length + (then === null ? 0 : 1);
    await page.keyboard.type(words);
    if (then) await page.keyboard.press(then);
  }
}

const step = (page: Page, title: string) => page.getByRole("listitem").filter({ hasText: title });

async function setUp(page: Page, hands: Hands, url: string): Promise<void> {
  await page.goto(url);
  await hands.press(page.getByLabel("Name of the studio"));
  await hands.type(page, "Tholepin Strength", "Tab");
  await hands.type(page, "Port Ellery", "Tab");
  await hands.type(page, "Petra Vos", "Tab");
  await hands.type(page, "petra@tholepin.example", "Tab");
  await hands.type(page, "low tide at nine");
  await hands.press(page.getByLabel("I also teach here"));
  await hands.press(page.getByRole("button", { name: "Set up the studio" }));
  await expect(page.getByRole("heading", { name: "First steps" })).toBeVisible();
}

test("from an empty folder to a class that plays, in a handful of clicks", async ({ browser, empty }) => {
  const looks = { baseURL: empty.url, viewport: { width: 1440, height: 900 } };
  const petra = await (await browser.newContext(looks)).newPage();
  const tablet = await (await browser.newContext({ ...looks, viewport: { width: 1180, height: 820 } })).newPage();
  const errors: string[] = [];
  for (const page of [petra, tablet]) page.on("pageerror", (error) => errors.push(error.message));
  const hands = new Hands();
  const began = Date.now();

  await setUp(petra, hands, empty.url);
  // A studio of one who teaches with the starting library has two steps behind them: they work alone, and there is a room.
  await expect(petra.getByText("2 of 8 done")).toBeVisible();
  await expect(step(petra, "A room and its springs")).toContainText("springs typical, none measured yet");
  const axe = await new AxeBuilder({ page: petra }).analyze();
  expect(axe.violations).toEqual([]);

  await hands.press(step(petra, "An example class").getByRole("button", { name: /Make the example/ }));
  await petra.waitForURL(/\/plans\//);
  await hands.press(petra.getByRole("button", { name: "Offer for reading" }));
  await hands.press(petra.getByRole("dialog").getByRole("button", { name: "Offer for reading" }));
  await hands.press(petra.getByRole("button", { name: "Review and sign" }));
  await hands.press(petra.getByRole("dialog").getByRole("button", { name: "Sign off edition 1" }));
  await expect(petra.getByText(/signed off · edition 1/)).toBeVisible();

  await hands.press(petra.getByRole("link", { name: "Your desk" }));
  await expect(step(petra, "Sign it off")).toContainText("is signed, edition 1");
  await hands.press(step(petra, "Pair a device").getByRole("link", { name: /Pair a device/ }));
  await expect(petra.getByLabel("Name of the device")).toBeFocused();
  await hands.type(petra, "Tablet by the window", "Enter");
  const code = petra.getByRole("img", { name: /^QR code/ });
  await expect(code).toBeVisible();
  const typed =
    (await petra
      .locator("[role=status] p")
      .filter({ hasText: /^[0-9A-Z]{8}$/ })
      .textContent()) ?? "";

  // What a camera does with the square: it opens the address that `tests/unit/devices/pairing-link.test.ts` reads from it.
  await tablet.goto(`/floor#pair=${typed}`);
  await expect(tablet.getByLabel("Pairing code")).toHaveValue(`${typed.slice(0, 4)} ${typed.slice(4)}`);
  expect(new URL(tablet.url()).hash).toBe("");
  await hands.press(tablet.getByRole("button", { name: "Pair" }));
  await hands.press(tablet.getByRole("button", { name: /Example: twelve minutes/ }));
  await hands.press(tablet.getByRole("button", { name: /^Start/ }));
  await expect(tablet.locator("[data-phase]")).toHaveAttribute("data-phase", "opening");

  const seconds = Math.round((Date.now() - began) / 1000);
  const counted = `${hands.clicks} clicks, ${hands.keys} keys, ${seconds} s by script`;
  test.info().annotations.push({ type: "to a class that plays", description: counted });
  expect(hands.clicks).toBeLessThanOrEqual(15);
  expect(hands.keys).toBeLessThanOrEqual(120);
  expect(errors).toEqual([]);
});

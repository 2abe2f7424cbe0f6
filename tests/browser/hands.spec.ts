/**
 * A class written by keyboard alone, counted: twenty moves, their first words, two findings fixed, fitted to its length. Time is
 * reckoned with the keystroke-level model (Card, Moran and Newell 1980, from memory): 0.28 s a key for an average typist and
 * 1.35 s of thought before each act, and what the page itself took is added.
 */
import type { Page } from "@playwright/test";
import { expect, expectSaved, onRail, openPlan, script, test } from "./kit.ts";

const KEY_SECONDS = 0.28;
const THOUGHT_SECONDS = 1.35;

/** What a coach types to find each move: parts of its words. */
const MOVES = [
  ["sup leg pr", "Supine leg press"],
  ["calf", "Supine calf press"],
  ["bri leg", "Bridge with leg curl"],
  ["curl up", "Supine curl-up with arm press"],
  ["arm press", "Supine arm press"],
  ["s row", "Seated row"],
  ["s bi", "Seated biceps curl"],
  ["s over", "Seated overhead press"],
  ["sea lean", "Seated lean-back"],
  ["k row", "Kneeling row"],
  ["k fly", "Kneeling chest fly"],
  ["k lat", "Kneeling lat pull-down"],
  ["pl hold", "Plank hold"],
  ["knee tuck", "Plank to knee tuck"],
  ["bear", "Bear plank"],
  ["slow", "Slow push-up"],
  ["single row", "Kneeling single-arm row"],
  ["side lunge", "Side lunge"],
] as const;

/** Two of them have sides, and come with the other one. */
const OTHER_SIDES = 2;

/** Counts every key, and the seconds that a person would need. */
class Hands {
  keys = 0;
  acts = 0;
  constructor(private readonly page: Page) {}

  /** One thing that somebody decides to do, then does by keys. */
  async act(...presses: readonly string[]): Promise<void> {
    this.acts++;
    for (const press of presses) await this.press(press);
  }
  async press(key: string): Promise<void> {
    this.keys++;
    await this.page.keyboard.press(key);
  }
  async type(words: string): Promise<void> {
    for (const letter of words) await this.press(letter === " " ? "Space" : letter);
  }
  seconds(pageSeconds: number): number {
    return this.keys * KEY_SECONDS + this.acts * THOUGHT_SECONDS + pageSeconds;
  }
}

test("a class of twenty moves by keyboard: under five minutes and 250 keys", async ({ as }) => {
  const page = await as("marta");
  await page.goto("/desk");
  await page.getByRole("button", { name: "New plan", exact: true }).focus();
  const from = performance.now();
  const hands = new Hands(page);
  await hands.act("Enter");
  await expect(page.getByLabel("Title")).toBeFocused();
  await hands.type("Long and strong");
  await hands.press("Tab");
  await hands.type("25");
  await hands.act("Enter");

  const rail = page.getByRole("listbox", { name: "The class, item by item" });
  await expect(rail.getByRole("option", { name: "Warm-up" })).toBeFocused();
  for (const [typed, name] of MOVES) {
    await hands.act("a");
    await expect(page.getByRole("combobox")).toBeFocused();
    await hands.type(typed);
    await hands.press("Enter");
    await expect(page.getByRole("dialog")).toHaveCount(0);
    await expect(rail.getByRole("option", { name }).last()).toBeFocused();
  }
  await expect(rail.getByRole("option")).toHaveCount(MOVES.length + OTHER_SIDES + 1);

  // The heading takes the whole block's first words.
  await hands.act("Home");
  await hands.act("d");
  await expect(page.getByRole("region", { name: "First draft" })).toHaveCount(0);

  // One move is taken out and another one moved: what was written no longer fits, and is fixed where it is found.
  await hands.act(...Array(4).fill("ArrowDown"), "Delete");
  await hands.act(...Array(5).fill("ArrowDown"), "Alt+ArrowUp");
  const fixed = await fixAll(page, hands);
  expect(fixed).toBeGreaterThanOrEqual(2);

  await hands.act("Escape");
  await hands.act("t");
  const fit = page.getByRole("dialog", { name: "Fit to length" });
  await expect(fit.getByRole("button", { name: "Take these times" })).toBeFocused();
  await hands.press("Enter");
  await expect(fit).toHaveCount(0);
  await expect(page.getByText("of 25:00 · to the second")).toBeVisible();
  await expectSaved(page);
  const seconds = hands.seconds((performance.now() - from) / 1000);
  test.info().annotations.push({ type: "counted", description: `${hands.keys} keys, ${Math.round(seconds)} s` });
  expect(hands.keys).toBeLessThan(250);
  expect(seconds).toBeLessThan(300);
});

/** Goes by F through what is found and takes each act that is offered, until nothing offered is left. Answers how many. */
async function fixAll(page: Page, hands: Hands): Promise<number> {
  let fixed = 0;
  const seen = new Set<string>();
  for (let tries = 0; tries < 12; tries++) {
    await hands.act("f");
    const slip = page.locator("[data-finding]:focus");
    await expect(slip).toBeVisible();
    const key = (await slip.getAttribute("data-finding")) ?? "";
    const acts = await slip.locator("[data-fix]").count();
    if (seen.has(key)) return fixed;
    seen.add(key);
    if (acts === 0) continue;
    await hands.press("Enter");
    await expect(page.locator(`[data-finding="${key}"]`)).toHaveCount(0);
    // The keyboard goes on to what is left there, or to the item.
    await expect(page.locator(":focus")).toBeVisible();
    fixed++;
  }
  return fixed;
}

test("Enter on the plate that has the focus opens it for writing, and Escape goes back", async ({ as }) => {
  const page = await as("marta");
  await openPlan(page, "Upper body and trunk");
  const plate = onRail(page, /^Forearm plank/).first();
  await plate.focus();
  await page.keyboard.press("Enter");
  const words = script(page);
  await expect(words).toBeFocused();
  await page.keyboard.type("Now ");
  await expect(words).toContainText("Now ");
  await page.keyboard.press("Escape");
  await expect(plate).toBeFocused();
  await expect(words).toHaveCount(0);
});

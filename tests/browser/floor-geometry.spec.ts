/**
 * Every word of every step of the demo's classes, on every screen of the floor: on the screen, whole, over nothing and
 * under nothing. A change is known by its form, and read from afar. The screens are the floor's own, drawn with the clock
 * stopped. A long run draws every moment of every class at seven sizes. A usual one gives each of four sizes one of the
 * classes, and every step of it one of its moments: another at each size.
 */
import { expect, type Page, test } from "@playwright/test";
import { LONG } from "../support/long.ts";
import type { Screen, State } from "./geometry/stage.tsx";
import { bundleStage, openStage } from "./geometry/theatre.ts";

/** The narrowest, the lowest, a usual one and the largest. */
const USUAL_SIZES = [
  [390, 844],
  [844, 390],
  [1280, 720],
  [1920, 1080],
] as const;
const OTHER_SIZES = [
  [1024, 768],
  [1280, 800],
  [1440, 900],
] as const;
const SIZES = LONG ? [...USUAL_SIZES, ...OTHER_SIZES] : USUAL_SIZES;
const SCREENS = ["lead", "sheet", "withdrawn", "demonstrator", "crew", "wall"] as const satisfies readonly Screen[];

test.describe.configure({ mode: "parallel" });

/** One for all tests of a worker: every drawing replaces what was there. */
let page: Page;
test.beforeAll(async ({ browser }) => {
  page = await openStage(browser, await bundleStage());
});
test.afterAll(() => page.context().close());

for (const [turn, screen] of SCREENS.entries()) {
  test(`${screen}: every word of every step can be read`, async () => {
    const faults: string[] = [];
    for (const [n, [width, height]] of SIZES.entries()) {
      await page.setViewportSize({ width, height });
      const swept = await page.evaluate(sweep, { screen, ...share(n + turn) });
      expect(swept.looked).toBeGreaterThan(20);
      const shots = process.env.SPRINGLINE_SHOTS;
      if (shots) await page.screenshot({ path: `${shots}/${screen}-${width}x${height}.png` });
      faults.push(...swept.faults.map((fault) => `${width}x${height} ${fault}`));
    }
    expect(faults).toEqual([]);
  });
}

test("the coach's words fit as well where no motion is wanted", async () => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  const faults: string[] = [];
  for (const [n, [width, height]] of USUAL_SIZES.entries()) {
    await page.setViewportSize({ width, height });
    faults.push(...(await page.evaluate(sweep, { screen: "lead" as const, ...share(n) })).faults);
  }
  await page.emulateMedia({ reducedMotion: null });
  expect(faults).toEqual([]);
});

/** The coach's tablet at the distance that every device is set to at first. */
const TABLET = { width: 1024, height: 768 };
const READ_FROM_M = 4;

for (const [turn, screen] of (["lead", "demonstrator", "wall"] as const).entries()) {
  test(`${screen}: the act said now and the seconds of every change can be read from 4 m on a tablet`, async () => {
    await page.setViewportSize(TABLET);
    const swept = await page.evaluate(sweep, { screen, ...share(turn), oneEach: undefined, changesFromM: READ_FROM_M });
    expect(swept.looked).toBeGreaterThan(LONG ? 100 : 20);
    expect(swept.faults).toEqual([]);
  });
}

/** Each of the usual sizes has one or two of the screens; a long run draws them at all. */
const STATES = [
  ["lead", "held"],
  ["wall", "held"],
  ["demonstrator", "held"],
  ["demonstrator", "alone"],
  ["wall", "alone"],
  ["crew", "alone"],
] as const satisfies readonly (readonly [Screen, State])[];

for (const [turn, [screen, state]] of STATES.entries()) {
  test(`${screen}, ${state}: every word can be read, and the form is another`, async () => {
    const faults: string[] = [];
    for (const [n, [width, height]] of SIZES.entries()) {
      if (!LONG && n !== turn % SIZES.length) continue;
      await page.setViewportSize({ width, height });
      const swept = await page.evaluate(sweep, { screen, ...share(n), state });
      faults.push(...swept.faults.map((fault) => `${width}x${height} ${fault}`));
      // No second passes, or nobody confirms that it does: no comb then.
      expect(await page.locator("[data-change] [data-comb]").count()).toBe(0);
    }
    expect(faults).toEqual([]);
  });
}

/** What of the classes is drawn at the `nth` size. */
const share = (nth: number) => (LONG ? { only: null } : { only: nth, oneEach: nth });

test("the figure of a change stands on a wall where it moves no word", async () => {
  await page.setViewportSize({ width: 1920, height: 1080 });
  const { changes, drawn, moved } = await page.evaluate(figuresOfChanges);
  expect(changes).toBeGreaterThan(10);
  expect(drawn / changes).toBeGreaterThan(0.6);
  expect(moved).toEqual([]);
});

/** Runs in the page: how many changes of the first class are drawn, and the words that stand elsewhere without the figure. */
function figuresOfChanges() {
  const seen = new Set<string>();
  const moved: string[] = [];
  let drawn = 0;
  for (let at = 0; at < 1500; at += 3) {
    window.stage.show({ screen: "wall", card: 0, moment: { at, phase: "change", step: 0 } });
    const plate = document.querySelector("[data-change]");
    const id = plate?.getAttribute("data-change");
    if (!plate || !id || seen.has(id)) continue;
    seen.add(id);
    const figure = plate.querySelector<HTMLElement>("[data-extra]:not([hidden])");
    if (!figure) continue;
    drawn++;
    const places = () =>
      [...plate.querySelectorAll("li, [role=timer], [data-part]")].map((part) => {
        const { x, y, width, height } = part.getBoundingClientRect();
        return [x, y, width, height].map(Math.round).join(" ");
      });
    const before = places();
    figure.hidden = true;
    if (places().join() !== before.join()) moved.push(id);
  }
  return { changes: seen.size, drawn, moved };
}

interface Asked {
  readonly screen: Screen;
  readonly only: number | null;
  readonly oneEach?: number | undefined;
  readonly state?: State;
  readonly changesFromM?: number;
}

/** Runs in the page. `only`: one of the classes, counted round. */
function sweep({ only, ...asked }: Asked) {
  const { classes, sweep } = window.stage;
  return sweep({ ...asked, only: only === null ? undefined : only % classes });
}

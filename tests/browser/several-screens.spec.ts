/**
 * Several screens in one room, each in a browser of its own: the coach's leads, the others follow its clock. All run on
 * the real clock, since the test is about whether clocks agree.
 */
import { type Browser, expect, type Page, test } from "@playwright/test";
import { type RunningApp, startApp } from "#tests/support/app.ts";
import { expectNoBarrier } from "../support/barriers.ts";
import { letIn } from "./kit.ts";

// Up to four browsers at once: on a busy machine opening them takes a while.
test.describe.configure({ timeout: 240_000 });

let app: RunningApp;
test.beforeAll(async () => {
  app = await startApp();
});
test.afterAll(() => app.remove());

/** A paired device of the Loft, showing its list of classes. */
async function paired(browser: Browser, name: string, size = { width: 1280, height: 800 }): Promise<Page> {
  const context = await browser.newContext({ baseURL: app.url, viewport: size });
  await letIn(context, app.url, "petra");
  const rooms = await (await context.request.get("/api/rooms")).json();
  const roomId = rooms.find((one: { name: string }) => one.name === "Loft").id;
  const made = await context.request.post("/api/devices", { data: { name, roomId }, headers: { origin: app.url } });
  await context.clearCookies();
  const page = await context.newPage();
  await page.goto("/floor");
  await page.getByLabel("Pairing code").fill((await made.json()).code);
  await page.getByRole("button", { name: "Pair" }).click();
  await expect(page.getByText("signature verified · kept on this device").first()).toBeVisible();
  return page;
}
async function follows(page: Page, view: "Demonstrator" | "Crew" | "Wall"): Promise<void> {
  await page.getByRole("radio", { name: new RegExp(`^${view}`) }).check();
  await page.getByRole("button", { name: "Follow the class of this room" }).click();
}
async function begins(page: Page): Promise<void> {
  await page.locator("ul li button").first().click();
  await page.getByRole("button", { name: "Start the class" }).click();
}
/** Ends the class for all screens. An open class would block the room for the next test's leader for a while. */
async function ends(page: Page): Promise<void> {
  await page.getByRole("button", { name: "end", exact: true }).click();
  await page.getByRole("button", { name: "end now?" }).click();
  await page.getByRole("button", { name: "Back to the editions" }).click();
}
const seconds = (page: Page) => page.getByRole("timer").locator("span").first();
const figure = async (page: Page): Promise<string> => (await seconds(page).textContent()) ?? "";
const leave = (...pages: Page[]) => Promise.all(pages.map((page) => page.context().close()));

/** When a page changed to each figure it showed meanwhile, ms. All pages are on one machine, so its clock is theirs. */
const changesAt = (page: Page, changes: number): Promise<Record<string, number>> =>
  page.getByRole("timer").evaluate(
    (timer, wanted) =>
      new Promise<Record<string, number>>((resolve) => {
        const times: Record<string, number> = {};
        let was = timer.firstElementChild?.textContent;
        const seen = new MutationObserver(() => {
          const is = timer.firstElementChild?.textContent;
          if (!is || is === was) return;
          was = is;
          times[is] = performance.timeOrigin + performance.now();
          if (Object.keys(times).length < wanted) return;
          seen.disconnect();
          resolve(times);
        });
        seen.observe(timer, { subtree: true, childList: true, characterData: true });
      }),
    changes,
  );

/**
 * How far apart two pages changed to one figure, ms: the least of some, since a busy machine draws late and never early.
 * Infinite where they showed no figure in common.
 */
const apart = (a: Record<string, number>, b: Record<string, number>): number =>
  Math.min(...Object.entries(a).map(([figure, at]) => Math.abs(at - (b[figure] ?? Number.POSITIVE_INFINITY))));

/**
 * That the studio's time is met within 100 ms is held by `tests/reference/shared-clock.test.ts`, without a real clock, and
 * measured on real screens by `npm run bench -- line`.
 */
const TOGETHER_MS = 500;

test("crew, demonstrator and wall change their second with the coach's", async ({ browser }) => {
  const [coach, crew, demo, wall] = await Promise.all([
    paired(browser, "Coach's tablet"),
    paired(browser, "Camera desk"),
    paired(browser, "Demonstrator's screen"),
    paired(browser, "Wall screen"),
  ]);
  await follows(crew, "Crew");
  await follows(demo, "Demonstrator");
  await follows(wall, "Wall");
  await expect(wall.getByText("Loft: no class is running")).toBeVisible();
  await begins(coach);
  await coach.keyboard.press("PageDown");
  await expect(coach.getByText("3 screens follow")).toBeVisible();
  const name = await coach.locator("section[aria-label=Now]").first().locator("div").first().textContent();
  for (const page of [crew, demo, wall]) {
    await expect(page.getByText("Coach's tablet has led since")).toBeVisible();
    await expect(page.getByText(name ?? "").first()).toBeVisible();
    await expect(page.getByRole("button", { name: "skip" })).toHaveCount(0);
  }
  const at = await Promise.all([coach, crew, demo, wall].map((page) => changesAt(page, 6)));
  for (const other of at.slice(1)) expect(apart(other, at[0] ?? {})).toBeLessThan(TOGETHER_MS);

  // A hold is a hold everywhere, at the same figure.
  await coach.keyboard.press(" ");
  for (const page of [crew, demo, wall]) await expect(page.getByRole("timer")).toContainText("held");
  const shown = await figure(coach);
  for (const page of [crew, demo, wall]) expect(await figure(page)).toBe(shown);

  // A reloaded page follows by itself; all views are accessible.
  await wall.reload();
  await expect(wall.getByRole("timer")).toContainText("held");
  for (const page of [crew, demo, wall]) await expectNoBarrier(page);

  // Filed as soon as it is over, without anybody at the screen. And there is nothing left to lead.
  const told = coach.waitForResponse((response) => response.url().endsWith("/api/devices/logs"));
  await coach.getByRole("button", { name: "go on" }).click();
  await coach.getByRole("button", { name: "end", exact: true }).click();
  await coach.getByRole("button", { name: "end now?" }).click();
  expect((await told).status()).toBe(200);
  await expect(wall.getByRole("heading", { name: "The class is done" })).toBeVisible();
  await expect(wall.getByRole("button", { name: "ask to lead" })).toHaveCount(0);
  await coach.getByRole("button", { name: "Back to the editions" }).click();
  await expect(wall.getByText("Loft: no class is running")).toBeVisible();
  await leave(coach, crew, demo, wall);
});

test("a follower that goes offline runs on, says so, and comes back without a jump", async ({ browser }) => {
  const [coach, wall] = await Promise.all([paired(browser, "Coach's tablet"), paired(browser, "Wall screen")]);
  await follows(wall, "Wall");
  await begins(coach);
  await coach.keyboard.press("PageDown");
  await expect(wall.getByRole("timer")).toBeVisible();
  await wall.context().setOffline(true);
  await expect(wall.getByText(/No contact since \d\d:\d\d:\d\d\. This screen goes on by itself\./)).toBeVisible();
  // On a busy machine the coach's own line may be let go and taken up again meanwhile.
  await expect(coach.getByText("lost: Wall screen")).toBeVisible({ timeout: 45_000 });
  await changeTogether(coach, wall);
  // What the coach does meanwhile shows there only once it is back.
  await coach.keyboard.press(" ");
  await expect(coach.getByRole("timer")).toContainText("held");
  await expect(wall.getByRole("timer")).not.toContainText("held");
  await wall.context().setOffline(false);
  await expect(wall.getByRole("timer")).toContainText("held");
  await expect(coach.getByText("1 screen follows")).toBeVisible();
  expect(await figure(wall)).toBe(await figure(coach));
  // By touch: a key pressed again within a quarter of a second is one tap.
  await coach.getByRole("button", { name: "go on" }).click();
  await changeTogether(coach, wall);
  await ends(coach);
  await expect(wall.getByText("Loft: no class is running")).toBeVisible();
  await leave(coach, wall);
});

/** Their seconds change together. A machine that stood still is looked at again; a clock that is off stays so. */
async function changeTogether(one: Page, other: Page): Promise<void> {
  await expect(async () => {
    const [here, there] = await Promise.all([changesAt(one, 4), changesAt(other, 4)]);
    expect(apart(here, there)).toBeLessThan(TOGETHER_MS);
  }).toPass({ timeout: 40_000 });
}

/** How many class logs the studio has for the first card of the list, as a coach reads them. */
async function classesTaught(browser: Browser, device: Page): Promise<number> {
  const edition = await device.evaluate(
    () =>
      new Promise<{ planId: string; number: number; title: string }[]>((resolve) => {
        const open = indexedDB.open("springline-floor");
        open.onsuccess = () => {
          const get = open.result.transaction("kept").objectStore("kept").get("shelf");
          get.onsuccess = () =>
            resolve(
              get.result.cards.map((one: { envelope: { card: { edition: object } } }) => one.envelope.card.edition),
            );
        };
      }),
  );
  const title = await device.locator("ul li button span").first().textContent();
  const { planId, number } = edition.find((one) => one.title === title) ?? { planId: "", number: 0 };
  const context = await browser.newContext({ baseURL: app.url });
  await letIn(context, app.url, "marta");
  const page = await context.newPage();
  await page.goto(`/editions/${planId}/${number}/classes`);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  const count = await page.getByRole("heading", { level: 2 }).count();
  await context.close();
  return count;
}

test("taking over is asked and shown; the class goes on with the new leader; its log arrives once", async ({
  browser,
}) => {
  const [coach, crew] = await Promise.all([paired(browser, "Coach's tablet"), paired(browser, "Camera desk")]);
  const before = await classesTaught(browser, coach);
  await follows(crew, "Crew");
  await begins(coach);
  await coach.keyboard.press("PageDown");
  await expect(crew.getByRole("timer")).toBeVisible();

  await crew.getByRole("button", { name: "ask to lead" }).click();
  await expect(crew.getByText("You asked Coach's tablet for the lead. Waiting for the answer.")).toBeVisible();
  await expect(coach.locator("p[role=alert]")).toContainText("Camera desk asks to lead.");
  await coach.getByRole("button", { name: "keep leading" }).click();
  await expect(crew.getByText("The coach's screen said no. Coach's tablet has led since")).toBeVisible();

  await crew.getByRole("button", { name: "ask to lead" }).click();
  await coach.getByRole("button", { name: "hand over" }).click();
  await expect(crew.getByRole("navigation", { name: "The class" })).toBeVisible();
  await expect(coach.getByText("Camera desk has led since")).toBeVisible();
  await expect(coach.getByRole("navigation", { name: "The class" })).toHaveCount(0);
  // Hold and skip to the next change: the new leader moves the other screen.
  await crew.keyboard.press(" ");
  await expect(coach.getByRole("timer")).toContainText("held");
  expect(await figure(coach)).toBe(await figure(crew));

  await ends(crew);
  await expect(coach.getByText("Loft: no class is running")).toBeVisible();
  await coach.getByRole("button", { name: "stop following" }).click();
  await expect(coach.getByText("The log of one class is kept here")).toHaveCount(0);
  await expect(crew.getByText("The log of one class is kept here")).toHaveCount(0);
  // The screen that leads at the end files the log; the one that handed over does not.
  expect(await classesTaught(browser, coach)).toBe(before + 1);
  await leave(coach, crew);
});

test("a second coach who begins a class next to the first is told, runs alone, and may follow", async ({ browser }) => {
  const [coach, second] = await Promise.all([paired(browser, "Coach's tablet"), paired(browser, "Second tablet")]);
  await begins(coach);
  await coach.keyboard.press("PageDown");
  await expect(second.getByText(/Coach's tablet has led “.*” here since/)).toBeVisible();
  await begins(second);
  await expect(second.locator("p[role=alert]")).toContainText("Coach's tablet has led since");
  await expect(second.locator("p[role=alert]")).toContainText("this class goes on here alone");
  // Whatever it does moves nobody else.
  await second.keyboard.press(" ");
  await expect(second.getByRole("timer")).toContainText("held");
  await expect(coach.getByRole("timer")).not.toContainText("held");
  await second.getByRole("button", { name: "follow it" }).click();
  await expect(second.getByText("Coach's tablet has led since")).toBeVisible();
  await expect(second.getByRole("timer")).not.toContainText("held");
  await expect(coach.getByText("1 screen follows")).toBeVisible();
  await ends(coach);
  await expect(second.getByText("Loft: no class is running")).toBeVisible();
  await leave(coach, second);
});

test("the leader's tablet dies: the class goes on from another, which leads once its coach confirms", async ({
  browser,
}) => {
  const [coach, spare, wall] = await Promise.all([
    paired(browser, "Coach's tablet"),
    paired(browser, "Spare tablet"),
    paired(browser, "Wall screen"),
  ]);
  await follows(wall, "Wall");
  await begins(coach);
  await expect(wall.getByText("Coach's tablet has led since")).toBeVisible();
  await coach.context().close();
  await begins(spare);
  const notice = spare.locator("p[role=alert]");
  await expect(notice).toContainText("this class goes on here alone");
  // It might come back: asked for only once it has been gone for twenty seconds.
  await expect(notice).toContainText("and is offline", { timeout: 40_000 });
  await notice.getByRole("button", { name: "lead from here" }).click();
  await expect(wall.getByText("Spare tablet has led since")).toBeVisible();
  await expect(notice).toHaveCount(0);
  await spare.keyboard.press(" ");
  await expect(wall.getByRole("timer")).toContainText("held");
  await ends(spare);
  await expect(wall.getByText("Loft: no class is running")).toBeVisible();
  await leave(spare, wall);
});

test("the views fit their screens, with light text on the floor's dark ground and nothing wider than the page", async ({
  browser,
}) => {
  const [coach, screen] = await Promise.all([paired(browser, "Coach's tablet"), paired(browser, "Second screen")]);
  await begins(coach);
  for (let n = 0; n < 3; n++) await coach.keyboard.press("PageDown");
  await follows(screen, "Wall");
  for (const view of ["Wall", "Demonstrator", "Crew"] as const) {
    await screen.getByLabel("shows").selectOption({ label: view });
    for (const [width, height] of [
      [390, 844],
      [1024, 768],
      [1440, 900],
    ] as const) {
      await screen.setViewportSize({ width, height });
      await expect(screen.getByRole("timer")).toBeVisible();
      expect(await screen.evaluate(tooLarge)).toEqual([]);
      if (process.env.SPRINGLINE_SHOTS)
        await screen.screenshot({ path: `${process.env.SPRINGLINE_SHOTS}/${view}-${width}.png` });
    }
  }
  await ends(coach);
  await leave(coach, screen);
});

/** What extends past the page or is too small for a thumb. Runs in the page. */
function tooLarge(): string[] {
  const wrong = [];
  const { scrollWidth, clientWidth, scrollHeight, clientHeight } = document.documentElement;
  if (scrollWidth > clientWidth) wrong.push(`the page is ${scrollWidth} wide`);
  if (scrollHeight > clientHeight) wrong.push(`the page is ${scrollHeight} high`);
  for (const target of document.querySelectorAll("button, select")) {
    const { height, bottom } = target.getBoundingClientRect();
    if (height < 44 || bottom > innerHeight + 1) wrong.push(`${target.textContent} is ${height} high`);
  }
  return wrong;
}

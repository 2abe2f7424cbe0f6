/**
 * From the floor back to the plan: a room's seconds from its classes, a rehearsed class whose measurements are taken
 * into the plan, and the sheets for crew and wall. The test controls the clocks.
 */
import type { Page } from "@playwright/test";
import { expectNoBarrier, expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, expectSaved, more, openPlan, test } from "./kit.ts";

test.describe.configure({ mode: "serial" });

const UPPER = "Upper body and trunk";
const clean = (page: Page) => expectNoBarrier(page, { all: true });
const idOf = (page: Page): string => /plans\/([^/?#]+)/.exec(page.url())?.[1] ?? "";
/** Names what extends past the right edge of the page once its fonts are loaded. */
const nothingSticksOut = (page: Page) =>
  expect
    .poll(() =>
      page.evaluate(() => {
        if (document.documentElement.scrollWidth <= innerWidth) return [];
        const out = [...document.querySelectorAll("body *")].filter(
          (element) => element.getBoundingClientRect().right > innerWidth + 1,
        );
        return [
          `the page is ${document.documentElement.scrollWidth} of ${innerWidth} wide`,
          ...out.map((element) => `${element.tagName} ${element.textContent?.slice(0, 30)}`),
        ];
      }),
    )
    .toEqual([]);

test("a manager sees what classes show about a room's changes, takes two, and it is on the record", async ({ as }) => {
  const page = await as("petra");
  await page.goto("/studio");
  await page.getByRole("link", { name: "Set-up timings of Loft" }).click();
  const told = page.getByRole("region", { name: "From your classes" });
  await expect(told).toContainText("9 classes taught in this room show");
  const row = (words: string) => told.getByRole("row", { name: words });
  await expect(row("A quarter turn")).toContainText(/\d+ changes; \d+% from your classes/);
  await expect(told).toContainText("Not timed in any class:");
  await clean(page);

  for (const box of await told.getByRole("checkbox").all()) await box.uncheck();
  await expect(told.getByRole("button", { name: "Nothing ticked" })).toBeDisabled();
  for (const words of ["A quarter turn", "One spring off"]) await row(words).getByRole("checkbox").check();
  const seconds = (await row("A quarter turn").locator("strong").textContent())?.replace(" s", "") ?? "";
  await told.getByRole("button", { name: "Take 2 numbers for this room" }).click();
  await expect(told.getByText("2 numbers taken. Open plans were timed again.")).toBeVisible();
  await expect(told.getByText(/^Last taken by Petra/)).toContainText(`a quarter turn ${seconds} s`);
  await expect(row("A quarter turn")).toContainText("as now");
  await expect(page.getByLabel("A quarter turn", { exact: true })).toHaveValue(seconds);

  const lead = await as("ines");
  const answer = await lead.goto(page.url());
  expect(answer?.status()).toBe(404);
});

/** The large target of a rehearsal, whose words say what a tap means. */
const target = (page: Page) => page.getByRole("navigation", { name: "The rehearsal" }).getByRole("button").first();

/**
 * Goes through a rehearsal on the page's clock: every line takes about `lineSeconds`, every set-up is done `lateSeconds`
 * after its planned end; stops after `setUps` of them. The clock jumps, since each call of it takes longer than the last.
 */
async function goThrough(page: Page, how: { lineSeconds: number; lateSeconds: number; setUps: number }) {
  let [lines, done] = [0, 0];
  for (let looks = 0; done < how.setUps && looks < 600; looks += 1) {
    await page.clock.fastForward(2000);
    const words = await target(page).textContent();
    if (words === "said") {
      await page.clock.fastForward(how.lineSeconds * 1000 - 1000);
      lines += 1;
      await page.keyboard.press(" ");
    } else if (await page.getByText("waits for your set-up").isVisible()) {
      await page.clock.fastForward(how.lateSeconds * 1000);
      done += 1;
      // A pedal key does the same.
      await page.keyboard.press("PageDown");
    } else continue;
    await page.clock.fastForward(300);
  }
  return { lines, done };
}

async function endIt(page: Page): Promise<void> {
  await page.getByRole("button", { name: "end", exact: true }).click();
  await page.getByRole("button", { name: "end now?" }).click();
  await page.clock.runFor(300);
  await expect(page.getByRole("heading", { name: "The rehearsal was ended early" })).toBeVisible();
}

test("a draft is rehearsed with one key, and what is chosen goes into the plan as one step", async ({ as }) => {
  const page = await as("marta");
  await openPlan(page, UPPER);
  await expectSaved(page);
  const plan = page.url();
  await more(page, "Rehearse");
  await expect(page.getByText("No rehearsal of this plan yet.")).toBeVisible();
  await page.clock.install();
  await page.getByRole("link", { name: "Rehearse now" }).click();
  await expect(page.getByText("A draft, not signed off: for rehearsing only, not for teaching")).toBeVisible();
  await expect(page.getByText(/their own clinician/)).toBeVisible();
  await clean(page);
  await page.clock.pauseAt(Date.now() + 3_600_000);
  await page.getByRole("button", { name: "Start the rehearsal" }).click();
  await expect(page.getByText("Rehearsal, no class")).toBeVisible();
  const went = await goThrough(page, { lineSeconds: 3, lateSeconds: 6, setUps: 3 });
  expect(went.done).toBe(3);
  expect(went.lines).toBeGreaterThan(10);

  // After a reload it goes on.
  await page.reload();
  await expect(page.getByText("Rehearsal, no class")).toBeVisible();
  await endIt(page);
  await expect(page.getByText(/Measured: .* and 3 changes/)).toBeVisible();
  await page.clock.resume();
  await page.getByRole("link", { name: "See it beside the plan" }).click();

  const dialog = page.getByRole("dialog", { name: "Rehearse" });
  await expect(dialog.getByText(/of the draft, kept in this browser/)).toBeVisible();
  const table = dialog.getByRole("table", { name: /planned and yours/ });
  await expect(table.getByRole("row")).toHaveCount(4);
  await expect(dialog.getByText(/Use your speaking rate/)).toBeVisible();
  await clean(page);
  for (const box of await dialog.getByRole("checkbox").all()) await box.uncheck();
  await expect(dialog.getByRole("button", { name: "Nothing chosen" })).toBeDisabled();
  const first = table.getByRole("row").nth(1);
  await first.getByRole("checkbox").check();
  const to = /→ (\d+) s/.exec((await first.textContent()) ?? "")?.[1];
  await dialog.getByLabel(/Use your speaking rate/).check();
  await expect(dialog.getByText(/The class would take .* it takes 25:00 now/)).toBeVisible();
  await dialog.getByRole("button", { name: "Take 1 change time and your speaking rate" }).click();
  await expect(dialog).toBeHidden();
  await expectSaved(page);
  expect(page.url()).toBe(plan);
  await expect(page.getByText(new RegExp(`^${to} s.*planned`)).first()).toBeVisible();
  // One step, undone by one step.
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
  await expectSaved(page);
});

test("an edition is rehearsed on the room's device: its log does not count as a class, and the plan's writers see it", async ({
  as,
  app,
}) => {
  const manager = await as("petra");
  const rooms = await (await manager.request.get("/api/rooms")).json();
  const roomId = rooms.find((one: { name: string }) => one.name === "Loft").id;
  const data = { name: "Tablet", roomId };
  const { code } = await (await manager.request.post("/api/devices", { data, headers: { origin: app.url } })).json();
  const device = await as(null);
  await device.clock.install();
  await device.goto("/floor");
  await device.getByLabel("Pairing code").fill(code);
  await device.getByRole("button", { name: "Pair" }).click();
  await device.getByRole("button", { name: /^Whole body, steady/ }).click();
  await device.clock.pauseAt(Date.now() + 3_600_000);
  await device.getByRole("button", { name: "Rehearse without a class" }).click();
  await expect(device.getByText("Rehearsal, no class")).toBeVisible();
  const went = await goThrough(device, { lineSeconds: 3, lateSeconds: 4, setUps: 1 });
  expect(went.done).toBe(1);
  // Closed and reopened, the device resumes the rehearsal.
  await device.reload();
  await expect(device.getByText("Rehearsal, no class")).toBeVisible();
  await endIt(device);
  await device.clock.resume();
  const sent = device.waitForResponse((response) => response.url().endsWith("/api/devices/logs"));
  await device.getByRole("button", { name: "Back to the editions" }).click();
  expect((await sent).status()).toBe(200);

  const page = await as("marta");
  await openPlan(page, "Whole body, steady");
  await page.goto(`/editions/${idOf(page)}/1/classes`);
  await expect(page.getByText("9 classes taught, the latest first. 1 rehearsal is listed too.")).toBeVisible();
  await page.goBack();
  await more(page, "Rehearse");
  const dialog = page.getByRole("dialog", { name: "Rehearse" });
  await expect(dialog.getByText(/of edition 1, Loft/)).toBeVisible();
  await expect(dialog.getByText(/signed off. Taking these times puts it back in writing/)).toBeVisible();

  await manager.goto(`/studio/rooms/${roomId}/timings`);
  await expect(manager.getByText("9 classes taught in this room show")).toBeVisible();
});

test("the crew sheet on a phone is a list within the screen that says when to be where", async ({ as }) => {
  const page = await as("sam", { viewport: { width: 390, height: 844 } });
  await page.goto("/desk");
  await page.getByRole("link", { name: /^Crew sheet of Whole body/ }).click();
  await expect(page.getByRole("heading", { name: "Crew sheet: Whole body, steady" })).toBeVisible();
  await expect(page.getByText("Wide, from the side.")).toBeVisible();
  await nothingSticksOut(page);
  await clean(page);
  await page.setViewportSize({ width: 1024, height: 768 });
  await clean(page);
});

test("the timings from classes fit on a phone, light and dark", async ({ as }) => {
  const page = await as("petra", { viewport: { width: 390, height: 844 } });
  await page.goto("/studio");
  await page.getByRole("link", { name: "Set-up timings of Loft" }).click();
  await expect(page.getByRole("heading", { name: "From your classes" })).toBeVisible();
  await nothingSticksOut(page);
  await expectNoBarrierLightOrDark(page, { all: true });
});

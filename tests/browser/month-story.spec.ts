/**
 * A month from nothing to the calendars: two people write it at once, one of them offline for a while; what collides is found
 * and mended; the empty classes are filled; the lead signs; a class is called off and calendars see it as cancelled.
 */
import type { APIRequestContext, Page } from "@playwright/test";
import { addMonths, daysOfMonth, isoWeekday } from "#lib/calendar/days.ts";
import { readByIcalJs, readByNodeIcal } from "../support/read-feed.ts";
import { expect, test } from "./kit.ts";

/** The last month that calendars reach. */
const month = addMonths(new Date().toISOString().slice(0, 7), 2);
const monday = daysOfMonth(month).findIndex((date) => isoWeekday(date) === 1);
/** The n-th day from the first Monday on: 0 that Monday, 7 the next. */
const day = (n: number): string => daysOfMonth(month)[monday + n] ?? "";

const save = (page: Page) => page.locator("[data-save]");
const classesOn = (page: Page, date: string) =>
  page.locator(`tr[data-date="${date}"] button[data-slot]:not([data-out])`);
const panel = (page: Page) => page.getByRole("complementary");

async function openMonth(page: Page): Promise<void> {
  await page.goto(`/programme/${month}`);
  await expect(save(page)).toHaveAttribute("data-save", "saved");
}

interface Typed {
  readonly date: string;
  readonly theme: string;
  readonly start: string;
  readonly coach: string;
  readonly room: string;
}

async function addClass(page: Page, { date, theme, start, coach, room }: Typed): Promise<void> {
  await page.locator(`[data-day="${date}"]`).click();
  await panel(page).getByLabel("Theme").fill(theme);
  await panel(page).getByLabel("Begins").fill(start);
  await panel(page).getByLabel("Room", { exact: true }).selectOption({ label: room });
  await panel(page).getByLabel("Coach", { exact: true }).selectOption({ label: coach });
  await panel(page).getByRole("button", { name: "Add the class" }).click();
}

/** A file of the month with nothing planned takes the place of what the studio's pattern gives. */
async function emptyMonth(page: Page): Promise<void> {
  const status = await page.evaluate(async (path) => {
    const file = await (await fetch(path)).json();
    const body = JSON.stringify({ ...file, pattern: [], slots: [], themes: {} });
    const headers = { "content-type": "application/json" };
    return (await fetch(`${path}?replace=yes`, { method: "PUT", headers, body })).status;
  }, `/api/programme/${month}/file`);
  expect(status).toBe(200);
}

async function makeAddress(page: Page): Promise<string> {
  await page.goto("/programme/feeds");
  await page.getByRole("button", { name: /^Make an address.* Your classes$/ }).click();
  return await page.getByRole("textbox", { name: "Address to subscribe to" }).inputValue();
}

/** What two programs read of one event of the feed; they must agree. */
async function eventAt(request: APIRequestContext, address: string, wall: string) {
  const feed = await (await request.get(address)).text();
  const event = readByIcalJs(feed).events.find((one) => one.wall === wall);
  const same = readByNodeIcal(feed).find(({ uid }) => uid === event?.uid);
  expect(same?.status).toBe(event?.status);
  expect(same?.from).toBe(event?.from);
  return event;
}

async function sign(page: Page, edition: number): Promise<void> {
  await page.getByRole("link", { name: "Sign the month off" }).click();
  await page.getByRole("button", { name: "Sign the month off" }).click();
  await expect(page.getByText(`The month is signed off as edition ${edition}.`)).toBeVisible();
}

const marta = (date: string, start: string, theme = "Whole body"): Typed => ({
  ...{ date, start, theme, coach: "Marta Lindqvist", room: "Loft" },
});
const ines = (date: string, start: string): Typed => ({ ...marta(date, start), coach: "Ines Duarte" });

test("two people write a month, one offline for a while; it is mended, filled, signed, read and a class called off", async ({
  as,
  request,
}) => {
  test.slow();
  const [coach, lead] = [await as("marta"), await as("ines")];
  const address = await makeAddress(coach);
  await openMonth(lead);
  await emptyMonth(lead);
  await openMonth(coach);
  await expect(classesOn(coach, day(0))).toHaveCount(0);

  await test.step("both write, the lead without a network", async () => {
    await lead.context().setOffline(true);
    await expect(save(lead)).toHaveAttribute("data-save", "offline");
    await Promise.all([
      addClass(coach, marta(day(0), "18:00")).then(() => addClass(coach, marta(day(2), "18:00"))),
      addClass(lead, { ...marta(day(0), "18:15", "Trunk"), room: "Harbour room" }).then(() =>
        addClass(lead, ines(day(3), "07:00")),
      ),
    ]);
    await expect(classesOn(lead, day(2))).toHaveCount(0);
    await lead.context().setOffline(false);
    for (const page of [coach, lead]) {
      await expect(classesOn(page, day(0))).toHaveCount(2, { timeout: 30_000 });
      await expect(classesOn(page, day(2))).toHaveCount(1);
      await expect(classesOn(page, day(3))).toHaveCount(1);
      await expect(save(page)).toHaveAttribute("data-save", "saved");
    }
  });

  await test.step("a coach in two rooms at once is found, and keeps the month from being signed", async () => {
    await lead.getByRole("button", { name: "Sign the month off" }).click();
    await expect(
      lead.getByRole("status").filter({ hasText: /^Not yet, 1 finding must be fixed first: / }),
    ).toContainText("Marta Lindqvist");
    await lead.getByRole("button", { name: /^18:15 to .*Trunk/ }).click();
    await panel(lead).getByLabel("Coach", { exact: true }).selectOption({ label: "Ines Duarte" });
  });

  await test.step("the week is copied by the coach to the week after", async () => {
    await coach.getByRole("button", { name: "More" }).click();
    await coach.getByRole("button", { name: "Copy a week, take last month over" }).click();
    const copy = coach.getByRole("region", { name: "Copy a week" });
    await copy.getByLabel("The week of", { exact: true }).selectOption(day(0));
    await copy.getByLabel("To the week of").selectOption(day(7));
    await copy.getByRole("button", { name: "Copy the week" }).click();
    for (const page of [coach, lead]) await expect(classesOn(page, day(7))).toHaveCount(2);
  });

  await test.step("the empty classes are filled, seen before they are taken", async () => {
    await coach.getByRole("button", { name: /^Fill the 8 empty$/ }).click();
    await expect(panel(coach).getByText(/^(Proven best|Best found)$/)).toBeVisible({ timeout: 60_000 });
    const proposed = await panel(coach)
      .getByRole("button", { name: /^Take this one/ })
      .count();
    expect(proposed).toBeGreaterThan(0);
    await panel(coach).getByRole("button", { name: "Take all" }).click();
    await expect(lead.getByRole("button", { name: `Fill the ${8 - proposed} empty` })).toBeVisible();
  });

  await test.step("the lead reads and signs", async () => {
    await sign(lead, 1);
    const event = await eventAt(request, address, `${day(2)}T18:00`);
    expect(event).toMatchObject({ status: "CONFIRMED", transparent: false, summary: "Whole body", location: "Loft" });
  });

  await test.step("a class is called off: the lead sees it as a change, signs again, and calendars read it as cancelled", async () => {
    const before = await eventAt(request, address, `${day(2)}T18:00`);
    await classesOn(coach, day(2)).click();
    await panel(coach).getByRole("button", { name: "Take out of the month" }).click();
    await expect(save(coach)).toHaveAttribute("data-save", "saved");
    await openMonth(lead);
    await expect(lead.locator(`tr[data-date="${day(2)}"] button[data-out][data-changed]`)).toHaveCount(1);
    // So far ahead, calendars tell what was signed.
    expect(await eventAt(request, address, `${day(2)}T18:00`)).toEqual(before);
    await sign(lead, 2);
    const event = await eventAt(request, address, `${day(2)}T18:00`);
    expect(event).toMatchObject({ uid: before?.uid, status: "CANCELLED", transparent: true });
    expect(event?.sequence).toBeGreaterThan(before?.sequence ?? 0);
  });
});

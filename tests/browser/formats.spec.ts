/** A person reads American dates, a 12-hour clock, weeks from Sunday, pounds and inches; who works beside them keeps theirs. */
import type { Page } from "@playwright/test";
import { expectNoBarrier } from "../support/barriers.ts";
import { expect, onRail, openDrawer, openPlan, test } from "./kit.ts";

const FIELDS = [
  ["Dates are written in", "en-US"],
  ["Clock", "12"],
  ["A week begins on", "7"],
  ["Forces are in", "lbf"],
  ["Lengths are in", "in"],
] as const;

const field = (page: Page, name: string) => page.getByRole("combobox", { name });

async function asTheStudio(page: Page): Promise<void> {
  const data = { dates: null, clock: null, weekStart: null, force: null, length: null };
  const headers = { origin: new URL(page.url()).origin };
  expect((await page.request.put("/api/me/formats", { headers, data })).ok()).toBe(true);
}

/** Days on which the sheet begins a week, as weekdays of `Date`: 0 is Sunday. */
async function weeksBegin(page: Page): Promise<number[]> {
  const rows = page.locator("tr[data-week=begins] [data-day]");
  await expect(rows.first()).toBeVisible();
  const dates = await rows.evaluateAll((all) => all.map((one) => one.getAttribute("data-day") ?? ""));
  return [...new Set(dates.map((date) => new Date(`${date}T12:00:00Z`).getUTCDay()))];
}

async function openLoad(page: Page) {
  await openPlan(page, "Upper body and trunk");
  await onRail(page, "Kneeling biceps curl").first().click();
  await openDrawer(page);
  const load = page.getByRole("region", { name: "Load" });
  await expect(load).toBeVisible();
  return load;
}

test("what a person chooses is what they see on the desk, the month, a plan and a printed sheet, and nobody else", async ({
  as,
}) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  const warnings: string[] = [];
  marta.on("console", (line) => line.type() === "error" && warnings.push(line.text()));
  await marta.goto("/settings#formats");
  try {
    // By keyboard: from field to field, and Enter to save.
    await field(marta, FIELDS[0][0]).focus();
    for (const [name, value] of FIELDS) {
      await expect(field(marta, name)).toBeFocused();
      await field(marta, name).selectOption(value);
      await marta.keyboard.press("Tab");
    }
    await expectNoBarrier(marta);
    await marta.keyboard.press("Enter");
    await expect(marta.getByText(/^Saved\. Pages that are open/)).toBeVisible();
    await marta.reload();
    for (const [name, value] of FIELDS) await expect(field(marta, name)).toHaveValue(value);

    await marta.goto("/desk");
    await expect(
      marta
        .locator("time")
        .filter({ hasText: /^\w+ \d{1,2}, \d{1,2}:\d\d\s[AP]M$/ })
        .first(),
    ).toBeVisible();
    await ines.goto("/desk");
    await expect(
      ines
        .locator("time")
        .filter({ hasText: /^\d{1,2} \w+, \d\d:\d\d$/ })
        .first(),
    ).toBeVisible();

    await Promise.all([marta.goto("/programme"), ines.goto("/programme")]);
    expect([await weeksBegin(marta), await weeksBegin(ines)]).toEqual([[0], [1]]);

    const [load, beside] = [await openLoad(marta), await openLoad(ines)];
    await expect(load.locator("summary")).toContainText(/\d lbf to .* lbf in the middle/);
    await expect(load.getByRole("button", { name: "0.5 in further" })).toBeVisible();
    await expect(beside.locator("summary")).toContainText(/\d N to .* N in the middle/);
    await expect(beside.getByRole("button", { name: "1 cm further" })).toBeVisible();

    const rule = "/rules/too-light-to-be-steady";
    await Promise.all([marta.goto(rule), ines.goto(rule)]);
    const limit = (page: Page) => page.getByRole("definition").filter({ hasText: /(?:N|lbf)$/ });
    // 5 N are 1.124 lbf (NIST SP 811, B.8).
    await expect(limit(marta)).toHaveText("1.12 lbf");
    await expect(limit(ines)).toHaveText("5 N");

    const { plans } = (await (await marta.request.get("/api/editions")).json()) as {
      plans: { planId: string; number: number }[];
    };
    const sheet = `/editions/${plans[0]?.planId}/${plans[0]?.number}/print`;
    await Promise.all([marta.goto(sheet), ines.goto(sheet)]);
    await expect(marta.getByText(/signed off by .*, \w+ \d{1,2}, \d{4}$/)).toBeVisible();
    await expect(ines.getByText(/signed off by .*, \d{1,2} \w+ \d{4}$/)).toBeVisible();
    expect(warnings).toEqual([]);
  } finally {
    await asTheStudio(marta);
  }
});

test("a time zone that does not exist is told under its field, without a bubble, and nothing is sent", async ({
  as,
}) => {
  const page = await as("petra");
  await page.goto("/studio");
  const zone = field(page, "Time zone of the studio");
  const told = page.getByRole("alert").filter({ hasText: "No time zone is called “Atlantis”" });
  // The page may still be loading.
  await expect(async () => {
    await zone.fill("Atlantis");
    await expect(told).toBeVisible({ timeout: 500 });
  }).toPass({ timeout: 20_000 });
  await page.evaluate(`addEventListener("invalid", (event) => {
    setTimeout(() => { window.bubble = !event.defaultPrevented; });
  }, true)`);
  await page.locator("form").filter({ has: zone }).getByRole("button", { name: "Save", exact: true }).click();
  await expect(zone).toBeFocused();
  await expect.poll(() => page.evaluate("window.bubble")).toBe(false);
  await expect(told).toBeVisible();
});

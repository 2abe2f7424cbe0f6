/** Calendar addresses in a browser: made and copied, renewed, withdrawn, by keyboard alone, on a phone, a tablet and a laptop. */
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { readByIcalJs } from "../support/read-feed.ts";
import { expect, test } from "./kit.ts";

const SIZES = [
  { width: 390, height: 844 },
  { width: 834, height: 1112 },
  { width: 1440, height: 900 },
];

test("a coach makes an address, reads it without a session, renews and withdraws it, with the keyboard alone", async ({
  as,
  request,
}) => {
  const page = await as("marta");
  await page.goto("/programme/feeds");
  await page.getByRole("button", { name: /^Make an address.* Your classes$/ }).press("Enter");
  const field = page.getByRole("textbox", { name: "Address to subscribe to" });
  await expect(field).toHaveValue(/\/api\/calendar\/[\w-]{43}\.ics$/);
  for (const viewport of SIZES) {
    await page.setViewportSize(viewport);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    await expectNoBarrierLightOrDark(page);
  }
  const first = await field.inputValue();
  const answer = await request.get(first);
  expect(answer.headers()["content-type"]).toBe("text/calendar; charset=utf-8");
  expect(answer.headers()["set-cookie"]).toBeUndefined();
  expect(readByIcalJs(await answer.text()).events.length).toBeGreaterThan(0);
  await page.reload();
  await expect(page.getByText(/last read/)).toBeVisible();
  await expect(field).toHaveCount(0);

  await page.getByRole("button", { name: /^Renew.* Your classes$/ }).press("Enter");
  const dialog = page.getByRole("dialog", { name: "Renew the address" });
  await expectNoBarrierLightOrDark(page);
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  await expect(page.getByRole("button", { name: /^Renew.* Your classes$/ })).toBeFocused();
  await page.keyboard.press("Enter");
  await dialog.getByRole("button", { name: "Renew it" }).press("Enter");
  await expect(field).not.toHaveValue(first);
  const second = await field.inputValue();
  expect([(await request.get(first)).status(), (await request.get(second)).status()]).toEqual([404, 200]);

  await page.getByRole("button", { name: /^Withdraw.* Your classes$/ }).press("Enter");
  await page.getByRole("button", { name: "Withdraw it" }).press("Enter");
  await expect(page.getByRole("button", { name: /^Make an address.* Your classes$/ })).toBeVisible();
  await expect(field).toHaveCount(0);
  expect((await request.get(second)).status()).toBe(404);
});

test("a manager comes from the account menu and has the studio's and each room's; a trainee has none", async ({
  as,
}) => {
  const page = await as("petra");
  await page.goto("/studio");
  await page.getByRole("button", { name: /your account$/ }).click();
  await page.getByRole("link", { name: "Calendar addresses" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Calendar addresses" })).toBeVisible();
  await expect(page.getByRole("heading", { level: 3, name: /^Classes in / }).first()).toBeVisible();
  await page.getByRole("button", { name: /^Make an address.* All classes of/ }).click();
  await expect(page.getByRole("textbox", { name: "Address to subscribe to" })).toBeVisible();
  await page.getByRole("button", { name: /^Withdraw.* All classes of/ }).click();
  await page.getByRole("button", { name: "Withdraw it" }).click();
  await expect(page.getByRole("button", { name: /^Make an address.* All classes of/ })).toBeVisible();
  const trainee = await as("jonas");
  expect((await trainee.goto("/programme/feeds"))?.status()).toBe(404);
});

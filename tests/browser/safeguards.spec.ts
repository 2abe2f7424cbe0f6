/**
 * How a studio's words are protected, as people see it: a new password signs out everywhere else, a page that would
 * erase for good is refused and can start again, and a lead sees how an imported plan differs from the studio.
 */
import type { Browser, Page } from "@playwright/test";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, expectSaved, onRail, openPlan, test } from "./kit.ts";
import { SHORT_CLASS } from "./short-class.ts";

const FIRST = "a first password of Lena's";
const SECOND = "a second password of Lena's";
const LENA = "lena@tholepin.example";

/** A browser with Lena signed in; she joins by invitation and no other test uses her. */
async function lena(browser: Browser, url: string): Promise<Page> {
  const context = await browser.newContext({ baseURL: url });
  const page = await context.newPage();
  const answer = await context.request.post("/api/auth/sign-in/email", {
    headers: { origin: url },
    data: { email: LENA, password: FIRST },
  });
  expect(answer.status()).toBe(200);
  return page;
}

test("a new password signs the person out everywhere else, and says so before and after", async ({
  as,
  browser,
  app,
}) => {
  const petra = await as("petra");
  const invited = await petra.request.post("/api/people/invitations", {
    headers: { origin: app.url },
    data: { email: LENA, name: "Lena Aho", roles: ["trainee"] },
  });
  const { link } = await invited.json();
  const joining = await as(null);
  await joining.goto(link);
  await joining.getByLabel("Choose a password").fill(FIRST);
  await joining.getByRole("button", { name: "Join" }).click();
  await joining.waitForURL(/\/desk/);

  const elsewhere = await lena(browser, app.url);
  await elsewhere.goto("/desk");
  await elsewhere.getByLabel("Open a plan file").setInputFiles({
    name: "five-quiet-minutes.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify({ ...SHORT_CLASS, title: "Lena's five minutes" })),
  });
  await elsewhere.waitForURL(/\/plans\//);
  await expectSaved(elsewhere);

  const here = await lena(browser, app.url);
  await here.goto("/desk");
  await here.getByRole("button", { name: /your account/ }).click();
  await here.getByRole("link", { name: "Settings" }).click();
  const dialog = here.locator("#password");
  await expect(dialog.getByText(/signs you out on every other device/)).toBeVisible();
  await expectNoBarrierLightOrDark(here);
  await dialog.getByLabel("Current password").fill("not hers at all");
  await dialog.getByLabel("New password", { exact: true }).fill(SECOND);
  await dialog.getByRole("button", { name: "Change my password" }).click();
  await expect(dialog.getByRole("alert")).toContainText("The current password is wrong.");
  await expect(dialog.getByLabel("New password", { exact: true })).toHaveValue(SECOND);
  await dialog.getByLabel("Current password").fill(FIRST);
  await dialog.getByRole("button", { name: "Change my password" }).click();
  await expect(dialog.getByRole("status")).toContainText("Your password is changed");

  const ended = elsewhere.getByRole("alert", { name: "The connection has ended" });
  await expect(ended).toContainText("Your session has ended.");
  await ended.getByLabel(/Email of/).fill(LENA);
  await ended.getByLabel("Password").fill(SECOND);
  // The sign-in library allows few tries in ten seconds, so a refusal is waited out; what was typed stays.
  await expect(async () => {
    const go = ended.getByRole("button", { name: "Sign in and continue" });
    if (await go.isVisible()) await go.click();
    await expect(ended).toHaveCount(0, { timeout: 2_000 });
  }).toPass({ timeout: 40_000 });
  await expectSaved(elsewhere);
  await here.reload();
  await expect(here.getByRole("heading", { level: 1 })).toBeVisible();
  for (const page of [elsewhere, here]) await page.context().close();
});

test("[INV-07] undoing an added item takes it out, redo brings it back, and taking out is never refused", async ({
  as,
}) => {
  const ines = await as("ines");
  await openPlan(ines, "Upper body and trunk");
  const items = ines.getByRole("listbox", { name: "The class, item by item" }).getByRole("option");
  const before = await items.count();
  await ines.getByRole("button", { name: "Add", exact: true }).click();
  await ines.getByRole("button", { name: "Add a pause" }).click();
  await expect(items).toHaveCount(before + 1);
  await ines.getByRole("button", { name: "Undo" }).click();
  await expect(items).toHaveCount(before);
  await ines.getByRole("button", { name: "Redo" }).click();
  await expect(items).toHaveCount(before + 1);
  await ines.getByRole("button", { name: "Undo" }).click();
  await expectSaved(ines);
  await ines.reload();
  await expect(items).toHaveCount(before);
  await expectSaved(ines);
});

test("before signing, a lead sees how an imported plan differs from the studio", async ({ as }) => {
  const marta = await as("marta");
  await openPlan(marta, "Upper body and trunk");
  const file = await (await marta.request.get(marta.url().replace("/plans/", "/api/plans/").concat("/file"))).json();
  const [id, move] =
    Object.entries<Record<string, unknown>>(file.moves).find(([, m]) => m.cautions !== undefined) ?? [];
  expect(id).toBeDefined();
  const { cautions: _care, ...careless } = move ?? {};
  const title = "Upper body, from a file";
  await marta.goto("/desk");
  await marta.getByLabel("Open a plan file").setInputFiles({
    name: "upper-body.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify({ ...file, title, moves: { ...file.moves, [id ?? ""]: careless } })),
  });
  await marta.waitForURL(/\/plans\//);
  await marta.getByRole("button", { name: "Offer for reading" }).click();
  await marta.getByRole("dialog").getByRole("button", { name: "Offer for reading" }).click();
  await expect(marta.getByText(/offered for reading ·/)).toBeVisible();

  const ines = await as("ines");
  await openPlan(ines, title);
  await ines.getByRole("button", { name: "Review and sign" }).click();
  const band = ines
    .getByRole("dialog", { name: "Review and sign" })
    .getByRole("region", { name: "Different from your studio" });
  await expect(band).toContainText(String(careless.name));
  await expect(band).toContainText(/asks for care: nothing in this plan/);
  await expectNoBarrierLightOrDark(ines);
  await expect(onRail(ines, /seconds from/).first()).toBeAttached();
});

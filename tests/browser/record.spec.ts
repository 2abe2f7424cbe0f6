/** The record and the editions of a plan, as people use them: read, filtered, proved; listed, compared, begun again. */

import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, expectSaved, importPlan, onRail, test, toEndOfScript } from "./kit.ts";

const UPPER = "Upper body and trunk";

test("the record is read as sentences, filtered and proved, by keyboard alone", async ({ as }) => {
  const page = await as("petra");
  await page.goto("/desk");
  await page.getByRole("link", { name: "Record" }).press("Enter");
  await expect(page.getByRole("heading", { level: 1, name: "Record" })).toBeVisible();
  const rows = page.getByRole("list", { name: /^Rows of the record/ }).getByRole("listitem");
  await expect(rows).not.toHaveCount(0);
  await expect(page.getByText(/^Record\s*\d+:[0-9a-f]{64}/)).toBeVisible();

  await page.getByRole("button", { name: "Verify now" }).press("Enter");
  await expect(page.getByRole("status")).toContainText("The record holds");
  await expectNoBarrierLightOrDark(page);

  await page.getByRole("combobox", { name: "About" }).selectOption("Editions and classes");
  await page.getByRole("combobox", { name: "Plan" }).selectOption("Whole body, steady");
  await page.getByRole("button", { name: "Show", exact: true }).press("Enter");
  await expect(page).toHaveURL(/kind=editions/);
  await expect(rows.filter({ hasText: "began the plan" })).toHaveCount(0);
  await expect(rows.last()).toContainText("signed edition 1");
  await rows.last().getByRole("link").press("Enter");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Whole body, steady, edition 1");
  await page.goBack();
  await page.getByLabel("Until").fill("2001-01-01");
  await page.getByRole("button", { name: "Show", exact: true }).press("Enter");
  await expect(page.getByText("No row passes this filter.")).toBeVisible();
});

test("nobody but managers finds the record", async ({ as }) => {
  const page = await as("ines");
  await page.goto("/desk");
  await expect(page.getByRole("link", { name: "Record" })).toHaveCount(0);
  expect((await page.goto("/record"))?.status()).toBe(404);
  expect((await page.request.get("/api/record/proof")).status()).toBe(403);
});

test("editions are listed, compared plate by plate, and one is used as a template", async ({ as, app }) => {
  const [marta, ines] = [await as("marta"), await as("ines")];
  // A plan of its own: others of this run may have left threads on the demo's.
  const id = await importPlan(marta, UPPER_BODY_AND_TRUNK);
  await marta.goto(`/plans/${id}`);
  const post = (page: typeof marta, act: string, data: object) =>
    page.request.post(`/api/plans/${id}/${act}`, { data, headers: { origin: app.url } });
  const signed = async (note: string) => {
    expect((await post(marta, "hand-in", {})).status()).toBe(200);
    const { hash } = await (await post(ines, "read", {})).json();
    expect((await post(ines, "sign", { hash, note })).ok()).toBe(true);
  };
  await signed("As it was.");
  await onRail(marta, /seconds from/)
    .nth(1)
    .click();
  await toEndOfScript(marta);
  await marta.keyboard.type(" Easy.");
  await expectSaved(marta);
  await expect(marta.getByText(/in writing ·/)).toBeVisible({ timeout: 20_000 });
  await signed("One word more.");

  await ines.goto(`/editions/${id}`);
  const editions = ines.getByRole("list", { name: /^Editions/ }).locator(":scope > li");
  await expect(editions).toHaveCount(2);
  await expect(editions.first()).toContainText("Edition 2 in use");
  await expect(editions.first()).toContainText("One word more.");
  await expectNoBarrierLightOrDark(ines);
  await ines.getByRole("button", { name: "Compare" }).press("Enter");
  await expect(ines.getByText(/^From edition 1 .* to edition 2/)).toBeVisible();
  await expect(ines.getByRole("listitem").filter({ hasText: /Easy\./ })).toHaveCount(1);
  await expectNoBarrierLightOrDark(ines);

  await ines.getByRole("link", { name: "All editions" }).press("Enter");
  await editions.last().getByRole("link", { name: "Edition 1", exact: true }).press("Enter");
  await expect(ines.getByRole("heading", { level: 1 })).toHaveText(`${UPPER}, edition 1`);
  await expect(ines.getByText(/^Record\s*\d+:[0-9a-f]{64}/)).toBeVisible();
  await expectNoBarrierLightOrDark(ines);
  await ines.getByRole("button", { name: "Use as a template" }).press("Enter");
  await ines.waitForURL(/\/plans\//);
  await expect(ines.getByRole("heading", { level: 1 })).toHaveText(`${UPPER} (from edition 1)`);
  await ines.getByRole("button", { name: "More", exact: true }).click();
  await expect(ines.getByRole("link", { name: `Made from: ${UPPER}, edition 1` })).toBeVisible();
});

test("sheets of an edition carry the head of the record", async ({ as }) => {
  const page = await as("sam");
  await page.goto("/desk");
  for (const sheet of ["Print", "Crew"]) {
    await page.goto("/desk");
    await page
      .getByRole("link", { name: new RegExp(`^${sheet} sheet of Whole body`) })
      .first()
      .click();
    await expect(page.getByRole("article")).toContainText(/Record \d+:[0-9a-f]{64}/);
  }
});

/** A manager sets studio standards: a rule's limit, a measured spring, own timings. Open plans follow; others may not. */
import type { Page } from "@playwright/test";
import { expect, onRail, openClass, openPlan, saveState, test } from "./kit.ts";

const RULE = "group-without-rest";
const LONGEST = /^Longest work without a rest/;

/** Plates that tell a finding of one rule. */
const slips = (page: Page) => onRail(page, /One muscle group works for too long without a rest/);

test("a limit changed on the rule's page changes the findings of an open plan, and nothing typed is lost", async ({
  as,
}) => {
  const [ines, petra] = [await as("ines"), await as("petra")];
  await openPlan(ines, "Upper body and trunk");
  await expect(slips(ines)).toHaveCount(0);
  // A title being typed, with the field still focused, must still be there afterwards.
  await openClass(ines);
  const title = ines.getByRole("textbox", { name: "Title" });
  await title.press("End");
  await ines.keyboard.type(", slow");

  await petra.goto("/rules");
  await petra.getByRole("link", { name: "One muscle group works for too long without a rest" }).press("Enter");
  await expect(petra.getByRole("heading", { level: 1 })).toHaveText(
    "One muscle group works for too long without a rest",
  );
  const limit = petra.getByLabel(LONGEST);
  await limit.fill("5");
  await expect(petra.getByText("Give a number from 30 to 3600 s.")).toBeVisible();
  await expect(petra.getByRole("button", { name: "Save for your studio" })).toBeDisabled();
  await limit.fill("60");
  await expect(petra.getByText(/^In the \d+ team plans: .+ now, \d+ findings/)).toBeVisible();
  await limit.press("Enter");
  await expect(petra.getByText("Saved. Open plans were checked again.")).toBeVisible();

  await expect(slips(ines).first()).toBeVisible();
  await expect(ines.getByText("The studio’s library, machines or standards have changed")).toBeAttached();
  await expect(title).toHaveValue("Upper body and trunk, slow");
  await title.press("Control+z");
  await expect(saveState(ines)).toHaveAttribute("data-state", "saved");

  // From the finding to its rule, next to the plan, where a lead can read the studio's limit but not change it.
  await slips(ines).first().click();
  const slip = ines.getByRole("article", { name: "One muscle group works for too long without a rest" });
  const [page] = await Promise.all([
    ines.waitForEvent("popup"),
    slip
      .first()
      .getByRole("link", { name: /^About this rule/ })
      .click(),
  ]);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(
    "One muscle group works for too long without a rest",
  );
  await expect(page.getByText("Last changed by Petra Vale")).toBeVisible();
  await expect(page.getByText("60 s", { exact: true })).toBeVisible();
  await expect(page.getByRole("button", { name: "Save for your studio" })).toHaveCount(0);
  await page.close();

  await petra.getByRole("button", { name: "Back to the usual level and limits" }).click();
  await expect(petra.getByText("Back to the usual. Open plans were checked again.")).toBeVisible();
  await expect(
    petra.getByRole("button", { name: "Back to the usual level and limits" }),
    "the keyboard keeps its place",
  ).toBeFocused();
  await expect(slips(ines)).toHaveCount(0);
});

test("readings are typed by keyboard, a doubtful one is left out, and the fitted line is used", async ({ as }) => {
  const petra = await as("petra");
  await petra.goto("/studio");
  const loft = petra.getByRole("article").filter({ has: petra.getByRole("heading", { name: "Loft" }) });
  await loft.getByRole("link", { name: "Measure of firm" }).press("Enter");
  await expect(petra.getByRole("heading", { level: 1 })).toHaveText("Scale readings: firm, Loft");
  await expect(petra.getByText("One spring at a time")).toBeVisible();
  await petra.getByLabel("Force in", { exact: true }).selectOption({ label: "newtons" });
  await petra.getByLabel("Travel in cm of row 1").focus();
  // 20 N + 0.35 N/mm, except the third reading.
  for (const [travel, force] of [
    ["10", "55"],
    ["20", "90"],
    ["30", "165"],
    ["40", "160"],
    ["50", "195"],
  ] as const) {
    await petra.keyboard.type(travel);
    await petra.keyboard.press("Enter");
    await petra.keyboard.type(force);
    await petra.keyboard.press("Enter");
  }
  await expect(petra.getByText(/^Reading 3 \(30 cm, 165 N\) is 40 N off the line of the others/)).toBeVisible();
  await petra.getByRole("button", { name: "Leave reading 3 out" }).press("Enter");
  await expect(petra.getByText(/^The readings lie on a line: 0.350 N per mm, preload 20 N/)).toBeVisible();
  await petra.getByRole("button", { name: "Use this: 0.350 N per mm, preload 20 N" }).press("Enter");
  await expect(petra.getByText("firm is now 0.350 N per mm, preload 20 N.")).toBeVisible();

  await petra.goto("/studio");
  await expect(loft.getByRole("row", { name: /firm/ })).toContainText("0.350");
  await loft.getByRole("link", { name: "5 readings of firm" }).click();
  await expect(petra.getByLabel("Force in N of row 3")).toHaveValue("165");
  await expect(petra.getByText("left out")).toBeVisible();
});

test("the studio's own seconds change every estimate, at once on the page and in an open plan", async ({ as }) => {
  const [ines, petra] = [await as("ines"), await as("petra")];
  await openPlan(ines, "Upper body and trunk");
  await petra.goto("/studio");
  await petra.getByRole("link", { name: "Set-up timings of Harbour room" }).click();
  await petra.getByLabel("A quarter turn").fill("40");
  await expect(petra.getByRole("row", { name: /turned round to face the back/ })).toContainText("82 s");
  await petra.getByRole("button", { name: "Save", exact: true }).press("Enter");
  await expect(petra.getByText("Saved. Open plans were timed again.")).toBeVisible();
  await expect(onRail(ines, /A change is planned shorter/).first()).toBeVisible();
  await petra.getByRole("button", { name: "Clear all" }).click();
  await petra.getByRole("button", { name: "Save", exact: true }).click();
  await expect(onRail(ines, /A change is planned shorter/)).toHaveCount(0);
});

test("a coach can read the rules but not change them; crew cannot see them", async ({ as, app }) => {
  const marta = await as("marta");
  await marta.goto(`/rules/${RULE}`);
  await expect(marta.getByRole("heading", { name: "What it finds" })).toBeVisible();
  await expect(marta.getByRole("button", { name: "Save for your studio" })).toHaveCount(0);
  const headers = { origin: app.url };
  const rooms = await (await marta.request.get("/api/rooms")).json();
  for (const answer of [
    await marta.request.put(`/api/standards/${RULE}`, { headers, data: { standard: { level: "off" }, seen: null } }),
    await marta.request.put(`/api/standards/${RULE}`, { headers, data: { standard: null, seen: null } }),
    await marta.request.post(`/api/standards/${RULE}/trial`, { headers, data: { level: "off" } }),
    await marta.request.put(`/api/rooms/${rooms[0].id}/timings`, {
      headers,
      data: { actionSeconds: {}, everyRoom: true },
    }),
    await marta.request.put(`/api/rooms/${rooms[0].id}/springs/light/readings`, {
      headers,
      data: {
        sheet: { travelUnit: "cm", forceUnit: "N", readings: [] },
        use: true,
        seen: { readingsAt: null, stiffnessNPerMm: 0, preloadN: 0 },
      },
    }),
  ]) {
    expect(answer.status()).toBe(403);
  }
  for (const path of [
    "/studio",
    `/studio/rooms/${rooms[0].id}/timings`,
    `/studio/rooms/${rooms[0].id}/springs/light`,
  ]) {
    expect((await marta.goto(path))?.status()).toBe(404);
  }
  const sam = await as("sam");
  expect((await sam.goto("/rules"))?.status()).toBe(404);
});

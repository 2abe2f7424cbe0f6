/** The library as its people use it: found and edited by keyboard, seen in a colleague's open plan, never in an edition. */
import type { Locator, Page } from "@playwright/test";
import type { Move } from "#lib/plan/schema.ts";
import { expect, onRail, openPlan, test } from "./kit.ts";

const field = (page: Page, name: string) => page.getByRole("textbox", { name, exact: true });

/** Gets there by Tab alone, as somebody without a mouse does. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let i = 0; i < 160; i++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error("the keyboard does not get there");
}

async function typeOver(page: Page, words: string): Promise<void> {
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type(words);
}

/** A move as the server stores it, to check it and to restore it. */
async function readMove(page: Page, id: string): Promise<{ move: Move; updatedAt: number }> {
  return (await page.request.get(`/api/library/${id}`)).json();
}

test("adding, changing and the library find the same moves in the same order", async ({ as }) => {
  const page = await as("ines");
  const queries = ["OH press", "press", "knee pul", "lat p/d", "plank", "plnak", "light"];
  const inPicker = async () => {
    const found: string[][] = [];
    for (const query of queries) {
      await page.getByRole("combobox", { name: "Search the library" }).fill(query);
      await expect(page.getByRole("listbox", { name: "Moves" }).getByRole("option", { selected: true })).toHaveCount(1);
      found.push(await page.getByRole("listbox", { name: "Moves" }).locator("b").allTextContents());
    }
    return found;
  };
  await openPlan(page, "Upper body and trunk");
  await page.getByRole("button", { name: "Add", exact: true }).click();
  const adding = await inPicker();
  expect(adding.map((names) => names[0]).slice(0, 4)).toEqual([
    "Kneeling overhead press",
    expect.stringMatching(/press/i),
    expect.stringMatching(/^Kneeling .*pull/),
    "Kneeling lat pull-down",
  ]);
  // The first Escape clears the field.
  await page.getByRole("combobox", { name: "Search the library" }).fill("");
  await page.keyboard.press("Escape");
  await onRail(page, /^Kneeling row/)
    .first()
    .click();
  await page.locator("summary", { hasText: "Load, set-up and place" }).click();
  await page.getByRole("button", { name: "Choose another move" }).click();
  expect(await inPicker()).toEqual(adding);

  await page.goto("/library");
  for (const [at, query] of queries.entries()) {
    await page.getByRole("searchbox", { name: "Search" }).fill(query);
    const names = page.getByRole("list", { name: "Moves" }).locator("[class*=_name]");
    await expect(names).toHaveText(adding[at] ?? []);
  }
});

test("a lead edits a move by keyboard; a coach's open plan follows, the signed edition does not", async ({
  as,
  app,
}) => {
  test.slow(); // a hundred steps of the keyboard, one at a time
  const marta = await as("marta");
  await openPlan(marta, "Upper body and trunk");
  await expect(onRail(marta, /^Kneeling row/)).toBeVisible();
  const ines = await as("ines");
  const { move: before } = await readMove(ines, "row-kneeling");

  await ines.goto("/library");
  await tabTo(ines, ines.getByRole("searchbox", { name: "Search" }));
  await ines.keyboard.type("row kneel");
  await expect(ines.getByRole("status").filter({ hasText: /of \d+ moves/ })).toBeVisible();
  await ines.keyboard.press("ArrowDown");
  await expect(ines.getByRole("link", { name: /Kneeling row/ })).toBeFocused();
  await ines.keyboard.press("Enter");
  await expect(ines.getByRole("heading", { level: 1, name: "Kneeling row" })).toBeVisible();

  // The signed edition before the change.
  const sheetLink = ines.getByRole("link", { name: "Whole body, steady" }).last();
  const sheetPath = (await sheetLink.getAttribute("href")) ?? "";
  const [planId] = /[^/]+(?=\/\d+\/print$)/.exec(sheetPath) ?? [];
  const signed = async () => {
    const sheet = await as("sam");
    await sheet.goto(sheetPath);
    const text = await sheet.locator("main").textContent();
    const plan = await (await sheet.request.get(`/api/editions/${planId}/1/plan`)).text();
    const card = await (await sheet.request.get(`/api/editions/${planId}/1/card`)).text();
    // The head of the record is that of the moment when the sheet is drawn.
    return { text: text?.replace(/\d+:[0-9a-f]{64}/, ""), plan, card };
  };
  const signedBefore = await signed();
  expect(signedBefore.text).toContain("Kneeling row");

  await tabTo(ines, ines.getByRole("link", { name: "Edit", exact: true }));
  await ines.keyboard.press("Enter");
  await expect(field(ines, "Name")).toBeEnabled();
  await tabTo(ines, field(ines, "Name"));
  await typeOver(ines, "Row on the knees");
  await tabTo(ines, field(ines, "out"));
  await typeOver(ines, "0");
  await expect(field(ines, "out")).toHaveAccessibleDescription("Give a number from 0.1 to 120 seconds.");
  await expect(field(ines, "out")).toHaveAttribute("aria-invalid", "true");
  await ines.keyboard.press("Enter");
  await expect(field(ines, "out")).toBeFocused();
  await expect(ines).toHaveURL(/\/edit$/);
  expect((await readMove(ines, "row-kneeling")).move).toEqual(before);

  await typeOver(ines, "4");
  await expect(ines.getByText(/^4 s out, .* a repetition; /)).toBeVisible();
  await ines.keyboard.press("Enter");
  await expect(ines.getByRole("heading", { level: 1, name: "Row on the knees" })).toBeVisible();
  await expect(ines.getByText("signed editions stay as they are")).toBeVisible();
  await expect(ines.getByRole("link", { name: "Upper body and trunk" }).first()).toBeVisible();
  await expect(ines.getByText("Ines Duarte changed it")).toBeVisible();

  await expect(onRail(marta, /^Row on the knees/)).toBeVisible();
  expect(await signed()).toEqual(signedBefore);

  const { updatedAt } = await readMove(ines, "row-kneeling");
  const back = { headers: { origin: app.url }, data: { move: before, base: updatedAt } };
  expect((await ines.request.put("/api/library/row-kneeling", back)).status()).toBe(200);
  await expect(onRail(marta, /^Kneeling row/)).toBeVisible();
});

test("two people edit one move at once: the second sees what the first changed and puts both together", async ({
  as,
}) => {
  const [ines, petra] = [await as("ines"), await as("petra")];
  await ines.goto("/library/new?from=push-up-knees");
  await expect(field(ines, "Name")).toHaveValue("Push-up, knees on the carriage, copy");
  await field(ines, "Name").fill("Push-up for two");
  await ines.getByRole("button", { name: "Add to the library" }).click();
  await ines.waitForURL(/\/library\/push-up-for-two\?/);
  for (const page of [ines, petra]) await page.goto("/library/push-up-for-two/edit");

  await petra.getByRole("textbox", { name: "Effort" }).fill("4.5");
  await field(petra, "Name").fill("Push-up for three");
  await petra.getByRole("button", { name: "Save", exact: true }).click();
  await petra.waitForURL(/said=saved/);

  await field(ines, "Name").fill("Push-up for four");
  await field(ines, "back").fill("3.5");
  await ines.getByRole("button", { name: "Save", exact: true }).click();
  await expect(ines.getByRole("heading", { name: /^Petra Vale changed this move/ })).toBeFocused();
  await expect(field(ines, "Name")).toHaveValue("Push-up for four");
  await ines.getByRole("radio", { name: /^Petra Vale: Push-up for three/ }).check();
  await ines.getByRole("button", { name: "Combine both and save" }).click();
  await ines.waitForURL(/said=saved/);
  const { move } = await readMove(ines, "push-up-for-two");
  expect(move).toMatchObject({ name: "Push-up for three", met: 4.5, tempo: { backSeconds: 3.5 } });
});

test("nothing typed is lost: without a network, after a reload, after a link followed by mistake", async ({ as }) => {
  const page = await as("ines");
  await page.goto("/library/plank-hold/edit");
  await field(page, "Name").fill("Plank, still");
  await page.context().setOffline(true);
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await expect(page.getByText("The server did not answer")).toBeVisible();
  await page.context().setOffline(false);
  await page.getByRole("link", { name: "Desk" }).click();
  await page.getByRole("button", { name: "Stay here" }).click();
  await expect(field(page, "Name")).toHaveValue("Plank, still");
  page.once("dialog", (dialog) => dialog.accept());
  await page.reload();
  await expect(page.getByText("What you typed earlier is back")).toBeVisible();
  await expect(field(page, "Name")).toHaveValue("Plank, still");
  await page.getByRole("link", { name: "Desk" }).click();
  await page.getByRole("button", { name: "Leave and discard my changes" }).click();
  await page.waitForURL(/\/desk/);
});

test("a trainee and a coach read the library and are refused every change by the server", async ({ as, app }) => {
  for (const who of ["jonas", "marta"] as const) {
    const page = await as(who);
    await page.goto("/library/row-kneeling");
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    await expect(page.getByRole("link", { name: "Edit", exact: true })).toHaveCount(0);
    expect((await page.goto("/library/row-kneeling/edit"))?.status()).toBe(404);
    const { move, updatedAt } = await readMove(page, "row-kneeling");
    const headers = { origin: app.url };
    const put = await page.request.put("/api/library/row-kneeling", {
      headers,
      data: { move: { ...move, name: "Mine" }, base: updatedAt },
    });
    expect(put.status()).toBe(403);
  }
});

/** Looking for something, by key alone, from the desk, a plan and a month; without a network; on a phone; and fast. */
import type { Page } from "@playwright/test";
import type { AtHand } from "#lib/find/found.ts";
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { longClass } from "../support/long-class.ts";
import { expect, importPlan, more, openPlan, script, test } from "./kit.ts";

const dialog = (page: Page) => page.getByRole("dialog", { name: "Find" });
const field = (page: Page) => dialog(page).getByRole("searchbox", { name: "Words to find" });
const group = (page: Page, name: string) => dialog(page).getByRole("region", { name, exact: true });

/** The page may still be loading. */
async function findByKey(page: Page): Promise<void> {
  await expect(async () => {
    if ((await dialog(page).count()) === 0) await page.keyboard.press("/");
    await expect(field(page)).toBeFocused({ timeout: 500 });
  }).toPass({ timeout: 20_000 });
}

test("from the desk by keyboard alone: a plan by a word of its script opens at that line", async ({ as }) => {
  const page = await as("marta");
  await page.goto("/desk");
  await findByKey(page);
  await page.keyboard.type("breathe rest");
  const line = group(page, "Plans").getByRole("link", { name: /^said A hold: breathe, and rest/ });
  await expect(line.first()).toBeVisible();
  await page.keyboard.press("ArrowDown");
  await expect(group(page, "Plans").getByRole("link").first()).toBeFocused();
  await page.keyboard.press("ArrowUp");
  await expect(field(page)).toBeFocused();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await expect(line.first()).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/\/plans\/[^#]+#line-/);
  await expect(script(page)).toBeFocused();
  await expect(script(page)).toContainText("breathe, and rest");
});

test("in a plan: another place of the same plan opens without leaving it, and / is a letter where one types", async ({
  as,
}) => {
  const page = await as("marta");
  await openPlan(page, "Upper body and trunk");
  await page.getByRole("option").first().focus();
  await findByKey(page);
  await page.keyboard.type("breathe rest");
  const line = group(page, "Plans").getByRole("link", { name: /^said A hold: breathe, and rest/ });
  await expect(line.first()).toBeVisible();
  const here = new URL(page.url()).pathname;
  await dialog(page).locator(`a[href^="${here}#line-"]`).first().click();
  await expect(dialog(page)).toHaveCount(0);
  await expect(script(page)).toBeFocused();
  const before = (await script(page).textContent()) ?? "";
  await page.keyboard.press("/");
  await expect(script(page)).not.toHaveText(before);
  await expect(dialog(page)).toHaveCount(0);
  await page.keyboard.press("ControlOrMeta+z");
  await more(page, "Find");
  await expect(field(page)).toBeFocused();
  await page.keyboard.press("Escape");
  await expect(dialog(page)).toHaveCount(0);
});

test("from the month: Enter opens the first result, even before it is there", async ({ as }) => {
  const page = await as("ines");
  await page.goto(`/programme/${new Date().toISOString().slice(0, 7)}`);
  await expect(page.locator("[data-save]")).toHaveAttribute("data-save", "saved");
  await findByKey(page);
  await page.keyboard.type("whole body, steady");
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/\/plans\/[^/]+$/);
  await expect(page.getByRole("listbox", { name: "The class, item by item" })).toBeVisible();
});

test("moves, rules, people, classes, help and words, each in its group, no barrier by day or night", async ({ as }) => {
  const page = await as("ines");
  await page.goto("/library");
  for (const [text, name, first] of [
    ["kneelng row", "Moves", /Kneeling/],
    ["safety line", "Rules", /safety line/i],
    ["jonas", "People", /Jonas Okafor/],
    [new Date().getFullYear().toString(), "Months and classes", /\d{4}/],
    ["starts late", "Help", /When a class starts late/],
    ["cue track", "Words", /cue track/],
  ] as const) {
    await findByKey(page);
    await page.keyboard.type(text);
    await expect(group(page, name).getByRole("link").first()).toContainText(first);
    if (name === "Rules") await expectNoBarrierLightOrDark(page);
    await page.keyboard.press("Escape");
  }
  await findByKey(page);
  await page.keyboard.type("zzyzx");
  await expect(dialog(page).getByRole("status")).toContainText("Nothing has “zzyzx”");
});

test("a slow answer never stands in the place of a later one, and a refused one is told", async ({ as }) => {
  const page = await as("ines");
  await page.goto("/desk");
  let refuse = false;
  await page.route("**/api/find?q=*", async (route) => {
    if (refuse)
      return route.fulfill({ status: 503, json: { error: { code: "x", message: "Not now, says the test." } } });
    if (route.request().url().endsWith("q=whole")) await new Promise((done) => setTimeout(done, 1500));
    return route.continue().catch(() => undefined);
  });
  await findByKey(page);
  await page.keyboard.type("whole");
  await page.waitForTimeout(300);
  await field(page).fill("upper");
  await expect(group(page, "Plans")).toContainText("Upper body and trunk");
  await page.waitForTimeout(1800);
  await expect(group(page, "Plans")).toContainText("Upper body and trunk");
  refuse = true;
  await field(page).fill("upper body");
  await expect(dialog(page).getByRole("status")).toHaveText("Not now, says the test.");
  await page.unrouteAll({ behavior: "ignoreErrors" });
});

test("without a network it says so and goes on with what the page has", async ({ as }) => {
  const page = await as("ines");
  await page.goto("/desk");
  await findByKey(page);
  await page.keyboard.type("late");
  await expect(group(page, "Rules")).toBeVisible();
  await page.context().setOffline(true);
  await field(page).fill("sign off");
  await expect(dialog(page).getByRole("status")).toContainText("The server does not answer");
  await expect(group(page, "Help")).toContainText("Sign off");
  await page.context().setOffline(false);
  await field(page).fill("sign of");
  await expect(dialog(page).getByRole("status")).toContainText(/results?/);
});

test("on a phone: by its button, nothing wider than the screen, and what crew may not read is not found", async ({
  as,
}) => {
  const page = await as("sam", { viewport: { width: 390, height: 844 }, hasTouch: true });
  const ines = await as("ines");
  await importPlan(ines, { ...longClass(2, 2), title: "Unsigned gannets" });
  await page.goto("/desk");
  await page.getByRole("button", { name: "Find" }).click();
  await field(page).fill("gannets");
  await expect(dialog(page).getByRole("status")).toContainText("Nothing has");
  await field(page).fill("whole body");
  await expect(group(page, "Signed plans")).toContainText("Whole body, steady");
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  const small = await dialog(page)
    .getByRole("link")
    .evaluateAll((links) => links.filter((link) => link.getBoundingClientRect().height < 44).length);
  expect(small).toBe(0);
});

test("every part of the settings and of the studio is found by its heading; Enter on the very name opens the page", async ({
  as,
}) => {
  const page = await as("petra");
  const { pages } = (await (await page.request.get("/api/find/at-hand")).json()) as AtHand;
  for (const path of ["/settings", "/studio"]) {
    await page.goto(path);
    const parts = await page
      .locator("main section[id]:has(h2)")
      .evaluateAll((all) => all.map((part) => [part.id, part.querySelector("h2")?.textContent ?? ""]));
    const known = pages.filter(({ href }) => href.startsWith(`${path}#`));
    expect(known.map(({ href, title }) => [href.slice(path.length + 1), title]).sort()).toEqual(parts.sort());
  }
  for (const [text, path] of [
    ["health", "/studio/health"],
    ["Export", "/studio#export"],
    ["people", "/people"],
  ] as const) {
    await findByKey(page);
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
    await page.waitForURL(`**${path}`);
  }
});

/** What is marked for a moment, and the words of what has the focus. */
const marked = (page: Page) =>
  page.evaluate(() => {
    const shown = document.getAnimations().filter(({ id }) => id === "found");
    const targets = shown.map(({ effect }) => (effect as KeyframeEffect).target);
    const { activeElement } = document;
    return {
      words: targets.map((target) => target?.textContent ?? ""),
      inView: targets.every((target) => {
        const { top = -1, bottom = 0 } = target?.getBoundingClientRect() ?? {};
        return bottom > 0 && top >= 0 && top < innerHeight;
      }),
      focus: activeElement === document.body ? null : (activeElement?.textContent ?? ""),
    };
  });

test("a found line of a script, a plate and a note each take the focus and are marked for a moment", async ({ as }) => {
  const page = await as("ines");
  const plan = { ...longClass(14, 2), title: "Found places", notes: "First things\nGannets over the quay" };
  const at = plan.items.length - 1;
  const items = plan.items.map((item, i) =>
    i === at && item.kind === "move"
      ? { ...item, script: [{ kind: "form" as const, text: "Herons stand still" }] }
      : item,
  );
  const id = await importPlan(page, {
    ...plan,
    items: [...items, { id: "far-off", kind: "heading", title: "Curlew block" }],
  });
  for (const [text, words] of [
    ["herons still", "Herons stand still"],
    ["curlew block", "Curlew block"],
  ] as const) {
    await page.goto("/desk");
    await findByKey(page);
    await page.keyboard.type(text);
    await expect(group(page, "Plans").getByRole("link").nth(1)).toContainText(words);
    await page.keyboard.press("Enter");
    await page.waitForURL(`**/plans/${id}#line-*`);
    await expect.poll(async () => (await marked(page)).words.join()).toContain(words);
    const shown = await marked(page);
    expect([shown.inView, shown.focus]).toEqual([true, expect.stringContaining(words)]);
    await expect.poll(async () => (await marked(page)).words).toEqual([]);
  }
  await findByKey(page);
  await page.keyboard.type("gannets quay");
  await page.keyboard.press("Enter");
  const notes = page.getByRole("textbox", { name: "Notes for the team" });
  await expect(notes).toBeFocused();
  expect(
    await notes.evaluate((field: HTMLTextAreaElement) => field.value.slice(field.selectionStart, field.selectionEnd)),
  ).toBe("Gannets over the quay");
});

test("a found holiday takes the focus among the month's holidays and is marked for a moment", async ({ as }) => {
  const page = await as("ines");
  const panel = page.getByRole("complementary", { name: "Holidays" });
  // From the desk, then from the month with its holidays open.
  await page.goto("/desk");
  for (const name of ["Harbour fair", "Boats come in"]) {
    await findByKey(page);
    await page.keyboard.type(name);
    await expect(group(page, "Months and classes").getByRole("link").first()).toContainText(name);
    await page.keyboard.press("Enter");
    await expect(panel.getByRole("listitem").filter({ hasText: name })).toBeFocused();
    await expect.poll(async () => (await marked(page)).words.join()).toContain(name);
  }
});

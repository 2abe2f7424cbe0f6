/** `?` opens the list of keys on every page, and is a letter where somebody types. */
import type { Locator, Page } from "@playwright/test";
import { expect, openPlan, test, type Who } from "./kit.ts";

/** Pages with keys of their own, and some without; every page is walked in `help.spec.ts`. */
const PAGES: readonly { readonly who: Who | null; readonly path: string; readonly says?: string }[] = [
  { who: null, path: "/sign-in" },
  { who: null, path: "/floor" },
  { who: "marta", path: "/desk" },
  { who: "marta", path: "/programme", says: "In the month" },
  { who: "marta", path: "/library", says: "In the search" },
];

const help = (page: Page) => page.getByRole("dialog", { name: "Help" });

/** As a reader who has just arrived, with no field focused. The page may still be loading. */
async function opensHelp(page: Page, says = "On every page"): Promise<void> {
  await expect(async () => {
    await page.evaluate(() => document.activeElement instanceof HTMLElement && document.activeElement.blur());
    await page.keyboard.press("?");
    await expect(help(page)).toBeVisible({ timeout: 500 });
  }).toPass({ timeout: 20_000 });
  await expect(help(page).getByRole("heading", { name: says })).toBeVisible();
  await expect(help(page)).toContainText("close what lies over the page");
  await page.keyboard.press("Escape");
  await expect(help(page)).toHaveCount(0);
}

test("every page lists its own keys and those that are the same everywhere", async ({ as }) => {
  const people = new Map<Who | null, Page>();
  for (const { who, path, says } of PAGES) {
    const page = people.get(who) ?? (await as(who));
    people.set(who, page);
    await page.goto(path);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    await opensHelp(page, says);
  }
});

test("the plan page: keys work from the rail, with undo, and never while somebody types", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Upper body and trunk");
  await opensHelp(page, "On the rail");
  await page.getByRole("option").first().focus();
  await page.keyboard.press("?");
  await expect(help(page)).toContainText("undo your own last act");
  await page.keyboard.press("Escape");
  await page.goto("/library");
  const search = page.getByRole("searchbox").first();
  await search.fill("");
  await search.pressSequentially("row?");
  await expect(search).toHaveValue("row?");
  await expect(help(page)).toHaveCount(0);
});

test("an opened plan has the keyboard on its first plate, with a ring for keys only, and arrows walk at once", async ({
  as,
}) => {
  const page = await as("marta");
  const items = page.getByRole("option");
  const ring = () => items.first().evaluate((plate) => getComputedStyle(plate).outlineStyle);
  // By its address: nobody has touched the page, so nobody knows of keys.
  await openPlan(page, "Upper body and trunk");
  await page.reload();
  await expect(items.first()).toBeFocused();
  expect([await ring(), await page.evaluate(() => scrollY)]).toEqual(["none", 0]);
  await page.keyboard.press("ArrowDown");
  await expect(page.locator('[role="option"][aria-selected="true"]')).toBeFocused();
  // By a link, with the mouse and with the keyboard.
  for (const [press, drawn] of [
    [(link: Locator) => link.click(), "none"],
    [(link: Locator) => link.press("Enter"), "solid"],
  ] as const) {
    await page.goto("/desk");
    await press(page.getByRole("link", { name: "Upper body and trunk", exact: true }).first());
    await expect(items.first()).toBeFocused();
    expect(await ring()).toBe(drawn);
  }
});

test("buttons name the keys that count in the open view", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Upper body and trunk");
  const view = (name: string) => page.getByRole("button", { name, exact: true });
  await expect(view("Whole class")).toHaveAttribute("aria-keyshortcuts", "W");
  await expect(view("Read-through")).toHaveAttribute("aria-keyshortcuts", "R");
  await expect(view("Undo")).toHaveAttribute("aria-keyshortcuts", "Control+Z Meta+Z");
  await view("Whole class").click();
  await expect(view("Rail")).toHaveAttribute("aria-keyshortcuts", "W");
  await expect(view("Wider")).toHaveAttribute("aria-keyshortcuts", "Plus");
});

test("the rail by its keys: choose, make longer, move, duplicate, take out, undo", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Upper body and trunk");
  const items = page.getByRole("listbox", { name: "The class, item by item" }).getByRole("option");
  const chosen = items.and(page.locator('[aria-selected="true"]'));
  const count = await items.count();
  await items.first().focus();
  await page.keyboard.press("End");
  await expect(items.last()).toBeFocused();
  await page.keyboard.press("Home");
  await page.keyboard.press("ArrowDown");
  const name = (await chosen.textContent()) ?? "";
  await page.keyboard.press("=");
  await expect(chosen).not.toHaveText(name);
  await page.keyboard.press("Control+z");
  await expect(chosen).toHaveText(name);
  await page.keyboard.press("Alt+ArrowDown");
  await expect(items.nth(2)).toBeFocused();
  await page.keyboard.press("Alt+ArrowUp");
  await page.keyboard.press("Control+d");
  await expect(items).toHaveCount(count + 1);
  await page.keyboard.press("Delete");
  await expect(items).toHaveCount(count);
});

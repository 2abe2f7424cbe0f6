/** Every screen of the workspace, light and dark, against the rules that a tool can check (WCAG 2.2 A and AA). */
import { expectNoBarrierLightOrDark } from "../support/barriers.ts";
import { expect, more, onRail, openPlan, test, type Who } from "./kit.ts";

// Each opens a page and changes nothing: they may be shared out over the workers.
test.describe.configure({ mode: "parallel" });

/** A person's pages are opened in one browser, which has the program's files from the first one on. */
const PAGES: readonly { readonly who: Who | null; readonly paths: readonly string[] }[] = [
  { who: null, paths: ["/sign-in", "/floor"] },
  {
    who: "ines",
    paths: [
      "/desk",
      "/library",
      "/library/row-kneeling",
      "/library/row-kneeling/edit",
      "/library/bring",
      "/rules",
      "/rubric",
      "/people",
      "/remarks",
    ],
  },
  { who: "marta", paths: ["/programme", "/programme/feeds", "/notices"] },
  {
    who: "petra",
    paths: [
      "/people",
      "/record",
      "/studio",
      "/studio/health",
      "/programme/feeds",
      "/rules/caution-without-safety-line",
    ],
  },
  { who: "sam", paths: ["/desk", "/notices", "/settings"] },
];
for (const { who, paths } of PAGES) {
  test(`${paths.join(", ")} for ${who ?? "nobody"}, light and dark`, async ({ as }) => {
    const page = await as(who);
    for (const path of paths)
      await test.step(path, async () => {
        await page.goto(path);
        await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
        await expectNoBarrierLightOrDark(page);
      });
  });
}

test("the marks of a plan and a person over time, light and dark", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Arms and chest, first try");
  await page.goto(`${page.url().replace(/[?#].*/, "")}/marks`);
  await expect(page.getByRole("group", { name: "Clear set-up" })).toBeVisible();
  await expectNoBarrierLightOrDark(page);
  await page.getByRole("link", { name: "Jonas Okafor" }).first().click();
  await expect(page.getByRole("heading", { level: 1, name: "Jonas Okafor" })).toBeVisible();
  await expectNoBarrierLightOrDark(page);
});

test("the classes taught from a signed plan, light and dark", async ({ as }) => {
  const page = await as("sam");
  await page.goto("/desk");
  await page.getByRole("link", { name: /^Classes taught/ }).click();
  await expect(page.getByRole("columnheader", { name: "Work, actual" }).first()).toBeVisible();
  await expectNoBarrierLightOrDark(page);
});

test("the plan page with an item open, light and dark", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Upper body and trunk");
  await onRail(page, /seconds from/)
    .first()
    .click();
  await expect(page.getByRole("textbox", { name: /^Script of/ })).toBeVisible();
  await expectNoBarrierLightOrDark(page);
});

test("the whole class, alone and with an item open, light and dark", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Arms and chest, first try");
  await page.getByRole("button", { name: "Whole class" }).click();
  const grid = page.getByRole("grid", { name: /^The whole class/ });
  await expect(grid).toBeVisible();
  await expect(page.getByRole("region", { name: "Balance" })).toContainText("uneven");
  await expectNoBarrierLightOrDark(page);
  await grid.getByRole("columnheader", { name: /^8, / }).click();
  await expect(page.getByRole("complementary")).toHaveCount(1);
  await expectNoBarrierLightOrDark(page);
});

test("the rounds of reading, light and dark; Escape leads back to the rail", async ({ as }) => {
  const page = await as("ines");
  await openPlan(page, "Arms and chest, first try");
  await more(page, "Rounds of reading");
  await expect(page.getByRole("region", { name: /^Round 1/ })).toBeVisible();
  await expect(page.getByRole("heading", { name: "Rounds of reading" })).toBeFocused();
  await page.getByText("Findings and threads then").first().press("Enter");
  await expect(page.getByText(/^must fix: /i)).toBeVisible();
  await expectNoBarrierLightOrDark(page);
  await page.keyboard.press("Escape");
  await expect(page.getByRole("listbox", { name: "The class, item by item" })).toBeVisible();
});

test("a class is written by keyboard alone", async ({ as }) => {
  const page = await as("jonas");
  await page.goto("/desk");
  await page.getByRole("button", { name: "New plan" }).press("Enter");
  await page.keyboard.type("By keyboard");
  await page.keyboard.press("Enter");
  await page.waitForURL(/\/plans\//);
  const rail = page.getByRole("listbox", { name: "The class, item by item" });
  await expect(rail).toBeVisible();
  await page.getByRole("button", { name: "Add", exact: true }).press("Enter");
  await expect(page.getByRole("combobox", { name: "Search the library" })).toBeFocused();
  await page.keyboard.type("forearm plank");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  const added = onRail(page, /plank/i).last();
  await expect(added).toBeFocused();
  const label = (await added.textContent()) ?? "";
  const seconds = Number(/(\d+) seconds/.exec(label)?.[1]);
  await page.keyboard.press("+");
  await expect(added).toHaveAccessibleName(new RegExp(`${seconds + 5} seconds`));
  await page.keyboard.press("Control+z");
  await expect(added).toHaveAccessibleName(new RegExp(`${seconds} seconds`));
  await page.keyboard.press("Delete");
  await expect(onRail(page, /plank/i)).toHaveCount(0);
  await page.keyboard.press("Control+z");
  await expect(onRail(page, /plank/i)).toHaveCount(1);
});

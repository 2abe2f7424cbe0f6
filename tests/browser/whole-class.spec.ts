/**
 * The whole class in use: find what is lopsided, go to the item that causes it, fix it in the panel, see
 * even bars. By mouse, by finger on a tablet and a phone, by keyboard alone; and on paper.
 */
import type { Page } from "@playwright/test";
import type { Plan, PlanItem } from "#lib/plan/schema.ts";
import { expect, importPlan, onRail, planPath, test } from "./kit.ts";

const TABLET = { viewport: { width: 1024, height: 768 }, hasTouch: true, isMobile: true } as const;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } as const;

const grid = (page: Page) => page.getByRole("grid", { name: /^The whole class/ });
const cell = (page: Page, name: string | RegExp) => grid(page).getByRole("columnheader", { name });
const balance = (page: Page) => page.getByRole("region", { name: "Balance" });
const longer = (page: Page) => page.getByRole("button", { name: "5 seconds more" });
const LEFT = /Kneeling trunk rotation, left/;

/** A plan of its own: the demo's good class with the left trunk rotation 15 s shorter. */
async function lopsidedPlan(
  page: Page,
  change: (plan: Plan) => Plan = (plan) => plan,
  shared: { team?: boolean } = {},
): Promise<string> {
  const file: Plan = await (await page.request.get(`/api${await planPath(page, "Upper body and trunk")}/file`)).json();
  const items = file.items.map((item): PlanItem => {
    const short = item.kind === "move" && item.side === "left" && /trunk-rotation/.test(item.move);
    return short ? { ...item, seconds: item.seconds - 15 } : item;
  });
  return importPlan(page, change({ ...file, title: "Lopsided", items }), shared);
}

async function openWhole(page: Page, id: string): Promise<void> {
  await page.goto(`/plans/${id}?view=whole-class`);
  await expect(grid(page)).toBeVisible();
}

test("by mouse: from the rail to the lopsided group and its item; fixed, both sides are even", async ({ as }) => {
  const page = await as("ines");
  const id = await lopsidedPlan(page);
  await page.goto(`/plans/${id}`);
  await page.getByRole("button", { name: "Whole class" }).click();
  await expect(page).toHaveURL(/view=whole-class/);
  const obliques = balance(page)
    .getByRole("figure", { name: /^Left against right/ })
    .getByRole("listitem")
    .filter({ hasText: /^obliques/ });
  await expect(obliques.first()).toContainText("s more on the right");
  await balance(page).getByRole("button", { name: LEFT_PAIR }).first().click();
  await expect(cell(page, LEFT)).toHaveAttribute("aria-selected", "true");
  const panel = page.getByRole("complementary", { name: "The chosen item" });
  await expect(panel.getByRole("heading", { name: "Kneeling trunk rotation" })).toBeVisible();
  for (let i = 0; i < 3; i++) await longer(page).click();
  await expect(balance(page)).toContainText("Left and right match in every group.");

  // The same item is chosen on the rail; reloading and going back work.
  await page.reload();
  await expect(grid(page)).toBeVisible();
  await cell(page, LEFT).click();
  await page.getByRole("button", { name: "Rail", exact: true }).click();
  await expect(onRail(page, LEFT)).toHaveAttribute("aria-selected", "true");
  await page.goBack();
  await expect(grid(page)).toBeVisible();
});

const LEFT_PAIR = /Kneeling trunk rotation: left/;

for (const [size, options] of [
  ["tablet", TABLET],
  ["phone", PHONE],
] as const) {
  test(`with a finger on a ${size}: lopsided, fixed, even`, async ({ as }) => {
    const page = await as("ines", options);
    await openWhole(page, await lopsidedPlan(page));
    const pair = balance(page).getByRole("button", { name: LEFT_PAIR }).first();
    expect((await pair.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await pair.tap();
    for (let i = 0; i < 3; i++) await longer(page).tap();
    if (size === "phone") await page.getByRole("button", { name: "Back to the lanes" }).tap();
    await expect(balance(page)).toContainText("Left and right match in every group.");
    // Starts wide enough for a finger on most items; only the lanes scroll sideways.
    const widths = await grid(page)
      .getByRole("columnheader")
      .evaluateAll((cells) => cells.map((c) => c.getBoundingClientRect().width).sort((a, b) => a - b));
    expect(widths[Math.floor(widths.length / 2)]).toBeGreaterThanOrEqual(43);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    await page.getByRole("button", { name: "All in view" }).tap();
    await expect.poll(async () => (await grid(page).boundingBox())?.width).toBeLessThanOrEqual(options.viewport.width);
  });
}

test("by keyboard alone: W, arrows between items and lanes, Enter, fixed, even, W", async ({ as }) => {
  const page = await as("ines");
  await page.goto(`/plans/${await lopsidedPlan(page)}`);
  await onRail(page, /^Heading/)
    .first()
    .focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("w");
  await expect(grid(page).locator(":focus")).toHaveCount(1);
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Home");
  const focused = grid(page).locator(":focus");
  while (!LEFT.test((await focused.getAttribute("aria-label")) ?? "")) {
    const before = await focused.getAttribute("aria-label");
    await page.keyboard.press(/heading/.test(before ?? "") ? "ArrowDown" : "ArrowRight");
    await expect(focused).not.toHaveAttribute("aria-label", before ?? "");
  }
  const muscles = grid(page).getByRole("row").filter({ hasText: "obliques" });
  for (let i = 0; i < 40 && (await muscles.locator(":focus").count()) === 0; i++)
    await page.keyboard.press("ArrowDown");
  await expect(focused).toHaveAttribute("aria-label", /obliques, prime mover/);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("complementary", { name: "The chosen item" })).toBeFocused();
  await longer(page).focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press("Enter");
  await expect(balance(page)).toContainText("Left and right match in every group.");
  await page.keyboard.press("Escape");
  await expect(focused).toHaveAttribute("aria-label", /obliques, prime mover/);
  await page.keyboard.press("+");
  await expect(page.getByRole("button", { name: "All in view" })).toHaveAttribute("aria-pressed", "false");
  await page.keyboard.press("0");
  await expect(page.getByRole("button", { name: "All in view" })).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("w");
  await expect(onRail(page, LEFT)).toBeFocused();
});

test("a colleague's changes show at once", async ({ as }) => {
  const page = await as("ines");
  const id = await lopsidedPlan(page, (plan) => plan, { team: true });
  await openWhole(page, id);
  const colleague = await as("marta");
  await openWhole(colleague, id);
  await cell(colleague, LEFT).click();
  await expect(grid(page).getByRole("gridcell", { name: /Kneeling trunk rotation, left: here: Marta/ })).toBeVisible();
  const before = await cell(page, LEFT).getAttribute("aria-label");
  await longer(colleague).click();
  await expect(cell(page, LEFT)).not.toHaveAttribute("aria-label", before ?? "");
});

test("no name is cut at any width, also in a class of sixty moves", async ({ as }) => {
  const page = await as("ines");
  const id = await lopsidedPlan(page, sixty);
  await openWhole(page, id);
  for (let step = 0; step < 9; step++) {
    const outside = await grid(page).evaluate((element) => {
      const cut: string[] = [];
      for (const block of element.querySelectorAll("[data-shape]")) {
        const box = block.getBoundingClientRect();
        for (const line of block.querySelectorAll("[data-way] > span")) {
          const { left, right, top, bottom, width } = line.getBoundingClientRect();
          const inside =
            left >= box.left - 1 && right <= box.right + 1 && top >= box.top - 1 && bottom <= box.bottom + 1;
          if (width > 0 && !inside) cut.push(line.textContent ?? "");
        }
      }
      return cut;
    });
    expect(outside).toEqual([]);
    const wider = page.getByRole("button", { name: "Wider" });
    if (await wider.isDisabled()) break;
    await wider.click();
  }
});

test("on paper: one landscape page with title, draft, date and the safety words", async ({ as }) => {
  const page = await as("ines", { colorScheme: "dark" });
  await openWhole(page, await lopsidedPlan(page));
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  const [, width = 0, height = 0] = (/MediaBox \[0 0 (\S+) (\S+)\]/.exec(pdf) ?? []).map(Number);
  expect(width).toBeGreaterThan(height);
  await page.emulateMedia({ media: "print" });
  const sheet = page.getByRole("article");
  await expect(sheet.getByRole("heading", { name: "Lopsided" })).toBeVisible();
  await expect(sheet).toContainText(/draft, printed \d+ \w+ \d{4}/);
  for (const words of ["own clinician", "maker's manual", "Local rules"]) await expect(sheet).toContainText(words);
  await expect(page.getByRole("banner")).toBeHidden();
  // It is black on white in dark mode too.
  expect(await sheet.evaluate((element) => getComputedStyle(element).color)).toBe("rgb(0, 0, 0)");
});

/** The moves of the class repeated, some shorter and some longer. */
function sixty(plan: Plan): Plan {
  const moves = plan.items.flatMap((item) => (item.kind === "move" ? [item] : []));
  const items = Array.from({ length: 60 }, (_, n): PlanItem[] => {
    const move = moves[n % moves.length];
    if (!move) return [];
    const { keep: _keep, after: _after, ...rest } = move;
    return [{ ...rest, id: `m${n}`, seconds: 15 + 5 * (n % 9) }];
  });
  return { ...plan, lengthSeconds: 3600, items: items.flat() };
}

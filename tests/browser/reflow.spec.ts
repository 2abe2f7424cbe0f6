/**
 * Every screen at 400 % and with wider text: WCAG 2.2, 1.4.10 Reflow (320 CSS px across, no scrolling in two directions) and
 * 1.4.12 Text spacing (line 1.5, paragraphs 2, letters 0.12, words 0.16 times the size), without a word cut off.
 */
import type { Page } from "@playwright/test";
import { expect, onRail, openPlan, test, type Who } from "./kit.ts";

test.describe.configure({ mode: "parallel" });

/** 1280 x 1024 at 400 %. */
const NARROW = { width: 320, height: 512 };
const SPACED = `
  * { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
  p { margin-bottom: 2em !important; }`;

/** What reaches beyond the page's width, the widest first. Tables and lanes scroll inside themselves, as 1.4.10 allows. */
const tooWide = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const root = document.scrollingElement ?? document.documentElement;
    if (root.scrollWidth <= innerWidth + 1) return [];
    const scrollsItself = (element: Element | null): boolean => {
      for (let at = element; at && at !== document.body; at = at.parentElement)
        if (["auto", "scroll", "hidden", "clip"].includes(getComputedStyle(at).overflowX)) return true;
      return false;
    };
    return [...document.body.querySelectorAll("*")]
      .filter(
        (element) => element.getBoundingClientRect().right > innerWidth + 1 && !scrollsItself(element.parentElement),
      )
      .map(
        (element) => `${element.tagName} ${element.className}: ${Math.round(element.getBoundingClientRect().right)} px`,
      )
      .slice(0, 6);
  });

/** Boxes that cut text of their own, with its beginning. A preview is cut by design: all of it is one touch away. */
const cut = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const isShown = (element: Element) => {
      const { width, height } = element.getBoundingClientRect();
      const style = getComputedStyle(element);
      return width > 2 && height > 2 && style.visibility !== "hidden" && !element.closest(".visually-hidden, [inert]");
    };
    return [...document.body.querySelectorAll("*")]
      .filter((element) => {
        const { overflowX, overflowY } = getComputedStyle(element);
        const cutsX = ["hidden", "clip"].includes(overflowX) && element.scrollWidth > element.clientWidth + 2;
        const cutsY = ["hidden", "clip"].includes(overflowY) && element.scrollHeight > element.clientHeight + 2;
        return (
          (cutsX || cutsY) &&
          (element.textContent ?? "").trim() !== "" &&
          isShown(element) &&
          !element.closest("svg, [data-preview]")
        );
      })
      .map((element) => `${element.tagName} ${element.className}: ${(element.textContent ?? "").trim().slice(0, 40)}`)
      .slice(0, 6);
  });

async function expectReadable(page: Page, where: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  expect(await tooWide(page), `${where} is too wide`).toEqual([]);
  const style = await page.addStyleTag({ content: SPACED });
  expect(await tooWide(page), `${where} is too wide with wider text`).toEqual([]);
  expect(await cut(page), `${where} cuts words`).toEqual([]);
  await style.evaluate((element) => (element as Element).remove());
}

const PAGES: readonly { readonly who: Who | null; readonly paths: readonly string[] }[] = [
  { who: null, paths: ["/sign-in"] },
  {
    who: "ines",
    paths: ["/desk", "/library", "/library/row-kneeling", "/library/row-kneeling/edit", "/rules", "/rubric"],
  },
  { who: "marta", paths: ["/desk", "/programme"] },
  { who: "petra", paths: ["/people", "/studio", "/studio/health", "/rules/caution-without-safety-line"] },
];
for (const { who, paths } of PAGES) {
  test(`${paths.join(", ")} for ${who ?? "nobody"}`, async ({ as }) => {
    const page = await as(who, { viewport: NARROW });
    for (const path of paths)
      await test.step(path, async () => {
        await page.goto(path);
        await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
        await expectReadable(page, path);
      });
  });
}

test("nothing in the frame of a manager's page lies over anything else, from phone to laptop", async ({ as }) => {
  const page = await as("petra");
  await page.goto("/desk");
  await page.getByRole("link", { name: /^Notices/ }).evaluate((link) => {
    link.append(" 128 new");
  });
  await page
    .locator("header span")
    .first()
    .evaluate((name) => {
      name.textContent = "Lower Harbour Strength and Balance";
    });
  for (const width of [390, 759, 760, 834, 999, 1000, 1179, 1366]) {
    await page.setViewportSize({ width, height: 900 });
    const over = await page.evaluate(() => {
      const all = [...document.querySelectorAll("header a, header button")].filter(
        (one) => one.getClientRects().length > 0,
      );
      const boxes = all.map((one) => ({ words: one.textContent ?? "", box: one.getBoundingClientRect() }));
      return boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter(
            ({ box: b }) =>
              a.box.left < b.right && b.left < a.box.right && a.box.top < b.bottom && b.top < a.box.bottom,
          )
          .map((b) => `${a.words} and ${b.words}`),
      );
    });
    expect(over, `${width} px`).toEqual([]);
  }
});

test("every place of a manager's menu is on the screen of a phone", async ({ as }) => {
  const page = await as("petra");
  await page.goto("/desk");
  for (const width of [320, 360, 390]) {
    await page.setViewportSize({ width, height: 800 });
    const places = page.getByRole("navigation", { name: "Main" }).getByRole("link");
    await expect(places).toHaveText(["Desk", "Programme", "Library", "Rules", "People", "Record", "Studio"]);
    for (const place of await places.all()) await expect(place).toBeInViewport({ ratio: 1 });
    const lowest = await places.evaluateAll((all) => Math.min(...all.map((one) => one.getBoundingClientRect().height)));
    expect(lowest).toBeGreaterThanOrEqual(44);
  }
});

test("the plan page: its rail, an open plate, the whole class, the read-through", async ({ as }) => {
  const page = await as("ines", { viewport: NARROW });
  await openPlan(page, "Upper body and trunk");
  await expectReadable(page, "the rail");
  await onRail(page, /seconds from/)
    .nth(3)
    .click();
  await expect(page.getByRole("textbox", { name: /^Script of/ })).toBeVisible();
  await expectReadable(page, "an open plate");
  await page.keyboard.press("Escape");
  for (const view of ["Whole class", "Read-through"]) {
    await page.getByRole("button", { name: view }).click();
    await expect(page.getByRole("main").getByText("Chest press").first()).toBeVisible();
    await expectReadable(page, view);
  }
});

test("a signed class: its page, its classes, its sheets", async ({ as }) => {
  const page = await as("sam", { viewport: NARROW });
  await page.goto("/desk");
  const href =
    (await page
      .getByRole("link", { name: /^Print/ })
      .first()
      .getAttribute("href")) ?? "";
  for (const path of [
    href,
    href.replace("/print", ""),
    href.replace("/print", "/classes"),
    href.replace("/print", "/crew"),
  ]) {
    await page.goto(path);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    await expectReadable(page, path);
  }
});

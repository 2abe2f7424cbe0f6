/** With sweaty hands on a tablet: whatever can be pressed is 44 px or more, and nothing is nearer than 8 px to another. */
import type { Page } from "@playwright/test";
import { expect, openPlan, test } from "./kit.ts";

const TARGET = 44;
const APART = 8;
/** Positions are rounded to device pixels. */
const NOISE = 0.5;

/** What is too small, and what is too near to what. Plates at rest are rows of one list, with nothing beside them. */
const faults = (page: Page): Promise<{ small: string[]; near: string[] }> =>
  page.evaluate(
    ({ least, apart }) => {
      const pressed = 'button, a[href], input, select, textarea, summary, [contenteditable="true"]';
      const isThere = (element: Element) => {
        const { width, height } = element.getBoundingClientRect();
        const hidden = element.closest("[inert], .visually-hidden, details:not([open]) > :not(summary)");
        return width > 1 && height > 1 && !hidden && getComputedStyle(element).visibility !== "hidden";
      };
      const isInHead = (element: Element) => {
        const head = element.closest("header");
        return head !== null && getComputedStyle(head).position === "sticky";
      };
      const boxes = [...document.querySelectorAll(pressed)].filter(isThere).map((element) => {
        const own = element.matches("input[type=checkbox], input[type=radio]") ? element.closest("label") : null;
        const { left, top, right, bottom } = (own ?? element).getBoundingClientRect();
        const words = element.getAttribute("aria-label") ?? element.textContent ?? "";
        return { element, left, top, right, bottom, name: words.trim().slice(0, 40) || element.tagName };
      });
      const small = boxes
        .filter(({ left, right, top, bottom }) => right - left < least || bottom - top < least)
        .map(({ name, left, right, top, bottom }) => `${name}: ${right - left} x ${bottom - top}`);
      const near = boxes.flatMap((a, i) =>
        boxes.slice(i + 1).flatMap((b) => {
          // The page scrolls under its header, to any distance.
          if (isInHead(a.element) !== isInHead(b.element)) return [];
          if (a.element.contains(b.element) || b.element.contains(a.element)) return [];
          const across = Math.max(a.left - b.right, b.left - a.right);
          const down = Math.max(a.top - b.bottom, b.top - a.bottom);
          const gap = Math.max(across, down);
          // What lies over something else has it covered.
          return gap < apart && gap > -1 ? [`${a.name} and ${b.name}: ${gap}`] : [];
        }),
      );
      return { small, near };
    },
    { least: TARGET - NOISE, apart: APART - NOISE },
  );

test("a tablet's desk and plan have targets for fingers, well apart", async ({ as }) => {
  const page = await as("marta", { viewport: { width: 820, height: 1180 }, hasTouch: true, isMobile: true });
  await page.goto("/desk");
  await expect(page.getByRole("heading", { name: "Mine" })).toBeVisible();
  expect(await faults(page)).toEqual({ small: [], near: [] });
  await openPlan(page, "Upper body and trunk");
  expect(await faults(page)).toEqual({ small: [], near: [] });
  await page.getByRole("option").nth(3).tap();
  await expect(page.getByRole("textbox", { name: /^Script of/ })).toBeVisible();
  expect(await faults(page)).toEqual({ small: [], near: [] });
});

/** What keeps people out of a page, as far as a tool can tell: axe's rules in Chromium. */
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

/** WCAG 2.2, levels A and AA. */
const WCAG_AA = { type: "tag" as const, values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] };
/** The rules whose answer a colour scheme can change. */
const COLOURS = { type: "rule" as const, values: ["color-contrast", "link-in-text-block"] };

/** No rule of WCAG 2.2 AA is broken; with `all`, none of axe's own good practice either. `within`: a CSS selector. */
export const expectNoBarrier = (page: Page, looked: { all?: boolean; within?: string } = {}): Promise<void> =>
  expectKept(page, looked.all ? undefined : WCAG_AA, looked.within);

/** The same of a page that is light, and then of its colours in the dark, which are all that the dark changes. */
export async function expectNoBarrierLightOrDark(page: Page, looked: { all?: boolean } = {}): Promise<void> {
  await page.emulateMedia({ colorScheme: "light" });
  await expectNoBarrier(page, looked);
  await page.emulateMedia({ colorScheme: "dark" });
  await expectKept(page, COLOURS);
  await page.emulateMedia({ colorScheme: "light" });
}

async function expectKept(page: Page, runOnly?: typeof WCAG_AA | typeof COLOURS, within?: string): Promise<void> {
  // No page of ours has a frame, so axe answers in the page itself: by default it opens a blank page for every answer.
  const axe = new AxeBuilder({ page }).setLegacyMode();
  axe.options({ resultTypes: ["violations"], ...(runOnly && { runOnly }) });
  if (within) axe.include(within);
  const { violations } = await axe.analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`)).toEqual(
    [],
  );
}

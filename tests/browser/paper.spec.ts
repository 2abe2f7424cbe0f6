/**
 * Signed classes on paper: every word at 9 pt or more, nothing cut and nothing over anything else, on as few pages as that
 * takes, with the edition and the safety words.
 */
import type { Page } from "@playwright/test";
import { expect, openPlan, test } from "./kit.ts";

const UPPER = "Upper body and trunk";
/** What a printer leaves of A4 and of letter paper inside margins of 9 mm, CSS px. */
const PAPERS = { A4: { width: 726, height: 1054 }, Letter: { width: 748, height: 988 } } as const;
/** Twenty moves take two pages; thirty-three at 9 pt do not fit two. */
const MOST_PAGES: readonly (readonly [RegExp, number])[] = [
  [/Upper body and trunk/, 2],
  [/Crew sheet: Whole body/, 4],
  [/Whole body/, 3],
];

/** Signs the team's other plan as well, so that both demo plans are measured. */
async function signUpper(marta: Page, ines: Page, origin: string): Promise<void> {
  await openPlan(marta, UPPER);
  const id = new URL(marta.url()).pathname.split("/").at(-1);
  const post = (page: Page, act: string, body: object) =>
    page.request.post(`/api/plans/${id}/${act}`, { data: body, headers: { origin } });
  expect((await post(marta, "hand-in", {})).status()).toBe(200);
  const { hash } = await (await post(ines, "read", {})).json();
  expect((await post(ines, "sign", { hash })).ok()).toBe(true);
}

async function paperOf(page: Page, format: "A4" | "Letter"): Promise<{ pages: number; stands: boolean }> {
  const pdf = (await page.pdf({ format })).toString("latin1");
  const [, width = 0, height = 0] = (/MediaBox \[0 0 (\S+) (\S+)\]/.exec(pdf) ?? []).map(Number);
  return { pages: pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0, stands: height > width };
}

test("print sheets and crew sheets can be read on paper", async ({ as, app }) => {
  await signUpper(await as("marta"), await as("ines"), app.url);
  const page = await as("sam", { colorScheme: "dark" });
  await page.goto("/desk");
  const sheets = await page.getByRole("link", { name: /^(Crew|Print) sheet of/ }).all();
  const addresses = await Promise.all(sheets.map((link) => link.getAttribute("href")));
  expect(addresses).toHaveLength(4);
  for (const address of addresses) {
    await page.goto(address ?? "");
    const sheet = page.getByRole("article");
    const title = await sheet.getByRole("heading", { level: 1 }).textContent();
    const [, most = 0] = MOST_PAGES.find(([name]) => name.test(title ?? "")) ?? [];
    for (const format of ["A4", "Letter"] as const) {
      const paper = await paperOf(page, format);
      expect(paper.stands).toBe(true);
      expect(paper.pages, `${title} on ${format}`).toBeLessThanOrEqual(most);
      await page.emulateMedia({ media: "print" });
      await page.setViewportSize(PAPERS[format]);
      expect(await sheet.evaluate(faultsOnPaper), `${title} on ${format}`).toEqual([]);
      await page.emulateMedia({ media: null });
    }
    await expect(sheet).toContainText(/edition 1 · [a-z]{5}-[a-z]{5}/);
    for (const words of ["own clinician", "maker's manual", "Local rules"]) await expect(sheet).toContainText(words);
    const shots = process.env.SPRINGLINE_SHOTS;
    if (shots) await page.pdf({ path: `${shots}/${title}.pdf`, format: "A4" });
  }
});

/** Runs in the page: what is too small, sticks out of its plate or of the paper, is grey, or lies over other words. */
function faultsOnPaper(sheet: Element): string[] {
  const LEAST_PT = 9;
  const faults: string[] = [];
  const paper = sheet.getBoundingClientRect();
  const words: { text: string; box: DOMRect }[] = [];
  const walk = document.createTreeWalker(sheet, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const text = node.textContent?.trim() ?? "";
    const parent = node.parentElement;
    // Words for who listens only have a box of one pixel.
    if (text === "" || !parent || parent.closest(".visually-hidden, title")) continue;
    const style = getComputedStyle(parent);
    const points = Number.parseFloat(style.fontSize) * 0.75;
    if (points < LEAST_PT - 0.01) faults.push(`${points} pt: ${text}`);
    if (style.color !== getComputedStyle(sheet).color) faults.push(`${style.color}: ${text}`);
    const range = document.createRange();
    range.selectNodeContents(node);
    const plate = parent.closest("[data-density]")?.getBoundingClientRect();
    for (const box of range.getClientRects()) {
      if (box.width === 0) continue;
      if (box.left < paper.left - 1 || box.right > paper.right + 1) faults.push(`off the paper: ${text}`);
      if (plate && (box.top < plate.top - 2 || box.bottom > plate.bottom + 2 || box.right > plate.right + 1))
        faults.push(`out of its plate: ${text}`);
      words.push({ text, box });
    }
  }
  // A box is as high as the font's tallest letters; without its edges it is as high as most.
  const top = ({ y, height }: DOMRect) => y + 0.2 * height;
  const bottom = ({ y, height }: DOMRect) => y + 0.8 * height;
  for (const [i, one] of words.entries()) {
    for (const other of words.slice(i + 1)) {
      const x = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const y = Math.min(bottom(one.box), bottom(other.box)) - Math.max(top(one.box), top(other.box));
      if (x > 1 && y > 0) faults.push(`“${one.text}” over “${other.text}”`);
    }
  }
  for (const plate of sheet.querySelectorAll("[data-density]")) {
    if (!plate.querySelector("svg path")) faults.push(`no figure: ${plate.textContent}`);
  }
  return faults;
}

/**
 * Shared by the browser tests: one built program with the invented studio per worker, and its people, signed in
 * once each. A page that throws or logs an error fails the test that opened it.
 */
import { type Browser, type BrowserContext, test as base, expect, type Page } from "@playwright/test";
import type { Editor } from "@tiptap/core";
import type { Plan } from "#lib/plan/schema.ts";
import { DEMO_PASSWORD } from "#seed/studio/people.ts";
import { type RunningApp, startApp } from "../support/app.ts";
import { KeptBrowsers } from "../support/kept-browsers.ts";

export type Who = "petra" | "ines" | "marta" | "jonas" | "sam";
export { DEMO_PASSWORD, expect };

interface Fixtures {
  /** Opens a separate browser for one person, signed in; for nobody, signed out. */
  as(who: Who | null, options?: Parameters<Browser["newContext"]>[0]): Promise<Page>;
}
interface WorkerFixtures {
  app: RunningApp;
  signedIn: Map<Who, Awaited<ReturnType<BrowserContext["storageState"]>>>;
  kept: KeptBrowsers;
}

export const test = base.extend<Fixtures, WorkerFixtures>({
  app: [
    // biome-ignore lint/correctness/noEmptyPattern: the test runner reads the pattern to learn what a fixture needs
    async ({}, use) => {
      const app = await startApp({ demo: true });
      await use(app);
      await app.remove();
    },
    { scope: "worker", timeout: 180_000 },
  ],
  signedIn: [
    // biome-ignore lint/correctness/noEmptyPattern: as above
    async ({}, use) => use(new Map()),
    { scope: "worker" },
  ],
  kept: [
    // biome-ignore lint/correctness/noEmptyPattern: as above
    async ({}, use) => use(new KeptBrowsers()),
    { scope: "worker" },
  ],
  as: async ({ browser, app, signedIn, kept }, use) => {
    const errors: string[] = [];
    const opened = kept.forOneTest();
    await use(async (who, options = {}) => {
      const state = who ? (signedIn.get(who) ?? (await signIn(browser, app.url, who))) : undefined;
      if (who && state) signedIn.set(who, state);
      const looks = { baseURL: app.url, viewport: { width: 1440, height: 900 }, ...options };
      const page = await opened.page(`${who} ${JSON.stringify(looks)}`, app.url, state?.cookies ?? [], () =>
        browser.newContext({ ...looks, ...(state ? { storageState: state } : {}) }),
      );
      addresses.set(page, app.url);
      page.on("pageerror", (error) => errors.push(`${who}: ${error.message}`));
      return page;
    });
    await opened.leave();
    expect(errors).toEqual([]);
  },
});

/** Signs in through the program's sign-in page. */
export async function letIn(context: BrowserContext, url: string, who: Who): Promise<void> {
  const answer = await context.request.post(`${url}/api/auth/sign-in/email`, {
    headers: { origin: url },
    data: { email: `${who}@tholepin.example`, password: DEMO_PASSWORD },
  });
  expect(answer.status()).toBe(200);
}

async function signIn(browser: Browser, url: string, who: Who) {
  const context = await browser.newContext({ baseURL: url });
  await letIn(context, url, who);
  const state = await context.storageState();
  await context.close();
  return state;
}

/** The item of that name on the rail; `nth` among several. */
export const onRail = (page: Page, name: string | RegExp) =>
  page.getByRole("listbox", { name: "The class, item by item" }).getByRole("option", { name });

export const script = (page: Page) => page.getByRole("textbox", { name: /^Script of/ });

/** Waits until the page says that everything is saved. */
export const saveState = (page: Page) => page.locator("[data-state]").first();

export async function expectSaved(page: Page): Promise<void> {
  await expect(saveState(page)).toHaveAttribute("data-state", "saved");
}

/** The address of each page's program. */
const addresses = new WeakMap<Page, string>();

/** A new plan of this person's from a plan file, made without opening a page. Answers its id. */
export async function importPlan(page: Page, plan: Plan, { team = false } = {}): Promise<string> {
  const headers = { origin: addresses.get(page) ?? "" };
  const made = await page.request.post("/api/plans/import", { headers, data: plan });
  expect(made.status()).toBe(201);
  const { id }: { id: string } = await made.json();
  if (team) expect((await page.request.patch(`/api/plans/${id}`, { headers, data: { team } })).ok()).toBe(true);
  return id;
}

/** Where plans are, by title. Every program of a run began with a copy of one studio, so a path holds in all of them. */
const planPaths = new Map<string, string>();

/** The path of the first plan of that title on this person's desk. */
export async function planPath(page: Page, title: string): Promise<string> {
  const known = planPaths.get(title);
  if (known) return known;
  const desk = await page.request.get("/desk");
  const links = (await desk.text()).matchAll(/<a [^>]*href="(\/plans\/[^"]+)"[^>]*>(.*?)<\/a>/g);
  const path = [...links].find(([, , words]) => words?.includes(title))?.[1];
  if (!path) throw new Error(`no plan “${title}” on the desk`);
  planPaths.set(title, path);
  return path;
}

/** Opens a plan by its title. Without the desk in between, which most tests have nothing to ask. */
export async function openPlan(page: Page, title: string): Promise<void> {
  await page.goto(await planPath(page, title));
  const rail = page.getByRole("listbox", { name: "The class, item by item" });
  await expect(rail).toBeVisible();
  // All plates are drawn.
  await expect(rail).not.toHaveAttribute("aria-busy");
}

/** Clicks into the script and waits until the editor has settled where its caret is. */
export async function intoScript(page: Page): Promise<void> {
  await script(page).click();
  await settled(page);
}

/** Puts the caret after the script's last word and waits until the editor reports it there, and keeps doing so. */
export async function toEndOfScript(page: Page): Promise<void> {
  await intoScript(page);
  await expect(async () => {
    await page.keyboard.press("ControlOrMeta+End");
    await settled(page);
    expect(await script(page).evaluate(lettersBehindCaret)).toBe(0);
  }).toPass();
}

/** Editor and page copy each other's selection up to some frames after a click or key. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let frame = 0; frame < 4; frame++) await new Promise((done) => requestAnimationFrame(done));
  });
}

/** Positions between the caret and the end of the last line, as the editor reports them. */
function lettersBehindCaret(text: HTMLElement | SVGElement): number {
  const { state } = (text as HTMLElement & { editor: Editor }).editor;
  return state.doc.content.size - 1 - state.selection.head;
}

/** Takes a command of the plan from its menu. */
export async function more(page: Page, name: string): Promise<void> {
  await page.getByRole("button", { name: "More", exact: true }).click();
  await page.getByRole("button", { name, exact: true }).click();
}

/** Opens the class as a whole beside the plan. */
export const openClass = (page: Page) => more(page, "The class");

/** Opens what is asked for now and then in the plate of an item: load, set-up, place. */
export async function openDrawer(page: Page): Promise<void> {
  const drawer = page.locator("details", { hasText: "Load, set-up and place" }).first();
  await expect(drawer).toBeVisible();
  if ((await drawer.getAttribute("open")) === null) await drawer.locator("summary").first().click();
}

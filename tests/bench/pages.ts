/**
 * What it costs to open a page with nothing kept from before, on a phone and on a laptop: kB of each kind before the page
 * answers, what moves while it opens, when its largest thing stands and when it answers. Needs a build (`npm run build`)
 * and a Chromium. Milliseconds are those of this machine at a quarter of its speed.
 */
import { existsSync } from "node:fs";
import { type Browser, type BrowserContext, chromium } from "@playwright/test";
import { UPPER_BODY_AND_TRUNK } from "#seed/plans/upper-body-and-trunk.ts";
import { DEMO_PASSWORD } from "#seed/studio/people.ts";
import { startApp } from "#tests/support/app.ts";
import { CHROMIUM_ARGS, findChromium } from "#tests/support/chromium.mjs";
import {
  type Answering,
  askAtOnce,
  type Kind,
  type Opening,
  openOnly,
  SIZES,
  type SizeName,
  type Visited,
} from "./page-visit.ts";
import { quantile } from "./timing.ts";

const MOST_CLS = 0.02;
const MOST_LCP_MS = 3000;
const SCRIPT_KB = { plan: 300, desk: 160 } as const;

export async function benchPages({ rounds }: { rounds: number }): Promise<boolean> {
  const dist = (process.env.SPRINGLINE_DIST ?? ".next").replace(/^\.next/, "dist");
  if (!existsSync(`${dist}/main.js`)) throw new Error("Build the program first: npm run build");
  const app = await startApp({ demo: true });
  const path = findChromium();
  const browser = await chromium.launch({
    args: CHROMIUM_ARGS,
    ...(path === undefined ? {} : { executablePath: path }),
  });
  try {
    const { state, pages } = await signedIn(browser, app.url);
    sayHead();
    let met = true;
    for (const page of pages)
      for (const size of Object.keys(SIZES) as SizeName[]) {
        const visit = { url: app.url, page, size, state };
        // The server's first request is slow and does not count for the page.
        await fetch(app.url + page.path, { headers: cookieOf(state) });
        const opened: Opening[] = [];
        const answered: Answering[] = [];
        for (let round = 0; round < rounds; round++) {
          opened.push(await openOnly(browser, visit));
          answered.push(await askAtOnce(browser, visit));
        }
        if (!say(page, size, opened, answered)) met = false;
      }
    return met;
  } finally {
    await browser.close();
    await app.remove();
  }
}

type State = Awaited<ReturnType<BrowserContext["storageState"]>>;
const cookieOf = ({ cookies }: State) => ({ cookie: cookies.map(({ name, value }) => `${name}=${value}`).join("; ") });

async function signedIn(browser: Browser, url: string): Promise<{ state: State; pages: Visited[] }> {
  const context = await browser.newContext({ baseURL: url });
  const { request } = context;
  await request.post("/api/auth/sign-in/email", {
    headers: { origin: url },
    data: { email: "marta@tholepin.example", password: DEMO_PASSWORD },
  });
  const made = await request.post("/api/plans/import", { headers: { origin: url }, data: UPPER_BODY_AND_TRUNK });
  if (!made.ok()) throw new Error(`The plan could not be brought in: ${made.status()} ${await made.text()}`);
  const { id } = await made.json();
  const state = await context.storageState();
  await context.close();
  return { state, pages: pagesWith(id) };
}

/** The acts, as a script in the page: key presses as from a keyboard, as soon as they can be handled. */
const PRESS = `const press = (on, key) => on.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));`;
const asked = (act: string): string => `(() => { ${PRESS} ${act} })()`;
const CHOSEN_BY_KEY = asked(`
  const option = document.querySelector('[role="option"][tabindex="0"]');
  if (option) press(option, "ArrowDown");
  return document.querySelector('[role="option"][aria-selected="true"]') !== null;`);
/** Goes to the first move, opens its sheet if there is one, and types a letter. */
const LETTER_TAKEN = asked(`
  const chosen = document.querySelector('[role="option"][aria-selected="true"]');
  if (chosen?.dataset.kind !== "move") press(chosen, "ArrowDown");
  else if (!document.querySelector('[aria-label="The chosen item"]')) press(chosen, "Enter");
  const text = document.querySelector('[role="textbox"][contenteditable="true"][aria-label^="Script of"]');
  if (!text) return false;
  text.focus();
  document.execCommand("insertText", false, "a");
  return text.textContent.includes("a");`);
const ACCOUNT_OPENS = asked(`
  const button = document.querySelector('[aria-controls="account"]');
  if (button?.getAttribute("aria-expanded") === "false") button.click();
  return button?.getAttribute("aria-expanded") === "true";`);
const DAY_TAKES_KEYS = asked(`
  const day = document.querySelector('[data-day][tabindex="0"]');
  window.firstDay ??= day?.dataset.day;
  if (day && day.dataset.day !== window.firstDay) return true;
  if (day) press(day, day.dataset.day.endsWith("-01") ? "ArrowRight" : "ArrowLeft");
  return false;`);
const CODE_ASKED = `document.querySelector("input") !== null`;

const pagesWith = (planId: string): Visited[] => [
  {
    name: "plan",
    path: `/plans/${planId}`,
    answers: [CHOSEN_BY_KEY, LETTER_TAKEN],
    stands: `[role="option"]`,
    scriptKb: SCRIPT_KB.plan,
  },
  { name: "desk", path: "/desk", answers: [ACCOUNT_OPENS], stands: "h1", scriptKb: SCRIPT_KB.desk },
  { name: "programme", path: "/programme", answers: [DAY_TAKES_KEYS], stands: "[data-day]", scriptKb: null },
  { name: "floor", path: "/floor", answers: [CODE_ASKED], stands: "input", scriptKb: null },
];

const kb = (bytes: number): string => (bytes / 1000).toFixed(1).padStart(7);
const median = (values: readonly number[]): number => quantile(Float64Array.from(values).sort(), 0.5);
const WIDTHS = [20, 7, 7, 7, 7, 7, 7, 9, 9] as const;
const row = (cells: readonly string[]): string =>
  cells.map((cell, i) => (i === 0 ? cell.padEnd(WIDTHS[0]) : cell.padStart(WIDTHS[i] ?? 8))).join("  ");

function sayHead(): void {
  console.log(row(["kB before it answers", "script", "style", "font", "html", "CLS", "LCP ms", "answers", "writes"]));
}

function say(page: Visited, size: SizeName, opened: readonly Opening[], answered: readonly Answering[]): boolean {
  const bytes = (kind: Kind) => median(answered.map((one) => one.bytes[kind]));
  const cls = median(opened.map((one) => one.cls));
  const lcp = median(opened.map((one) => one.lcp));
  const at = page.answers.map((_, i) => median(answered.map((one) => one.at[i] ?? Number.NaN)).toFixed(0));
  const sizes = (["script", "style", "font", "html"] as const).map((kind) => kb(bytes(kind)));
  console.log(row([`${page.name}, ${size}`, ...sizes, cls.toFixed(3), lcp.toFixed(0), ...at]));
  if (page.scriptKb === null) return true;
  const missed = [
    bytes("script") > page.scriptKb * 1000 && `script over ${page.scriptKb} kB`,
    cls > MOST_CLS && `CLS over ${MOST_CLS}: ${opened[0]?.moved}`,
    lcp > MOST_LCP_MS && `LCP over ${MOST_LCP_MS} ms: ${opened[0]?.largest}`,
  ].filter((what) => what !== false);
  for (const what of missed) console.log(`  MISSED: ${what}`);
  return missed.length === 0;
}

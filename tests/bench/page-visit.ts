/**
 * One visit to a page of the built program with an empty cache, on a slow processor and a slow network: what was fetched,
 * what moved, when the largest element was drawn and when the page responded. It is watched from its first script on.
 */
import type { Browser, BrowserContext, Page } from "@playwright/test";

/** As published for a mid-range phone on a slow network: 1.6 Mbit/s down, 0.75 up, 150 ms round trip, a quarter of the speed. */
const LINE = { offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
const SLOWER = 4;
const LONGEST_MS = 30_000;
const SETTLED_MS = 1500;

export const SIZES = {
  phone: { width: 390, height: 844 },
  laptop: { width: 1440, height: 900 },
} as const;
export type SizeName = keyof typeof SIZES;

/** A page to visit, and the acts that it must respond to, in order, as a script in the page. */
export interface Visited {
  readonly name: string;
  readonly path: string;
  /** Expressions that are true once the page has responded; polled until they are. */
  readonly answers: readonly string[];
  /** Selector of an element that is there once the page is complete. */
  readonly stands: string;
  /** kB of script allowed before the page first responds. */
  readonly scriptKb: number | null;
}

export interface Opening {
  /** Sum over session windows' largest, as the Layout Instability draft has it; nobody touched the page. */
  readonly cls: number;
  /** ms from the request */
  readonly lcp: number;
  /** What moved most and what was largest, to help whoever has to fix it. */
  readonly moved: string;
  readonly largest: string;
}
export interface Answering {
  /** ms from the request to each answer */
  readonly at: readonly number[];
  /** bytes as transferred, without headers, before the first answer */
  readonly bytes: Readonly<Record<Kind, number>>;
}
export type Kind = "html" | "style" | "font" | "script";

/** Opens the page and leaves it alone until everything is loaded. */
export async function openOnly(browser: Browser, visit: VisitOptions): Promise<Opening> {
  return visiting(browser, visit, OBSERVE, async (page) => {
    await page.goto(visit.page.path);
    await page.locator(visit.page.stands).first().waitFor({ timeout: LONGEST_MS });
    await page.waitForLoadState("networkidle");
    // A slow processor draws some time after the network is quiet.
    await page.waitForTimeout(SETTLED_MS);
    return page.evaluate<Opening>("window.bench.read()");
  });
}

/** Opens the page and performs the acts as soon as possible. */
export async function askAtOnce(browser: Browser, visit: VisitOptions): Promise<Answering> {
  return visiting(browser, visit, askFor(visit.page), async (page) => {
    await page.goto(visit.page.path, { waitUntil: "commit" });
    const tooLong = AbortSignal.timeout(LONGEST_MS);
    const given = new Promise<never>((_, no) =>
      tooLong.addEventListener("abort", () => no(new Error(`${visit.page.name} does not answer`))),
    );
    return Promise.race([page.evaluate<Answering>("window.answered"), given]);
  });
}

export interface VisitOptions {
  readonly url: string;
  readonly page: Visited;
  readonly size: SizeName;
  readonly state: Awaited<ReturnType<BrowserContext["storageState"]>>;
}

async function visiting<T>(
  browser: Browser,
  { url, size, state }: VisitOptions,
  script: string,
  act: (page: Page) => Promise<T>,
): Promise<T> {
  const context = await browser.newContext({ baseURL: url, viewport: SIZES[size], storageState: state });
  try {
    const page = await context.newPage();
    const link = await context.newCDPSession(page);
    await link.send("Network.enable");
    await link.send("Network.emulateNetworkConditions", LINE);
    await link.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
    await page.addInitScript(script);
    return await act(page);
  } finally {
    await context.close();
  }
}

/** As text, since the compiler's helpers are not in the page. */
const OBSERVE = `{
  const windows = [];
  let largest = { startTime: 0, element: null };
  let most = { value: 0, sources: [] };
  const words = (node) => !node ? "nothing" : (node.nodeName + " " + (node.className ?? "") + " " + (node.textContent ?? "").slice(0, 40)).trim();
  const shifts = new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      if (entry.hadRecentInput) continue;
      if (entry.value > most.value) most = { value: entry.value, sources: entry.sources.map(({ node }) => words(node)), at: entry.startTime };
      const open = windows.at(-1);
      if (open && entry.startTime - open.last < 1000 && entry.startTime - open.first < 5000) {
        open.sum += entry.value;
        open.last = entry.startTime;
      } else windows.push({ first: entry.startTime, last: entry.startTime, sum: entry.value });
    }
  });
  shifts.observe({ type: "layout-shift", buffered: true });
  const paints = new PerformanceObserver((list) => { largest = list.getEntries().at(-1); });
  paints.observe({ type: "largest-contentful-paint", buffered: true });
  window.bench = { read: () => ({
    cls: Math.max(0, ...windows.map(({ sum }) => sum)),
    lcp: largest.startTime,
    moved: most.value === 0 ? "" : most.value.toFixed(3) + " at " + most.at.toFixed(0) + ": " + most.sources.join(" | "),
    largest: words(largest.element),
  }) };
}`;

/** Polls every 20 ms. Counts what was fetched at the first response. */
const askFor = ({ answers }: Visited): string => `{
  const answers = [${answers.map((of) => `() => ${of}`).join(", ")}];
  const at = [];
  let bytes;
  const KINDS = { script: /[.]js$/, style: /[.]css$/, font: /[.]woff2?$/ };
  const count = () => {
    const sum = { html: performance.getEntriesByType("navigation")[0].encodedBodySize, style: 0, font: 0, script: 0 };
    for (const { name, encodedBodySize } of performance.getEntriesByType("resource"))
      for (const [kind, ending] of Object.entries(KINDS)) if (ending.test(new URL(name).pathname)) sum[kind] += encodedBodySize;
    return sum;
  };
  let done;
  window.answered = new Promise((resolve) => { done = resolve; });
  performance.setResourceTimingBufferSize(1000);
  const ask = () => {
    while (at.length < answers.length && answers[at.length]()) {
      at.push(performance.now());
      bytes ??= count();
    }
    if (at.length === answers.length) done({ at, bytes });
    else setTimeout(ask, 20);
  };
  ask();
}`;

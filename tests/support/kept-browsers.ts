/**
 * Browsers that go from one test to the next, emptied of all but the program's files, which need not be fetched again.
 */
import type { BrowserContext, Page } from "@playwright/test";

type Cookies = Parameters<BrowserContext["addCookies"]>[0];

/** What a program leaves in a browser, besides cookies and what belongs to one page. */
const LEFT = "local_storage,indexeddb,service_workers,cache_storage";

export class KeptBrowsers {
  private readonly free = new Map<string, BrowserContext[]>();

  forOneTest(): OneTest {
    return new OneTest(this.free);
  }
}

class OneTest {
  private readonly used: { readonly looks: string; readonly context: BrowserContext }[] = [];

  constructor(private readonly free: Map<string, BrowserContext[]>) {}

  /** A page in an empty browser. `looks`: whose it is and how it is set up; those that look the same are exchanged. */
  async page(looks: string, url: string, cookies: Cookies, open: () => Promise<BrowserContext>): Promise<Page> {
    const kept = this.free.get(looks)?.pop();
    const context = kept ?? (await open());
    this.used.push({ looks, context });
    const page = await context.newPage();
    if (kept) await empty(context, page, url, cookies);
    return page;
  }

  async leave(): Promise<void> {
    for (const { looks, context } of this.used)
      if (await canBeKept(context)) this.free.set(looks, [...(this.free.get(looks) ?? []), context]);
      else await context.close();
  }
}

async function empty(context: BrowserContext, page: Page, url: string, cookies: Cookies): Promise<void> {
  await context.clearCookies();
  await context.addCookies(cookies);
  const session = await context.newCDPSession(page);
  await session.send("Storage.clearDataForOrigin", { origin: url, storageTypes: LEFT });
  await session.detach();
}

/** Closes its pages. A browser is kept unless the test has closed it, or has stopped its clock, which cannot be undone. */
async function canBeKept(context: BrowserContext): Promise<boolean> {
  const pages = context.pages();
  if (pages.length === 0) return false;
  const stopped = await Promise.all(pages.map(hasStoppedClock));
  for (const page of pages) await page.close();
  if (stopped.includes(true)) return false;
  await context.setOffline(false);
  await context.unrouteAll();
  return true;
}

/** True also of a page that cannot be asked. */
const hasStoppedClock = (page: Page): Promise<boolean> =>
  page.evaluate(() => "__pwClock" in globalThis).catch(() => true);

/**
 * What a device fetches before the floor can be used for the first time: the scripts that the page names, compressed as a
 * proxy would send them, beside those of a plan's page. Needs a build (`npm run build`).
 */
import { existsSync } from "node:fs";
import { brotliCompressSync, gzipSync } from "node:zlib";
import { DEMO_PASSWORD } from "#seed/studio/people.ts";
import { startApp } from "#tests/support/app.ts";

const TARGET_KB = 130;

interface Size {
  readonly scripts: number;
  readonly raw: number;
  readonly gzip: number;
  readonly brotli: number;
}

export async function benchFloor(): Promise<boolean> {
  const dist = (process.env.SPRINGLINE_DIST ?? ".next").replace(/^\.next/, "dist");
  if (!existsSync(`${dist}/main.js`)) throw new Error("Build the program first: npm run build");
  const app = await startApp({ demo: true });
  try {
    const cookie = await signIn(app.url);
    const plans = await (await fetch(`${app.url}/api/plans`, { headers: { cookie } })).json();
    const planId = (Array.isArray(plans) ? plans : plans.plans)[0].id;
    const [floor, plan] = [
      await scriptsOf(app.url, "/floor", ""),
      await scriptsOf(app.url, `/plans/${planId}`, cookie),
    ];
    const size = await sizeOf(app.url, floor);
    say("/floor, before its first screen", size);
    say("  the screens of a class, after it", await sizeOf(app.url, await laterOf(app.url)));
    say("a plan's page", await sizeOf(app.url, plan));
    const met = size.gzip < TARGET_KB * 1000;
    console.log(`floor, first load of scripts under ${TARGET_KB} kB with gzip: ${met ? "met" : "MISSED"}`);
    return met;
  } finally {
    await app.remove();
  }
}

const kb = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;
const say = (page: string, { scripts, raw, gzip, brotli }: Size): void =>
  console.log(`${page}: ${scripts} scripts, ${kb(raw)}, gzip ${kb(gzip)}, brotli ${kb(brotli)}`);

async function signIn(url: string): Promise<string> {
  const answer = await fetch(`${url}/api/auth/sign-in/email`, {
    method: "POST",
    headers: { "content-type": "application/json", origin: url },
    body: JSON.stringify({ email: "marta@tholepin.example", password: DEMO_PASSWORD }),
  });
  return answer.headers
    .getSetCookie()
    .map((set) => set.split(";")[0])
    .join("; ");
}

/** Scripts in the page's tags; ones for browsers without modules are never fetched by those that run the floor. */
async function scriptsOf(url: string, path: string, cookie: string): Promise<string[]> {
  const html = await (await fetch(url + path, { headers: { cookie } })).text();
  const tags = [...html.matchAll(/<script[^>]*\ssrc="([^"]+)"[^>]*>/g)].filter(([tag]) => !/nomodule/i.test(tag));
  return [...new Set(tags.map(([, src]) => src ?? ""))];
}

/** What the page says that it fetches after its first screen. */
async function laterOf(url: string): Promise<string[]> {
  const html = await (await fetch(`${url}/floor`)).text();
  return JSON.parse(/<script type="application\/json">(.*?)<\/script>/.exec(html)?.[1] ?? "[]");
}

async function sizeOf(url: string, scripts: readonly string[]): Promise<Size> {
  const bodies = await Promise.all(
    scripts.map(async (src) => Buffer.from(await (await fetch(new URL(src, url))).arrayBuffer())),
  );
  const sum = (of: (body: Buffer) => number) => bodies.reduce((total, body) => total + of(body), 0);
  return {
    scripts: scripts.length,
    raw: sum((body) => body.length),
    gzip: sum((body) => gzipSync(body, { level: 9 }).length),
    brotli: sum((body) => brotliCompressSync(body).length),
  };
}

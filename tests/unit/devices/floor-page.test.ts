/** The floor's page and the parts of its bundle: all of it named in the page, nothing else given out. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { floorPage, partsOfBuild, readPart } from "#server/devices/floor-page.ts";
import { floorWorker } from "#server/devices/floor-worker.ts";

const PARTS = { scripts: ["entry-AB12.js", "chunk-CD34.js"], later: ["class-EF56.js"], styles: ["entry-GH78.css"] };
const distDir = mkdtempSync(join(tmpdir(), "springline-floor-"));
const env = { distDir, mode: "live" as const };

beforeAll(() => {
  mkdirSync(join(distDir, "floor"));
  writeFileSync(join(distDir, "floor", "parts.json"), JSON.stringify(PARTS));
  writeFileSync(join(distDir, "floor", "entry-AB12.js"), "1;");
  writeFileSync(join(distDir, "secret.js"), "no");
});
afterAll(() => rmSync(distDir, { recursive: true, force: true }));

test("the page names every part, and the worker finds each of them in it", () => {
  const html = floorPage(partsOfBuild(env), "build-1");
  // The worker's own way of reading the page, taken out of its script.
  const [, pattern] = /html\.matchAll\(\/(.*)\/g\)/.exec(floorWorker("build-1")) ?? [];
  const found = [...html.matchAll(new RegExp(pattern ?? "none", "g"))].map(([path]) => path);
  const all = [...PARTS.scripts, ...PARTS.later, ...PARTS.styles].map((name) => `/floor/parts/${name}`);
  expect([...new Set(found)].sort()).toEqual(all.sort());
  // What runs only later is no script of the page.
  expect(html).not.toMatch(/src="[^"]*class-EF56/);
});

test("a part is given by its plain name, and nothing beside the bundle", () => {
  expect(new TextDecoder().decode(readPart(env, "entry-AB12.js")?.bytes)).toBe("1;");
  expect(readPart(env, "entry-AB12.js")?.type).toMatch(/javascript/);
  for (const name of [
    "parts.json",
    "../secret.js",
    "..%2fsecret.js",
    "/etc/passwd",
    "absent-1.js",
    "entry-AB12.js\0",
    "",
  ])
    expect(readPart(env, name), name).toBeNull();
});

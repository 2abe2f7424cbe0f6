/** What the program refuses to run in, each with one sentence. */
import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { DEMO_SECRET, EnvError, readEnv } from "#server/base/env.ts";

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), "springline-env-"));
});
afterEach(() => rmSync(dir, { recursive: true }));

const vars = (more: Record<string, string> = {}) => ({ SPRINGLINE_DATA: join(dir, "data"), ...more });

test("without settings: loopback only, port 4310, one public name", () => {
  expect(readEnv("live", vars())).toMatchObject({
    host: "127.0.0.1",
    port: 4310,
    origin: "http://localhost:4310",
    trustProxy: false,
    databaseFile: join(dir, "data", "springline.sqlite"),
  });
});

test("a secret of its own is made once and kept for the owner's eyes", () => {
  const first = readEnv("live", vars()).secret;
  expect(first.length).toBeGreaterThanOrEqual(43);
  expect(readEnv("live", vars()).secret).toBe(first);
  expect(statSync(join(dir, "data", "secret")).mode & 0o777).toBe(0o600);
  expect(readFileSync(join(dir, "data", "secret"), "utf8")).toBe(first);
});

test.each(["live", "dev"] as const)("%s refuses the demo's secret and a short one", (mode) => {
  expect(() => readEnv(mode, vars({ SPRINGLINE_SECRET: DEMO_SECRET }))).toThrow(EnvError);
  expect(() => readEnv(mode, vars({ SPRINGLINE_SECRET: DEMO_SECRET }))).toThrow(/demo's secret is public/);
  expect(() => readEnv(mode, vars({ SPRINGLINE_SECRET: "x".repeat(31) }))).toThrow(/at least 32 characters/);
  expect(readEnv(mode, vars({ SPRINGLINE_SECRET: "x".repeat(32) })).secret).toBe("x".repeat(32));
});

test("the demo listens on loopback only, under its own secret, whatever the settings say", () => {
  const env = readEnv("demo", vars({ HOST: "0.0.0.0", SPRINGLINE_SECRET: "y".repeat(40) }));
  expect(env).toMatchObject({ mode: "demo", host: "127.0.0.1", secret: DEMO_SECRET });
});

test.each([
  ["PORT", "eighty", /^The setting PORT cannot be used/],
  ["PORT", "70000", /^The setting PORT cannot be used/],
  ["SPRINGLINE_URL", "plans.quay.example", /^The setting SPRINGLINE_URL cannot be used/],
  ["SPRINGLINE_URL", "ftp://quay.example", /^The setting SPRINGLINE_URL cannot be used/],
  ["SPRINGLINE_TRUST_PROXY", "perhaps", /^The setting SPRINGLINE_TRUST_PROXY cannot be used/],
])("%s=%s is refused by name", (name, value, sentence) => {
  expect(() => readEnv("live", vars({ [name]: value }))).toThrow(sentence);
});

test("the public address loses its path; the word false is not true", () => {
  const env = readEnv(
    "live",
    vars({ SPRINGLINE_URL: "https://plans.quay.example/x/", SPRINGLINE_TRUST_PROXY: "false" }),
  );
  expect(env).toMatchObject({ origin: "https://plans.quay.example", trustProxy: false });
});

/** What is asked of the keyboard is bundled once, and again when a file that it is made of is another one. */
import { spawnSync } from "node:child_process";
import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");
const KEPT = join(ROOT, "dist-commands", "plan.js");
const MADE_OF = join(ROOT, "dist-commands", "plan.json");

const check = () =>
  spawnSync(process.execPath, ["server/cli/command.mjs", "plan", "check", "-"], {
    cwd: ROOT,
    input: "{}",
    encoding: "utf8",
  });
const made = () => statSync(KEPT).mtimeMs;

test("bundled once; anew when one of its files has changed; the answer is the same", () => {
  const first = check();
  expect(first.status).toBe(2);
  expect(first.stderr.trim().split("\n")).toHaveLength(1);
  const was = made();
  expect(check()).toMatchObject({ status: 2, stderr: first.stderr });
  expect(made()).toBe(was);

  const marks = JSON.parse(readFileSync(MADE_OF, "utf8"));
  expect(Object.keys(marks)).toContain("lib/plan/schema.ts");
  writeFileSync(MADE_OF, JSON.stringify({ ...marks, "lib/plan/schema.ts": "of another day" }));
  expect(check()).toMatchObject({ status: 2, stderr: first.stderr });
  expect(made()).toBeGreaterThan(was);
  expect(JSON.parse(readFileSync(MADE_OF, "utf8"))).toEqual(marks);
});

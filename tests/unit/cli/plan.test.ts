/** The plan file command as a person or a script calls it: answers, exit codes, and one line for whatever goes wrong. */
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { balance } from "#lib/balance/balance.ts";
import { classClock } from "#lib/clock/clock.ts";
import { bothSides, examplePlan, move } from "#lib/rules/examples/build.ts";

const folder = mkdtempSync(join(tmpdir(), "plan-file-"));
afterAll(() => rmSync(folder, { recursive: true }));

const good = examplePlan([move("a", { seconds: 90 }), move("b", { seconds: 90 })], { lengthSeconds: 300 });
const uneven = examplePlan(bothSides("row", { seconds: 60 }), { lengthSeconds: 300 });
const files = {
  good: join(folder, "good.json"),
  uneven: join(folder, "uneven.json"),
  bad: join(folder, "bad.json"),
  binary: join(folder, "binary"),
  empty: join(folder, "empty.json"),
  missing: join(folder, "missing.json"),
};
const command = join(folder, "plan.mjs");

/** Bundled once, since the command is started often here; the last test starts it as a person does. */
beforeAll(async () => {
  await build({
    entryPoints: ["server/cli/plan.ts"],
    outfile: command,
    bundle: true,
    platform: "node",
    format: "esm",
    logLevel: "silent",
  });
  writeFileSync(files.good, JSON.stringify(good));
  writeFileSync(files.uneven, JSON.stringify(uneven));
  writeFileSync(files.bad, JSON.stringify({ ...good, lengthSeconds: 3 }));
  writeFileSync(files.binary, Buffer.from([0xff, 0xfe, 0x00, 0x80]));
  writeFileSync(files.empty, "");
});

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** `closeEarly`: nobody reads the answer, as with `| head -0`. */
function run(
  args: readonly string[],
  options: { input?: string; closeEarly?: boolean; program?: string } = {},
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(options.program ?? process.execPath, options.program ? args : [command, ...args]);
    let out = "";
    let err = "";
    if (options.closeEarly) child.stdout.destroy();
    else child.stdout.on("data", (chunk) => (out += String(chunk)));
    child.stderr.on("data", (chunk) => (err += String(chunk)));
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
    child.stdin.on("error", () => {});
    child.stdin.end(options.input ?? "");
  });
}

describe("answers", () => {
  it("check: exit 0 for a plan with nothing that must be mended", async () => {
    const { code, out, err } = await run(["check", files.good]);
    expect([code, err]).toEqual([0, ""]);
    expect(JSON.parse(out)).toEqual({ total: 300, length: 300, findings: [] });
  });

  it("check: exit 1 for a must, each finding with its five keys", async () => {
    const { code, out } = await run(["check", files.uneven]);
    expect(code).toBe(1);
    const { findings } = JSON.parse(out);
    expect(findings).toContainEqual({
      rule: "uneven-sides",
      level: "must",
      items: ["row-left", "row-right"],
      message: expect.stringContaining("15 s more"),
      values: expect.objectContaining({ differenceSeconds: 15 }),
    });
    for (const f of findings) expect(Object.keys(f).sort()).toEqual(["items", "level", "message", "rule", "values"]);
  });

  it("clock and balance: what the library computes, exit 0", async () => {
    const clock = await run(["clock", files.uneven]);
    expect(clock.code).toBe(0);
    expect(JSON.parse(clock.out)).toEqual(classClock(uneven));
    const sums = await run(["balance", files.uneven]);
    expect(sums.code).toBe(0);
    expect(JSON.parse(sums.out)).toEqual(balance(uneven));
  });

  it("reads standard input for -", async () => {
    const { code, out } = await run(["clock", "-"], { input: JSON.stringify(good) });
    expect(code).toBe(0);
    expect(JSON.parse(out).total).toBe(300);
  });

  it("ends quietly when nobody reads the answer", async () => {
    expect(await run(["clock", files.good], { closeEarly: true })).toMatchObject({ code: 0, err: "" });
  });
});

describe("one line and exit 2", () => {
  it.each<[string, string[], RegExp]>([
    ["no arguments", [], /check\|clock\|balance/],
    ["an unknown command", ["paint", files.good], /^There is no command "paint"; there are: check, clock, balance/],
    ["a command every object inherits", ["constructor", files.good], /^There is no command/],
    ["no file", ["check"], /^Name one plan file/],
    ["two files", ["check", files.good, files.good], /^Name one plan file/],
    ["a missing file", ["check", files.missing], /missing\.json: there is no such file$/],
    ["a folder", ["check", folder], /: this is a folder, not a plan file$/],
    ["a binary file", ["check", files.binary], /binary: the plan file should be UTF-8 text$/],
    ["an empty file", ["check", files.empty], /empty\.json: the plan file should be a JSON object, but it is empty$/],
    ["a bad file", ["clock", files.bad], /bad\.json: \/lengthSeconds should be a whole number from 60 to 14400$/],
  ])("%s", async (_what, args, line) => {
    const { code, out, err } = await run(args);
    expect([code, out]).toEqual([2, ""]);
    expect(err.endsWith("\n")).toBe(true);
    expect(err.trimEnd()).not.toContain("\n");
    expect(err.trimEnd()).toMatch(line);
  });
});

describe("as a person starts it", () => {
  it("npm run -s plan -- check FILE: the answer alone on standard output, and the exit code", async () => {
    const { code, out, err } = await run(["run", "-s", "plan", "--", "check", files.uneven], { program: "npm" });
    expect([code, err]).toEqual([1, ""]);
    expect(JSON.parse(out).length).toBe(300);
    const bad = await run(["run", "-s", "plan", "--", "clock", files.bad], { program: "npm" });
    expect([bad.code, bad.out, bad.err.trimEnd().split("\n").length]).toEqual([2, "", 1]);
  }, 120_000);
});

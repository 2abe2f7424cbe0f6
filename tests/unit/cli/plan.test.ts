/** The plan file command as a person or a script calls it: answers, exit codes, and one line for whatever goes wrong. */
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import webvtt from "node-webvtt";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { balance } from "#lib/balance/balance.ts";
import { classClock } from "#lib/clock/clock.ts";
import { cueTrack } from "#lib/cues/cue-track.ts";
import { loadRows } from "#lib/load/load.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { bothSides, exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";
import { type CommandEnd, commandHere } from "#tests/support/command-here.ts";

const folder = mkdtempSync(join(tmpdir(), "plan-file-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** 60 + 60 + 2 x 90, and 2 s in which the second set-up is told. */
const good = examplePlan([exampleMove("a", { seconds: 90 }), exampleMove("b", { seconds: 90 })], {
  lengthSeconds: 302,
  standards: { "silent-stretch": { limits: { maxSilenceSeconds: 90 } } },
});
const uneven = examplePlan(bothSides("row", { seconds: 60 }), { lengthSeconds: 300 });
/** One block of light, heavy, light; 60 + 60 + 3 x 45 + 2 changes of 9 s. */
const blocks = examplePlan(
  [
    { id: "arms", kind: "heading", title: "Arms" },
    exampleMove("a"),
    exampleMove("b", { springs: { heavy: 1 } }),
    exampleMove("c"),
    { id: "end", kind: "heading", title: "End" },
  ],
  { lengthSeconds: 300 },
);
const circle = {
  ...blocks,
  items: blocks.items.map((item) => (item.kind === "move" ? { ...item, after: ["a", "b"] } : item)),
};
const files = {
  good: join(folder, "good.json"),
  uneven: join(folder, "uneven.json"),
  blocks: join(folder, "blocks.json"),
  circle: join(folder, "circle.json"),
  short: join(folder, "short.json"),
  bad: join(folder, "bad.json"),
  binary: join(folder, "binary"),
  empty: join(folder, "empty.json"),
  missing: join(folder, "missing.json"),
};
const COMMAND = join(import.meta.dirname, "../../../server/cli/command.mjs");

beforeAll(() => {
  writeFileSync(files.good, JSON.stringify(good));
  writeFileSync(files.uneven, JSON.stringify(uneven));
  writeFileSync(files.blocks, JSON.stringify(blocks));
  writeFileSync(files.circle, JSON.stringify(circle));
  writeFileSync(files.short, JSON.stringify({ ...blocks, lengthSeconds: 150 }));
  writeFileSync(files.bad, JSON.stringify({ ...good, lengthSeconds: 3 }));
  writeFileSync(files.binary, Buffer.from([0xff, 0xfe, 0x00, 0x80]));
  writeFileSync(files.empty, "");
});

const run = (words: readonly string[], input?: string) => commandHere("plan", words, input);

/** In a process of its own. `closeEarly`: nobody reads the answer, as with `| head -0`. */
function start(
  program: string,
  words: readonly string[],
  { input = "", closeEarly = false } = {},
): Promise<CommandEnd> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, words);
    let out = "";
    let err = "";
    if (closeEarly) child.stdout.destroy();
    else child.stdout.on("data", (chunk) => (out += String(chunk)));
    child.stderr.on("data", (chunk) => (err += String(chunk)));
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
    child.stdin.on("error", () => {});
    child.stdin.end(input);
  });
}
const startPlan = (words: readonly string[], how?: { input?: string; closeEarly?: boolean }) =>
  start(process.execPath, [COMMAND, "plan", ...words], how);

describe("answers", () => {
  it("check: exit 0 for a plan with nothing that must be fixed", async () => {
    const { code, out, err } = await run(["check", files.good]);
    expect([code, err]).toEqual([0, ""]);
    expect(JSON.parse(out)).toEqual({ total: 302, length: 302, findings: [] });
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
    const { groups, push, pull, longest, setups } = balance(uneven);
    expect(JSON.parse(sums.out)).toEqual({ groups, push, pull, longest, setups });
  });

  it("fit: the whole plan with its new seconds, itself a plan file but for the answer", async () => {
    const { code, out, err } = await run(["fit", files.blocks]);
    expect([code, err]).toEqual([0, ""]);
    const { fit, ...fitted } = JSON.parse(out);
    // 300 - 120 - 18 = 162, of which the grid leaves 160: 55, 55 and 50, the first nearest to its wish of 45
    expect(fit).toEqual({
      total: 300,
      cost: 5.0,
      changed: [
        { item: "a", from: 45, to: 50 },
        { item: "b", from: 45, to: 55 },
        { item: "c", from: 45, to: 55 },
      ],
    });
    const parsed = parsePlan(fitted);
    expect(parsed.ok && classClock(parsed.plan).total).toBe(300);
    expect(fitted.closingSeconds).toBe(62);
  });

  it("fit: exit 1 and what stops it", async () => {
    const { code, out } = await run(["fit", files.short]);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toEqual({
      fit: {
        possible: false,
        shortest: 213,
        longest: 333,
        stoppedBy: ["a", "b", "c"],
        say: "Even with everything at its shortest the class takes 3 min 33 s, 63 s more than its slot.",
      },
    });
  });

  it("order: the block under a heading, named before or after the file", async () => {
    const answer = { before: 18, after: 9, proven: true, items: ["a", "c", "b"] };
    for (const args of [
      ["order", "arms", files.blocks],
      ["order", files.blocks, "arms"],
    ]) {
      const { code, out, err } = await run(args);
      expect([code, err]).toEqual([0, ""]);
      expect(JSON.parse(out)).toEqual(answer);
    }
  });

  it("order: exit 1 when its constraints contradict each other", async () => {
    const { code, out } = await run(["order", "arms", files.circle]);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toEqual({ possible: false, say: expect.stringMatching(/^Squat should come after itself/) });
  });

  it("load: one row a move item", async () => {
    const { code, out } = await run(["load", files.blocks]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({ rows: JSON.parse(JSON.stringify(loadRows(blocks))) });
  });

  it("acts: what is planned, told and missing, one row a move item", async () => {
    const { code, out } = await run(["acts", files.blocks]);
    expect(code).toBe(0);
    expect(JSON.parse(out).rows[1]).toEqual({
      item: "b",
      planned: [
        { act: "carriage-home" },
        { act: "spring-off", spring: "light", count: 1 },
        { act: "spring-on", spring: "heavy", count: 1 },
      ],
      told: [{ act: "springs-now", springs: { heavy: 1 }, line: 0, from: 0, to: 9, verdict: "told" }],
      missing: [{ act: "carriage-home" }],
    });
  });

  it("cues: every line but the crew's is said or named as dropped, in order of time", async () => {
    const { code, out, err } = await run(["cues", files.good]);
    expect([code, err]).toEqual([0, ""]);
    const track = JSON.parse(out);
    const { cues, dropped, ...talk } = cueTrack(good);
    const withoutPlace = <T extends object>(lines: readonly T[]) => lines.map((line) => ({ ...line, line: undefined }));
    expect(track).toEqual({ cues: withoutPlace(cues), dropped: withoutPlace(dropped), ...talk });
    expect(Object.keys(track.cues[0])).toEqual(["item", "kind", "from", "to", "text"]);
    expect(Object.keys(track)).toEqual(["cues", "dropped", "talkSeconds", "talkShare"]);
    const said = [...track.cues, ...track.dropped].map((line: { item: string; kind: string }) => line.item + line.kind);
    for (const item of ["a", "b"])
      for (const kind of ["setup", "breath", "safety", "easier", "heads-up", "count-in"])
        expect(said).toContain(item + kind);
    const starts = track.cues.map((cue: { from: number }) => cue.from);
    expect(starts).toEqual(starts.toSorted((a: number, b: number) => a - b));
  });

  it("cues --vtt: the same track, read back by a reader of WebVTT that is not ours", async () => {
    for (const args of [
      ["cues", "--vtt", files.good],
      ["cues", files.good, "--vtt"],
    ]) {
      const { code, out, err } = await run(args);
      expect([code, err]).toEqual([0, ""]);
      const read = webvtt.parse(out, { strict: true });
      expect([read.valid, read.errors]).toEqual([true, []]);
      expect(read.cues.map(({ start, end, text }) => [start, end, text])).toEqual(
        cueTrack(good).cues.map(({ from, to, text }) => [from, to, text]),
      );
    }
  });

  it("reads standard input for -", async () => {
    const { code, out } = await run(["clock", "-"], JSON.stringify(good));
    expect(code).toBe(0);
    expect(JSON.parse(out).total).toBe(302);
  });
});

describe("one line and exit 2", () => {
  it.each<[string, string[], RegExp]>([
    ["no arguments", [], /check\|clock\|fit\|order HEADING-ID\|cues \[--vtt\]\|load\|acts\|balance FILE/],
    [
      "an unknown command",
      ["paint", files.good],
      /^There is no command "paint"\. Use one of: check, clock, fit, order, cues, load, acts, balance$/,
    ],
    ["a command every object inherits", ["constructor", files.good], /^There is no command/],
    ["no file", ["check"], /^Name one plan file/],
    [
      "an option nobody knows",
      ["cues", "--srt", files.good],
      /^"cues" has no option "--srt"\. Its options are: --vtt$/,
    ],
    ["an option of another command", ["clock", files.good, "--vtt"], /^"clock" has no option "--vtt"$/],
    ["an option and no file", ["cues", "--vtt"], /^Name one plan file/],
    ["cues of a bad file", ["cues", "--vtt", files.bad], /bad\.json: \/lengthSeconds should be/],
    ["two files", ["check", files.good, files.good], /^Name one plan file/],
    ["a missing file", ["check", files.missing], /missing\.json: this file does not exist$/],
    ["a folder", ["check", folder], /: this is a folder, not a plan file$/],
    ["a binary file", ["check", files.binary], /binary: the plan file should be UTF-8 text$/],
    ["an empty file", ["check", files.empty], /empty\.json: the plan file should be a JSON object, but it is empty$/],
    ["a block nobody named", ["order", files.blocks], /blocks\.json: Name the block by .*\. Use one of: arms, end$/],
    ["a block that is not there", ["order", "legs", files.blocks], /There is no block "legs"\. Use one of: arms, end$/],
    ["an item instead of a heading", ["order", files.blocks, "a"], /There is no block "a"\. Use one of: arms, end$/],
    ["no blocks at all", ["order", "arms", files.good], /There is no block "arms"\. This plan has no headings$/],
    ["a block in no file", ["order", "arms", files.missing], /missing\.json: this file does not exist$/],
    ["a bad file", ["clock", files.bad], /bad\.json: \/lengthSeconds should be a whole number from 60 to 14400$/],
  ])("%s", async (_what, args, line) => {
    const { code, out, err } = await run(args);
    expect([code, out]).toEqual([2, ""]);
    expect(err.endsWith("\n")).toBe(true);
    expect(err.trimEnd()).not.toContain("\n");
    expect(err.trimEnd()).toMatch(line);
  });
});

describe("in a process of its own", () => {
  it("reads standard input for -, and ends quietly when nobody reads the answer", async () => {
    const { code, out } = await startPlan(["clock", "-"], { input: JSON.stringify(good) });
    expect([code, JSON.parse(out).total]).toEqual([0, 302]);
    expect(await startPlan(["clock", files.good], { closeEarly: true })).toMatchObject({ code: 0, err: "" });
  });

  it("npm run -s plan -- check FILE: the answer alone on standard output, and the exit code", async () => {
    const { code, out, err } = await start("npm", ["run", "-s", "plan", "--", "check", files.uneven]);
    expect([code, err]).toEqual([1, ""]);
    expect(JSON.parse(out).length).toBe(300);
    const bad = await start("npm", ["run", "-s", "plan", "--", "clock", files.bad]);
    expect([bad.code, bad.out, bad.err.trimEnd().split("\n").length]).toEqual([2, "", 1]);
  }, 120_000);
});

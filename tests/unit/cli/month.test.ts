/** The month file command as a person or a script calls it: answers, exit codes, and one line for whatever goes wrong. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { MonthFile } from "#lib/month/types.ts";
import { commandHere } from "#tests/support/command-here.ts";
import { smallMonth, smallPlan, smallSlot } from "#tests/support/small-month.ts";

const folder = mkdtempSync(join(tmpdir(), "month-file-"));
afterAll(() => rmSync(folder, { recursive: true }));
const file = (name: string): string => join(folder, name);

const early = (id: string, date: string, plan: string | null) => smallSlot(id, { date, plan, regulars: ["early"] });
/** Numbers that have to be rounded. */
const good: MonthFile = smallMonth({
  standards: { "little-variety": { level: "off" } },
  plans: {
    a: smallPlan({
      groups: { chest: 100.25, calves: 0.05 },
      moves: { x: 2, y: 1 },
      push: 0.04,
      metMinutes: 99.5,
      talkSeconds: 10.05,
    }),
    b: smallPlan({ moves: { x: 1, y: 1 }, groups: { chest: 3 } }),
  },
  slots: [
    early("one", "2026-04-06", "a"),
    early("two", "2026-04-07", "b"),
    { ...early("three", "2026-04-08", "a"), out: true },
  ],
});

beforeAll(() => {
  writeFileSync(file("good.json"), JSON.stringify(good));
  const clash = [...good.slots, smallSlot("four", { start: "10:15" })];
  writeFileSync(file("clash.json"), JSON.stringify({ ...good, slots: clash }));
  writeFileSync(file("bad.json"), JSON.stringify({ ...good, zone: "Mars/Olympus" }));
  writeFileSync(file("binary"), Buffer.from([0x7b, 0xff, 0xfe, 0x80, 0x7d]));
  writeFileSync(file("empty.json"), "");
});

const run = (words: readonly string[], input?: string) => commandHere("month", words, input);

describe("answers", () => {
  test("check: exit 0 without a must", async () => {
    const { code, out, err } = await run(["check", file("good.json")]);
    expect([code, err]).toEqual([0, ""]);
    const { counts, findings } = JSON.parse(out);
    expect(counts).toEqual({ must: 0, look: 1, info: 0 });
    const like = findings[0];
    expect(Object.keys(like)).toEqual(["id", "rule", "level", "slots", "message", "values"]);
    // Moves: 2 of 3; groups: 100.25 / 100.3; half of both.
    expect(like).toMatchObject({ id: "too-alike:early:one+two", slots: ["one", "two"], values: { likeness: 0.8331 } });
  });

  test("check: exit 1 for a must", async () => {
    const { code, out, err } = await run(["check", file("clash.json")]);
    expect([code, err]).toEqual([1, ""]);
    expect(JSON.parse(out).counts.must).toBe(2);
  });

  test("sums: rounded half away from zero, each group, coach and theme there", async () => {
    const { code, out } = await run(["sums", "-"], JSON.stringify(good));
    expect(code).toBe(0);
    const { slots, regulars, coaches, themes } = JSON.parse(out);
    expect(slots.map(({ id, out: taken }: { id: string; out: boolean }) => [id, taken])).toEqual([
      ["one", false],
      ["two", false],
      ["three", true],
    ]);
    expect(slots[0]).toEqual({
      id: "one",
      from: "2026-04-06T09:00:00Z",
      to: "2026-04-06T09:45:00Z",
      week: "2026-W15",
      out: false,
    });
    expect(regulars.early.days[0]).toEqual({
      ...{ date: "2026-04-06", groups: { chest: 100.3, calves: 0.1 }, push: 0, pull: 0, metMinutes: 99.5, heavy: [] },
    });
    // Moves 3 and 2 s: 5 / sqrt(3² + 2²), squared.
    expect(regulars.early.variety).toEqual({ distinct: 2, effective: 1.9231 });
    expect(regulars.early.weeks.map(({ week }: { week: string }) => week)).toEqual([
      "2026-W14",
      "2026-W15",
      "2026-W16",
      "2026-W17",
      "2026-W18",
    ]);
    expect(coaches.marta).toMatchObject({ minutes: 90, talkSeconds: 910.1 });
    expect(coaches.marta.days[0]).toMatchObject({ classes: 1, minutes: 45, talkSeconds: 10.1, gaps: [] });
    expect(themes).toEqual({});
    expect(out).not.toMatch(/-0\b(?!\d)|NaN/);
  });
});

test("fill: the month with the plans in it, and how it was filled", async () => {
  const slots = [...good.slots, smallSlot("four", { date: "2026-04-20", plan: null })];
  const { code, out, err } = await run(["fill", "-"], JSON.stringify({ ...good, slots }));
  expect([code, err]).toEqual([0, ""]);
  const { fill, ...month } = JSON.parse(out);
  expect(month).toEqual({ ...good, slots: slots.map((slot) => (slot.id === "four" ? { ...slot, plan: "a" } : slot)) });
  expect(fill).toMatchObject({ proven: true, gone: ["no-plan:four"], new: [] });
  expect(fill.before - fill.after).toBeCloseTo(10, 4);
  const others = [
    { plan: "b", cost: fill.after },
    { plan: null, cost: fill.before },
  ];
  expect(fill.slots).toEqual([{ slot: "four", plan: "a", others }]);
});

describe("refusals: exit 2, nothing on standard output, one line", () => {
  test.each([
    ["no command", [], /^Name a command: month check\|sums/],
    ["an unknown command", ["paint", "x"], /There is no command "paint"/],
    ["a name that every object has", ["constructor", "x"], /There is no command "constructor"/],
    ["no file", ["check"], /Name one month file/],
    ["two files", ["check", "a", "b"], /Name one month file/],
    ["an unknown option", ["check", "--all", "x"], /"check" has no option "--all"/],
    ["a file that is not there", ["sums", "none.json"], /^none.json: this file does not exist/],
    ["a folder", ["sums", folder], /this is a folder, not a month file/],
    ["bytes", ["check", file("binary")], /should be UTF-8 text/],
    ["nothing", ["check", file("empty.json")], /but it is empty/],
    ["a wrong month", ["check", file("bad.json")], /: \/zone should be the IANA name of a time zone/],
    ["something else on standard input", ["check", "-"], /^-: the month file should be/],
  ] as const)("%s", async (_, words, expected) => {
    const { code, out, err } = await run(words);
    expect([code, out]).toEqual([2, ""]);
    expect(err.trimEnd()).toMatch(expected);
    expect(err.trimEnd().split("\n")).toHaveLength(1);
  });
});

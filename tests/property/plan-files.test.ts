/**
 * Many damaged plan files (ten thousand in a long run), and files made to be slow (the longest of them whole in a long run),
 * through the reader and every command: an answer, or one line that names the place. Never an exception, never a hang.
 */
import { expect, test } from "vitest";
import { RULE_CRASHED } from "#lib/rules/findings.ts";
import { COMMAND_NAMES, runPlanCommand } from "#server/cli/commands.ts";
import { readPlanBytes } from "#server/cli/read-plan.ts";
import { type DamagedFile, damagedFiles } from "#tests/support/damaged-files.ts";
import { often } from "#tests/support/long.ts";
import { worstFiles } from "#tests/support/worst-files.ts";

const SEED = 10_000_019;
const FILES = often(120, 10_000);
/** Of the processor, so that a busy machine does not fail it. Far above what any file takes: nothing may hang. */
const HANGS_MS = 20_000;

// biome-ignore lint/suspicious/noControlCharactersInRegex: that there are none is what is looked at
const ONE_LINE = /^[^\u0000-\u001f\u007f-\u009f\u2028\u2029]{1,700}$/;
/** The file as a whole, or a JSON Pointer (RFC 6901), then what should be there. */
const PLACED = /^(the plan file \S|\/)/;

/** NaN and infinity are written as null, and only these two answers have a null of their own. */
const MAY_HAVE_NULL = ["clock", "load"];

function isSound(name: string, json: string): void {
  const answered: { total?: number } = JSON.parse(json);
  if (name === "clock" || name === "check") expect(answered.total).toBeTypeOf("number");
  if (name === "check") expect(json).not.toContain(RULE_CRASHED);
  else if (!MAY_HAVE_NULL.includes(name)) expect(/[:[,]null[,\]}]/.test(json)).toBe(false);
}

interface Seen {
  refused: number;
  answered: number;
}

function goesThrough(file: DamagedFile, seen: Seen): void {
  const began = process.cpuUsage();
  const read = readPlanBytes(file.bytes);
  if (!read.ok) {
    seen.refused++;
    expect(read.say).toMatch(ONE_LINE);
    expect(read.say).toMatch(PLACED);
  } else {
    seen.answered++;
    const headings = read.plan.items.filter((item) => item.kind === "heading").map((item) => item.id);
    for (const name of COMMAND_NAMES) {
      for (const asked of name === "order" ? [headings[0], headings.at(-1), "nowhere"] : [undefined]) {
        const given = runPlanCommand(name, read.plan, asked);
        if (given.ok) isSound(name, JSON.stringify("json" in given ? given.json : given.text));
        else expect(given.say).toMatch(ONE_LINE);
      }
    }
  }
  const { user, system } = process.cpuUsage(began);
  expect((user + system) / 1000).toBeLessThan(HANGS_MS);
}

/** Names the file, which its seed can make again. */
function through(files: Iterable<DamagedFile>): Seen {
  const seen: Seen = { refused: 0, answered: 0 };
  let n = 0;
  for (const file of files) {
    try {
      goesThrough(file, seen);
    } catch (error) {
      throw new Error(`seed ${SEED}, file ${n} (${file.what}): ${String(error)}`, { cause: error });
    }
    n++;
  }
  return seen;
}

test(`${FILES} files damaged at random, seed ${SEED}`, () => {
  const seen = through(damagedFiles(SEED, FILES));
  expect(seen.refused + seen.answered).toBe(FILES);
  expect(seen.refused).toBeGreaterThan(FILES / 2);
  expect(seen.answered).toBeGreaterThan(FILES / 20);
}, 300_000);

test("files designed to be slow", () => {
  const seen = through(worstFiles(often(1 / 6, 1)));
  expect(seen.answered).toBeGreaterThan(15);
  expect(seen.refused).toBeGreaterThan(15);
}, 300_000);

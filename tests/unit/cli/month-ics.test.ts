/** `npm run -s month -- ics`: octets on standard output, and one line with exit 2 for what cannot be. */
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { calendarOf } from "#lib/month/ics/feed.ts";
import { commandHere } from "#tests/support/command-here.ts";
import { feedMonth } from "#tests/support/feed-month.ts";

const COMMAND = join(import.meta.dirname, "../../../server/cli/command.mjs");
const input = JSON.stringify(feedMonth());
const run = (...words: string[]) => commandHere("month", ["ics", ...words], input);

describe("month ics", () => {
  test.each([
    [[], {}],
    [["--coach", "marta"], { coach: "marta" }],
    [["--room", "loft"], { room: "loft" }],
  ])("%j writes the calendar and nothing else", async (words, of) => {
    expect(await run(...words, "-")).toEqual({ code: 0, out: calendarOf(feedMonth(), of), err: "" });
  });

  test("in a process of its own, too", () => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [COMMAND, "month", "ics", "-"], { input });
    expect([status, stdout.toString(), stderr.toString()]).toEqual([0, calendarOf(feedMonth(), {}), ""]);
  });

  test.each([
    [["--coach", "nobody", "-"], /^-: this month has no coach with the id "nobody"\n$/],
    [["--room", "__proto__", "-"], /^-: this month has no room with the id "__proto__"\n$/],
    [["--room", "loft", "--coach", "marta", "-"], /^-: Give --coach or --room, not both\n$/],
    [["--room"], /^[^\n]+\n$/],
    [["--theme", "upper", "-"], /^[^\n]+\n$/],
  ])("%j is refused in one line", async (words, line) => {
    const { code, out, err } = await run(...words);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(line);
  });
});

/** `npm run -s month -- ics`: octets on standard output, and one line with exit 2 for what cannot be. */
import { spawnSync } from "node:child_process";
import { describe, expect, test } from "vitest";
import { calendarOf } from "#lib/month/ics/feed.ts";
import { feedMonth } from "#tests/support/feed-month.ts";

const run = (...words: string[]) => {
  const input = JSON.stringify(feedMonth());
  const { status, stdout, stderr } = spawnSync(process.execPath, ["server/cli/command.mjs", "month", "ics", ...words], {
    input,
  });
  return { status, stdout: stdout.toString(), stderr: stderr.toString() };
};

describe("month ics", () => {
  test.each([
    [[], {}],
    [["--coach", "marta"], { coach: "marta" }],
    [["--room", "loft"], { room: "loft" }],
  ])("%j writes the calendar and nothing else", (words, of) => {
    expect(run(...words, "-")).toEqual({ status: 0, stdout: calendarOf(feedMonth(), of), stderr: "" });
  });

  test.each([
    [["--coach", "nobody", "-"], /^-: this month has no coach with the id "nobody"\n$/],
    [["--room", "__proto__", "-"], /^-: this month has no room with the id "__proto__"\n$/],
    [["--room", "loft", "--coach", "marta", "-"], /^-: Give --coach or --room, not both\n$/],
    [["--room"], /^[^\n]+\n$/],
    [["--theme", "upper", "-"], /^[^\n]+\n$/],
  ])("%j is refused in one line", (words, line) => {
    const { status, stdout, stderr } = run(...words);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(line);
  });
});

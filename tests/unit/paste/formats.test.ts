/** One class in five forms becomes the same items. */
import { describe, expect, test } from "vitest";
import { BARS, CELLS, COMMAS, MESSAGE, SAME_CLASS, SEMICOLONS } from "./lists.ts";
import { judge, made, read } from "./studio.ts";

const lower = (rows: readonly string[]) => rows.map((row) => row.toLowerCase());

describe("one class in several forms", () => {
  test.each([
    ["a message", MESSAGE, "lines"],
    ["a spreadsheet's cells", CELLS, "tabs"],
    ["a file with commas", COMMAS, "commas"],
    ["a file with semicolons", SEMICOLONS, "semicolons"],
    ["a table with bars", BARS, "pipes"],
  ])("%s", (_say, text, form) => {
    expect(read(text).form).toBe(form);
    expect(lower(judge(text).map(made))).toEqual(lower(SAME_CLASS));
  });

  test("unknown columns are reported, and their words are left over", () => {
    const text = "Move\tTime\tTempo\nPlank hold\t30\t3-3\nPlank to pike\t40\t2-2";
    expect(read(text).remarks).toContain("“Tempo”: not a column of a class, so its words are left over.");
    expect(judge(text).map((row) => row.words)).toEqual(["Tempo: 3-3", "Tempo: 2-2"]);
  });

  test("a time column without a unit is reported once, for the whole list", () => {
    const reading = read("Move\tTime\nPlank hold\t30\nPlank to pike\t40");
    expect(reading.remarks.filter((r) => r.includes("no unit"))).toEqual([
      "The time column names no unit, so its numbers were read as seconds.",
    ]);
  });

  test("times that count up are read as the clock, which gives rows without a length one", () => {
    const rows = judge("0:00 Plank hold 1 light\n0:45 Plank to pike 45 s 1 light\n2:00 Kneeling row 1 light\n3:00 end");
    expect(rows.map(made)).toEqual([
      "plank-hold both 45 light1",
      "plank-pike both 45 light1",
      "row-kneeling both 60 light1",
      "skipped",
    ]);
    expect(rows[0]?.notes.join()).toContain("up to the next time on the clock");
  });

  test("a first column that numbers the rows is skipped, with a remark", () => {
    const text = "1\tPlank hold\t30 s\n2\tPlank to pike\t40 s\n3\tKneeling row\t50 s";
    expect(read(text).remarks).toEqual(["The first column only numbers the rows, so it was skipped."]);
    expect(judge(text).map((r) => r.seconds)).toEqual([30, 40, 50]);
  });

  test("a title above the column headings becomes a heading", () => {
    const rows = judge("Tuesday at seven\nMove\tTime\tSprings\nPlank hold\t30\t1 light\nKneeling row\t40\t1 light");
    expect(rows.map(made)).toEqual(["# Tuesday at seven", "plank-hold both 30 light1", "row-kneeling both 40 light1"]);
  });
});

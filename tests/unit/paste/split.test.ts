/** Rows and cells. Quoting: RFC 4180 "Common Format and MIME Type for CSV Files", section 2, rules 1 to 7 with its examples. */
import { describe, expect, test } from "vitest";
import { cleanText } from "#lib/paste/clean.ts";
import { offsetIn, splitDelimited } from "#lib/paste/delimited.ts";
import { isHeader } from "#lib/paste/header.ts";
import { splitRows } from "#lib/paste/split.ts";

const cells = (text: string, by: "," | ";" | "\t" = ",") =>
  splitDelimited(cleanText(text), by).map((row) => row.cells.map((cell) => cell.text.trim()));

describe("quoting as RFC 4180 says it", () => {
  test.each([
    [
      "rule 1: each record on a line",
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "rule 5: fields may be in quotes",
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ["rule 7: a quote inside is doubled", '"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
  ])("%s", (_say, text, expected) => {
    expect(cells(text)).toEqual(expected);
  });

  test("rule 6: line breaks and commas inside quotes", () => {
    const [first, second] = splitDelimited('"aaa","b\nb,b","ccc"\nzzz,yyy,xxx', ",");
    expect(first?.cells.map((c) => c.text)).toEqual(["aaa", "b\nb,b", "ccc"]);
    expect(second?.cells.map((c) => c.text)).toEqual(["zzz", "yyy", "xxx"]);
    expect(second?.line).toBe(3);
  });

  test("a quote that is never closed is an ordinary character", () => {
    expect(cells('Plank hold,"60 s\nKneeling row,40 s')).toEqual([
      ["Plank hold", '"60 s'],
      ["Kneeling row", "40 s"],
    ]);
    expect(cells('Plank hold\t40"\nRow\t50"', "\t")).toEqual([
      ["Plank hold", '40"'],
      ["Row", '50"'],
    ]);
  });

  test("offsets refer to the pasted text, doubled quotes included", () => {
    const text = 'x,"b""bb" ';
    const cell = splitDelimited(text, ",")[0]?.cells[1];
    expect(cell?.text).toBe('b"bb');
    if (cell) expect([0, 1, 2, 3].map((i) => text[offsetIn(cell, i)])).toEqual(["b", '"', "b", "b"]);
  });
});

describe("the form of a list", () => {
  const rowsOf = (text: string) => {
    const { form, rows } = splitRows(cleanText(text), ["light", "firm"]);
    return [form, rows.map((row) => row.cells.map((cell) => cell.text))];
  };
  test.each([
    ["lines, cells by two spaces", "Plank hold  60 s  2 light", ["lines", [["Plank hold", "60 s", "2 light"]]]],
    ["one space parts nothing", "Plank hold 60 s", ["lines", [["Plank hold 60 s"]]]],
    ["a comma in a line is no file", "Plank, hold it, 60 s", ["lines", [["Plank, hold it, 60 s"]]]],
    [
      "tabs",
      "a\t b\nc\td",
      [
        "tabs",
        [
          ["a", "b"],
          ["c", "d"],
        ],
      ],
    ],
    [
      "bars, the rule under the headings left out",
      "| a | b |\n|---|:-:|\n| c | |",
      [
        "pipes",
        [
          ["a", "b"],
          ["c", ""],
        ],
      ],
    ],
    [
      "commas where the first row has headings",
      "Move,Time\na,b",
      [
        "commas",
        [
          ["Move", "Time"],
          ["a", "b"],
        ],
      ],
    ],
    ["blank lines and rules are no rows", "a\n\n-----\n \nb", ["lines", [["a"], ["b"]]]],
  ])("%s", (_say, text, expected) => {
    expect(rowsOf(text)).toEqual(expected);
  });

  test("line numbers are those of the pasted text", () => {
    expect(splitRows("\n\na\n\nb", []).rows.map((row) => row.line)).toEqual([3, 5]);
  });
});

describe("headings of columns", () => {
  test.each([
    [["Move", "Time", "Springs"], true],
    [["Exercise", "Duration (min)"], true],
    [["", "Name", "L/R", "light"], true],
    [["What", "Secs", "Load", "Which side", "Coaching points"], true],
    [["Plank hold", "Kneeling row"], false],
    [["Plank hold", "60 s", "side"], false],
    [["Notes", "Block"], false],
    [["Move"], false],
  ])("%j: %s", (row, expected) => {
    expect(isHeader(row, ["light"])).toBe(expected);
  });
});

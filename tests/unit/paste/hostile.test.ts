/** Whatever is pasted: never an exception, never a wait, never an item that a plan could not hold. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NO_ANSWERS } from "#lib/paste/answers.ts";
import { cleanText } from "#lib/paste/clean.ts";
import { draftsToItems } from "#lib/paste/drafts.ts";
import { judgeRows } from "#lib/paste/judge.ts";
import { MAX_ROWS, MAX_TEXT } from "#lib/paste/limits.ts";
import { readPaste } from "#lib/paste/read-paste.ts";
import { itemSchema } from "#lib/plan/schema.ts";
import { often } from "#tests/support/long.ts";
import { judge, judgeOne, made, STUDIO } from "./studio.ts";

/** Milliseconds of this process's own work, so that a busy machine does not fail it. As a rule it takes a tenth of it. */
const PATIENCE = 3000;

function within(text: string) {
  const start = process.cpuUsage();
  const reading = readPaste(text, STUDIO);
  const rows = reading.ok ? judgeRows(reading.rows, NO_ANSWERS, STUDIO) : [];
  const { user, system } = process.cpuUsage(start);
  expect((user + system) / 1000).toBeLessThan(PATIENCE);
  return { reading, rows };
}

describe("too much", () => {
  test("100,000 lines are refused in one sentence", () => {
    const { reading } = within("Plank to pike 60 s\n".repeat(100_000));
    expect(reading).toEqual({
      ok: false,
      say: "This text has 1,900,000 characters; up to 100,000 can be read at once. Paste one class, or a part of it.",
    });
  });
  test("one line of a megabyte is refused", () => {
    expect(within("a".repeat(1_000_000)).reading.ok).toBe(false);
  });
  test("rows over the limit are left out and counted", () => {
    const { reading } = within("Plank hold 30 s\n".repeat(MAX_ROWS + 20));
    expect(reading).toMatchObject({ ok: true, rows: { length: MAX_ROWS } });
    expect(reading.ok && reading.remarks).toEqual([
      "Only the first 300 rows are read; 20 more rows are left out. Add these, then paste the rest.",
    ]);
  });
  test("a paragraph is a doubt, not a row", () => {
    expect(judgeOne(`Plank hold ${"and so on ".repeat(100)}`).doubts[0]?.say).toContain("too long");
  });
});

describe("texts made to be slow to read", () => {
  const misspelt = (i: number) => `knaeling rwo prsss ${i} bicepz curlz swuat hndels plnak pikke sdie ${i}s 2 lihgt`;
  test.each([
    ["one word", "a".repeat(MAX_TEXT)],
    ["empty lines", "\n".repeat(MAX_TEXT)],
    ["tabs", "\t".repeat(MAX_TEXT)],
    ["commas", ",".repeat(MAX_TEXT)],
    ["semicolons between letters", "a;".repeat(MAX_TEXT / 2)],
    ["open quotes", '\t"'.repeat(MAX_TEXT / 2)],
    ["quotes", '"'.repeat(MAX_TEXT)],
    ["quoted cells never closed", `move,time\n${'"a,"'.repeat(MAX_TEXT / 5)}`],
    ["numbers", "1 ".repeat(MAX_TEXT / 2)],
    ["times", "1:00".repeat(MAX_TEXT / 4)],
    ["multiplications", "1x".repeat(MAX_TEXT / 2)],
    ["bullets", `${"* ".repeat(250)}\n`.repeat(190)],
    ["spaces", `${" ".repeat(590)}a\n`.repeat(160)],
    ["nearly words", Array.from({ length: MAX_ROWS }, (_, i) => misspelt(i)).join("\n")],
  ])("%s", (_say, text) => {
    within(text);
  });
});

describe("odd characters", () => {
  test("control characters separate words and are dropped", () => {
    expect(made(judgeOne("Plank hold\u0000\u0007 30 s\u001b 1 light"))).toBe("plank-hold both 30 light1");
  });
  test("direction marks do not reach a plan", () => {
    expect(made(judgeOne("\u202EWarm\u202C \u2067up\u2069:"))).toBe("# Warm up");
  });
  test("another script becomes a doubt that quotes it, not a crash", () => {
    expect(judgeOne("تمرين الجسر 60 s").doubts[0]?.say).toBe(
      "“تمرين الجسر” is not in the library. Choose a move, or skip the row.",
    );
  });
  test("signs and emoji around a row change nothing", () => {
    expect(made(judgeOne("🔥 Plank hold 🏋️‍♀️ 30 s 1 light 💪"))).toBe("plank-hold both 30 light1");
  });
  test("a formula is never evaluated", () => {
    for (const cell of ["=SUM(B2:B9)", "=1+1", "@SUM(A1)", "+SUM(A1)", "#REF!", "#N/A"]) {
      expect(judgeOne(`${cell}\t60 s`).state, cell).toBe("doubt");
    }
  });
  test("names of JavaScript's own properties are ordinary names", () => {
    for (const name of ["constructor", "__proto__", "toString"]) {
      expect(judgeOne(`${name} 60 s 1 light`).doubts[0]?.say, name).toContain("is not in the library");
    }
  });
});

const scrap = fc.constantFrom(
  ...["Plank hold", "Kneeling row", "Side lunge", "leg press", "60 s", "1:00", "45-60 s", "2x45 s", "90", "8 reps"],
  ...["2 light", "1 L + 1 M", "2 blue", "no springs", "L", "each side", "alternating", "facing back", "10 cm further"],
  ...[
    "\t",
    "  ",
    ",",
    ";",
    "|",
    "\n",
    "\r\n",
    '"',
    "- ",
    "1. ",
    "# ",
    ":",
    "(",
    ")",
    "=",
    "\u0000",
    "\u202E",
    "🙂",
    "½",
  ],
  ...["Move\tTime\tSprings\n", "Block;Exercise;min\n", "Water", "TOTAL", "repeat other side"],
);
const list = fc.oneof(
  fc.array(scrap, { maxLength: 40 }).map((parts) => parts.join("")),
  fc.array(scrap, { maxLength: 40 }).map((parts) => parts.join(" ")),
  fc.string({ unit: "binary", maxLength: 200 }),
);

describe("any list at all", () => {
  test("makes only items that a plan file may hold, and none while in doubt", () => {
    fc.assert(
      fc.property(list, (text) => {
        let n = 0;
        for (const row of judge(text)) {
          for (const item of draftsToItems(row.drafts, () => `item-${n++}`)) {
            const checked = itemSchema.safeParse(item);
            expect(checked.error?.issues ?? []).toEqual([]);
          }
          if (row.state !== "ready") expect(row.drafts).toEqual([]);
          if (row.state === "doubt") expect(row.doubts.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: often(100, 400) },
    );
  });

  test("every row and every piece of it is in the pasted text, in order and without overlap", () => {
    fc.assert(
      fc.property(list, (text) => {
        const reading = readPaste(text, STUDIO);
        for (const row of reading.ok ? reading.rows : []) {
          expect(row.from).toBeGreaterThanOrEqual(0);
          expect(row.to).toBeLessThanOrEqual(text.length);
          row.pieces.forEach((piece, i) => {
            expect(piece.to).toBeGreaterThan(piece.from);
            expect(piece.from).toBeGreaterThanOrEqual(row.pieces[i - 1]?.to ?? 0);
          });
        }
      }),
      { numRuns: often(75, 300) },
    );
  });

  test("the same text is read the same way, and cleaning moves no character", () => {
    fc.assert(
      fc.property(list, (text) => {
        expect(readPaste(text, STUDIO)).toEqual(readPaste(text, STUDIO));
        expect(cleanText(text)).toHaveLength(text.length);
      }),
      { numRuns: often(40, 100) },
    );
  });
});

import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { fitNames, NAME_TYPE, type NameBlock, numberBox } from "#lib/lanes/name-fit.ts";
import { textWidth, wrapText } from "#lib/lanes/text-width.ts";

const block = (name: string, width: number, x = 0, number = "1"): NameBlock => ({ name, width, x, number });

describe("wrapText", () => {
  test.each([
    ["Kneeling lat pull-down", 70, 3, ["Kneeling lat", "pull-down"]],
    ["Kneeling lat pull-down", 62, 3, ["Kneeling", "lat pull-", "down"]],
    ["Kneeling", 30, 9, null],
    ["a b c d", 12, 3, null],
    ["", 40, 1, [""]],
  ])("%s in %d px and %d lines", (text, width, most, lines) => {
    expect(wrapText(text, width, most, 12)).toEqual(lines);
  });

  it("loses no word and no line is too wide", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ minLength: 1, maxLength: 9 })),
        fc.integer({ min: 60, max: 300 }),
        (words, width) => {
          const text = words.join(" ");
          const lines = wrapText(text, width, 50, 13);
          if (lines === null) return;
          expect(lines.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
          for (const line of lines) expect(textWidth(line, 13)).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});

describe("fitNames", () => {
  it("writes across where there is room, upright where it is narrow", () => {
    const { fits, numbered } = fitNames([block("Chest press", 120), block("Kneeling trunk rotation", 36)]);
    expect(fits.map((fit) => fit.way)).toEqual(["across", "up"]);
    expect(numbered).toBe(false);
  });

  it("uses numbers that do not touch when not even that fits", () => {
    const blocks = Array.from({ length: 40 }, (_, i) => block("Kneeling trunk rotation", 6, i * 7, String(i + 1)));
    const { fits, numbered, height } = fitNames(blocks);
    expect(numbered).toBe(true);
    const ends = new Map<number, number>();
    for (const [i, fit] of fits.entries()) {
      if (fit.way !== "number") throw new Error("a name in six pixels");
      const box = numberBox(blocks[i] ?? block("", 0));
      expect(box.x).toBeGreaterThanOrEqual(ends.get(fit.row) ?? Number.NEGATIVE_INFINITY);
      ends.set(fit.row, box.x + box.width);
      expect((fit.row + 1) * NAME_TYPE.line).toBeLessThanOrEqual(height);
    }
  });

  it("writes every name whole and inside its block", () => {
    const blocks = fc.array(fc.tuple(fc.string({ maxLength: 40 }), fc.integer({ min: 0, max: 300 })), {
      maxLength: 60,
    });
    fc.assert(
      fc.property(blocks, (list) => {
        const all = list.map(([name, width], i) => block(name, width, i * 310, String(i)));
        const { fits, height, numbered } = fitNames(all);
        expect(fits).toHaveLength(all.length);
        expect(numbered).toBe(fits.some((fit) => fit.way === "number"));
        for (const [i, fit] of fits.entries()) {
          if (fit.way === "number") continue;
          const { name, width } = all[i] ?? block("", 0);
          expect(fit.lines.join("").replace(/\s/g, "")).toBe(name.replace(/\s/g, ""));
          const across = fit.way === "across";
          expect(fit.lines.length * (across ? NAME_TYPE.line : NAME_TYPE.upLine)).toBeLessThanOrEqual(
            across ? height : Math.max(width, 0),
          );
          for (const line of fit.lines)
            expect(textWidth(line, NAME_TYPE.size)).toBeLessThanOrEqual(across ? width : height);
        }
      }),
    );
  });
});

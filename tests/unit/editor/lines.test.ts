import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nextKind } from "#lib/editor/next-kind.ts";
import { linesFromText, MAX_LINE_LENGTH, MAX_PASTED_LENGTH, MAX_PASTED_LINES } from "#lib/editor/pasted.ts";
import { CUE_KINDS } from "#lib/plan/schema.ts";

describe("pasted text", () => {
  const kinds = (text: string) => linesFromText(text).lines.map((l) => l.kind);
  const words = (text: string) => linesFromText(text).lines.map((l) => l.pieces);

  it("turns each line of text into one cue line, without blank lines, for any line ending", () => {
    expect(words("Knees down\r\n\r\n  Long neck  \rBreathe")).toEqual([
      [{ text: "Knees down" }],
      [{ text: "Long neck" }],
      [{ text: "Breathe" }],
    ]);
  });
  it("takes the kind from a word before a colon and keeps any other word", () => {
    expect(
      kinds("Safety: sore knees stand\nset-up: handles\nSET UP: springs\nEasier – knees down\nCrew: wide"),
    ).toEqual(["safety", "setup", "setup", "easier", "crew"]);
    expect(kinds("Remember: long neck\nElbows close\nform:")).toEqual([null, null, null]);
    expect(words("Remember: long neck")).toEqual([[{ text: "Remember: long neck" }]]);
    expect(words("Safety: sore knees stand")).toEqual([[{ text: "sore knees stand" }]]);
  });
  it("keeps the spaces around a few words pasted into a sentence", () => {
    expect(words(" and hold ")).toEqual([[{ text: " and hold " }]]);
    expect(words("  \t ")).toEqual([]);
  });
  it("turns known names into live fields and leaves other braces as they are", () => {
    expect(words("Next: {next-move} on {springs}")).toEqual([
      [{ text: "Next: " }, { field: "next-move" }, { text: " on " }, { field: "springs" }],
    ]);
    expect(words("{nobody} knows")).toEqual([[{ text: "{nobody} knows" }]]);
  });
  it("breaks a line that is too long at a space, without losing a word", () => {
    const long = "longer ".repeat(400).trim();
    const { lines, leftOut } = linesFromText(long);
    expect(lines.length).toBe(2);
    expect(leftOut).toBe(0);
    expect(lines.map((l) => l.pieces.map((p) => ("text" in p ? p.text : "")).join("")).join(" ")).toBe(long);
  });
  it("stays bounded and says how much was left out", () => {
    const book = linesFromText("word\n".repeat(2_000_000));
    expect(book.lines.length).toBe(MAX_PASTED_LINES);
    expect(book.leftOut).toBeGreaterThan(1_000_000);
    expect(linesFromText("x".repeat(MAX_PASTED_LENGTH + 7)).leftOut).toBe(7);
  });
  it("never makes an empty text, an overlong line or a lone surrogate", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 300 }), fc.integer({ min: 1, max: 300 }), (text, times) => {
        for (const l of linesFromText(text.repeat(times)).lines) {
          expect(l.pieces.length).toBeGreaterThan(0);
          for (const p of l.pieces) {
            if (!("text" in p)) continue;
            expect(p.text.length).toBeGreaterThan(0);
            expect(p.text.length).toBeLessThanOrEqual(MAX_LINE_LENGTH);
            expect(p.text).not.toMatch(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/);
          }
        }
      }),
      { seed: 2, numRuns: 150 },
    );
  });
});

describe("the kind of the next line", () => {
  it("is the next one in the usual order that the script lacks", () => {
    expect(nextKind({ kind: "setup", present: ["setup"] })).toBe("start");
    expect(nextKind({ kind: "safety", present: ["setup", "safety"] })).toBe("start");
    expect(nextKind({ kind: "start", present: ["setup", "start", "breath"] })).toBe("form");
    expect(nextKind({ kind: "form", present: ["form"] })).toBe("focus");
  });
  it("is form when none is missing, and crew after crew", () => {
    expect(nextKind({ kind: "harder", present: [...CUE_KINDS] })).toBe("form");
    expect(nextKind({ kind: "crew", present: ["crew"] })).toBe("crew");
  });
});

/** What people type loses what nobody can see, and nothing else. */
import { describe, expect, it } from "vitest";
import { typedLine, typedText } from "#server/base/typed-text.ts";
import { personName } from "#server/people/fields.ts";

describe("typed text", () => {
  const stored = (typed: string) => typedText.parse(typed);
  it("keeps its lines, accents, emoji and joiners", () => {
    for (const text of ["One\n\ntwo\tthree", "Zoë Åkesson", "👩‍🏫 ❤️", "می‌خواهم", "עברית", "e\u0301"])
      expect(stored(text)).toBe(text);
  });
  it("loses controls, directions and zero widths", () => {
    expect(stored("a\u0000b\u202Ec\u200Bd\u2066e\u00ADf")).toBe("abcdef");
    expect(stored("one\r\ntwo\rthree\u2028four")).toBe("one\ntwo\nthree\nfour");
  });
  it("is empty when nobody sees any of it", () => {
    for (const text of ["\u200B", "\u0000\u0000", "\u200D", "\uFE0F", "\u2800", "\u3164", "\u0301", "\u00A0"])
      expect(stored(text)).toBe("");
  });
  it("is one line where it is a name", () => {
    expect(typedLine.parse(" Ines\r\nDuarte\u202E ")).toBe("Ines Duarte");
    expect(personName.safeParse("\u202E\u200B").success).toBe(false);
  });
});

import { describe, expect, it } from "vitest";
import { calendarOf } from "#lib/month/ics/feed.ts";
import { contentLine, textValue } from "#lib/month/ics/text.ts";
import { feedMonth } from "#tests/support/feed-month.ts";
import { readByIcalJs } from "#tests/support/read-feed.ts";

const octets = (text: string) => Buffer.byteLength(text, "utf8");
const linesOf = (folded: string) => folded.replace(/\r\n$/, "").split("\r\n");
const unfold = (folded: string) => folded.replaceAll("\r\n ", "").replace(/\r\n$/, "");

describe("folding", () => {
  it("leaves a line of 75 octets whole and folds one of 76", () => {
    expect(contentLine("x".repeat(75))).toBe(`${"x".repeat(75)}\r\n`);
    expect(contentLine("x".repeat(76))).toBe(`${"x".repeat(75)}\r\n x\r\n`);
    expect(contentLine("x".repeat(149))).toBe(`${"x".repeat(75)}\r\n ${"x".repeat(74)}\r\n`);
    expect(contentLine("x".repeat(150))).toBe(`${"x".repeat(75)}\r\n ${"x".repeat(74)}\r\n x\r\n`);
    expect(contentLine("")).toBe("\r\n");
  });

  it.each([
    ["two octets", "é"],
    ["three octets", "—"],
    ["four octets, a pair of UTF-16 units", "🧘"],
    ["a combining mark", "e\u0301"],
    ["several people joined into one", "👩‍👩‍👧"],
    ["words and marks", "São João, 7 ½ — ok "],
  ])("never breaks %s", (_, text) => {
    for (let before = 0; before < 80; before++) {
      const line = "x".repeat(before) + text.repeat(40);
      const folded = contentLine(line);
      expect(unfold(folded)).toBe(line);
      expect(Buffer.from(folded, "utf8").toString("utf8")).toBe(folded);
      const lines = linesOf(folded);
      for (const [i, one] of lines.entries()) {
        expect(octets(one)).toBeLessThanOrEqual(75);
        // As many as fit: the first character of the next line would have been too much.
        const [next] = lines[i + 1]?.slice(1) ?? [];
        if (next !== undefined) expect(octets(one) + octets(next)).toBeGreaterThan(75);
      }
    }
  });
});

describe("a text value", () => {
  it("has one spelling of a line break", () =>
    expect(["a\r\nb", "a\rb", "a\nb"].map(textValue)).toEqual(["a\\nb", "a\\nb", "a\\nb"]));

  it("counts CR CR LF as two line breaks", () => expect(textValue("a\r\r\nb")).toBe("a\\n\\nb"));

  it("escapes a backslash first", () => expect(textValue("a\\n;b,c")).toBe("a\\\\n\\;b\\,c"));

  it("leaves out control characters but the tab", () => {
    const all = Array.from({ length: 32 }, (_, i) => String.fromCharCode(i)).join("");
    expect(textValue(`${all}\u007fz`)).toBe("\t\\n\\nz");
  });

  it("comes back as it was", () => {
    for (const name of [
      "a\\n",
      "\\",
      "\\\\;",
      ";,;",
      'say "now": go',
      "tab\there",
      "line\nbreak",
      "Ω — 🧘‍♀️",
      "a\\,b",
    ]) {
      const feed = calendarOf(feedMonth({ rooms: { harbour: { name, machines: 1, equipment: "rail" } } }), {});
      expect(readByIcalJs(feed).events[0]?.location).toBe(name);
    }
  });

  it("cannot begin a line of its own", () => {
    const name = "Marta\r\nEND:VEVENT\r\nBEGIN:VEVENT\nX-MADE-UP:1\rATTACH:file:///etc/passwd";
    const feed = calendarOf(feedMonth({ title: name, coaches: { marta: { name, roles: [] } } }), {});
    expect(feed.match(/^BEGIN:VEVENT/gm)).toHaveLength(1);
    expect(unfold(feed)).not.toMatch(/^(X-MADE-UP|ATTACH)/m);
    expect(feed.split("\r\n").join("")).not.toMatch(/[\r\n]/);
  });
});

/** Words that are looked for, and the words of a text. */
import { expect, test } from "vitest";
import { findPages, pageIndex } from "#lib/find/known-pages.ts";
import { findableLines, MOST_LINE_LETTERS } from "#lib/find/plan-lines.ts";
import { excerptAround, hasAll, markedParts, soughtWords, textWords } from "#lib/find/words.ts";
import { exampleMove, examplePlan } from "#lib/rules/define/example-plan.ts";

const finds = (asked: string, text: string) => {
  const words = soughtWords(asked);
  return words.length > 0 && hasAll(textWords(text), words);
};

test.each([
  ["row", "Kneeling rows", true],
  ["ROW kneel", "Kneeling rows", true],
  ["row", "Narrow stance", false],
  ["elevee", "Planche élevée", true],
  ["ÉLEVÉ", "planche elevee", true],
  ["colour", "Pick a color", true],
  ["color", "Pick a colour", true],
  ["colou", "Pick a colour", true],
  ["centre", "Find your center", true],
  ["neutralise", "neutralize the spine", true],
  ["set-up", "Set up early", true],
  ["springs", "one spring", true],
  ["r", "row", false],
  ["plank r", "Plank, right side", true],
  ["plank, left", "Plank, right side", false],
  ["…", "…", false],
])("“%s” in “%s”: %s", (asked, text, found) => expect(finds(asked, text)).toBe(found));

test("the words that were looked for are marked as they are written, and nothing is lost", () => {
  const parts = markedParts("Élevez: rows, then a row’s end", soughtWords("row eleve"));
  expect(parts.filter(({ found }) => found).map(({ text }) => text)).toEqual(["Élevez", "rows", "row’s"]);
  expect(parts.map(({ text }) => text).join("")).toBe("Élevez: rows, then a row’s end");
});

test("a line's worth is cut between words, around the first that was looked for", () => {
  const long = `${"and on ".repeat(30)}breathe out as you ${"go on ".repeat(30)}`;
  const cut = excerptAround(long, soughtWords("breathe"));
  expect(cut.length).toBeLessThan(125);
  expect(cut).toMatch(/^… .*\bbreathe out\b.* …$/);
  expect(excerptAround("  short\nline ", soughtWords("line"))).toBe("short line");
});

test("a plan's lines are its title, theme, items, what is said as it is read, and notes", () => {
  const move = exampleMove("one", { script: [{ kind: "form", text: "{side} side: long neck" }] });
  const plan = examplePlan([move], {
    ...{ title: "Harbour", theme: { name: "Pulling" }, notes: "bring chalk\n\nask Ines" },
  });
  const lines = findableLines(plan);
  expect(lines.map(({ place }) => place)).toEqual(["title", "theme", "item", "said", "notes", "notes"]);
  expect(lines[3]?.text).not.toContain("{");
  expect(lines[3]).toMatchObject({ itemId: "one", line: 0 });
  expect(lines[5]).toMatchObject({ text: "ask Ines", line: 2 });
});

test("a plan of any size has a bounded number of letters", () => {
  const notes = `${"x".repeat(5000)}\n`.repeat(19);
  const lines = findableLines(examplePlan([], { notes }));
  expect(Math.max(...lines.map(({ text }) => text.length))).toBe(MOST_LINE_LETTERS);
});

test("known pages: the title's first word, then the title, then the rest", () => {
  const index = pageIndex([
    { href: "/a", title: "Other", text: "about springs" },
    { href: "/b", title: "Light springs", text: "" },
    { href: "/c", title: "Springs on", text: "" },
    { href: "/d", title: "Straps", text: "", more: "springs" },
  ]);
  expect(findPages(index, soughtWords("spring"), 3).map(({ href }) => href)).toEqual(["/c", "/b", "/a"]);
  expect(findPages(index, [], 3)).toEqual([]);
});

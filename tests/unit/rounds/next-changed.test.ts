/** Which changed plate N and B lead to, what the list of keys shows to whom, and how far is scrolled to show a plate. */
import { describe, expect, test } from "vitest";
import { scrollToShow } from "#app/_rail/bring-into-view.ts";
import { isAnyLeft, nextChanged } from "#app/_session/changes-shown.ts";
import { planKeys } from "#app/_session/plan-commands.ts";

const places = ["a", "b", "c", "d", "e"];
const marks = (read: Readonly<Record<string, boolean | null>>) => ({
  order: Object.keys(read),
  marks: new Map(
    Object.entries(read).map(([id, is]) => [id, { word: "changed" as const, read: is, goneAbove: [], goneBelow: [] }]),
  ),
});

describe("from changed plate to changed plate", () => {
  const now = marks({ a: true, c: false, e: false });
  test("N goes to what is not read, from the top again", () => {
    expect(nextChanged(now, places, null, 1)).toBe("c");
    expect(nextChanged(now, places, "c", 1)).toBe("e");
    expect(nextChanged(now, places, "e", 1)).toBe("c");
  });
  test("B goes to the one before, read or not", () => {
    expect(nextChanged(now, places, "c", -1)).toBe("a");
    expect(nextChanged(now, places, "a", -1)).toBe("e");
    expect(nextChanged(now, places, "d", -1)).toBe("c");
  });
  test("with all read, or none to be read, N goes through all and never stays put", () => {
    for (const is of [true, null]) {
      const all = marks({ a: is, c: is });
      expect([null, "a", "b", "c"].map((at) => nextChanged(all, places, at, 1))).toEqual(["a", "c", "c", "a"]);
    }
    expect(nextChanged(marks({ c: true }), places, "c", 1)).toBe("c");
    expect(nextChanged(marks({}), places, "c", 1)).toBeUndefined();
  });
  test("says whether another is left", () => {
    expect(isAnyLeft(now, "c")).toBe(true);
    expect(isAnyLeft(marks({ a: true, c: false }), "c")).toBe(false);
  });
});

describe("the list of keys", () => {
  const lines = (may: { writes: boolean; leads: boolean }) =>
    planKeys(may).parts.flatMap(({ title, keys }) => [title, ...keys.map(([, help]) => help)]);
  test("shows a reader only what a reader can do, and one word for an item", () => {
    const reader = lines({ writes: false, leads: false }).join("\n");
    for (const word of ["take the item out", "duplicate", "fix it", "In a script", "While you drag", "as read and"])
      expect(reader).not.toContain(word);
    expect(reader).toContain("to the next changed item");
    expect(lines({ writes: true, leads: true }).join("\n")).not.toMatch(/\bplate/);
    expect(planKeys({ writes: false, leads: true }).note).toBeUndefined();
  });
  test("says where N, B and M work", () => {
    const part = planKeys({ writes: false, leads: true }).parts.find(({ title }) => /no text is typed/.test(title));
    expect(part?.keys.map(([key]) => key)).toEqual(["N", "B", "M"]);
  });
});

test("a plate is brought into view with its head first, however tall it is", () => {
  const height = 800;
  expect(scrollToShow({ top: -318, bottom: 1700, height })).toBe(-318); // its head was over the screen, its end under it
  expect(scrollToShow({ top: -900, bottom: -100, height })).toBe(-900);
  expect(scrollToShow({ top: 500, bottom: 3000, height })).toBe(500);
  expect(scrollToShow({ top: 500, bottom: 900, height })).toBe(100);
  expect(scrollToShow({ top: 10, bottom: 700, height })).toBe(0);
});

/** What is said of copied classes counts each of them once, as what it is. */
import { expect, it } from "vitest";
import { copiedWords, takenOverWords } from "#app/_month/copy-words.ts";

const n = (length: number) => Array.from({ length }, (_, i) => `n${i}`);
const add = (length: number) => n(length).map(() => ({ date: "2026-12-01", start: "07:00", minutes: 30 }));

it("says what was added, and apart what stood there or had no day", () => {
  expect(copiedWords({ added: n(1), changed: [], there: 9, noDay: 0 })).toBe("1 class added. 9 stood there already.");
  expect(copiedWords({ added: n(31), changed: n(2), there: 5, noDay: 1 })).toBe(
    "31 classes added, 2 changed as in the week copied. 5 stood there already. 1 has no day in this month.",
  );
  expect(copiedWords({ added: [], changed: [], there: 36, noDay: 0 })).toBe("No class added. 36 stood there already.");
});

it("says before taking a month over what would come", () => {
  const name = (id: string) => ({ a: "Arms", l: "Legs" })[id] ?? "";
  const themes = [
    { from: "a", to: "l" },
    { from: "l", to: "a" },
  ];
  expect(takenOverWords({ add: add(31), there: 5, noDay: 0, themes, themesLost: 0 }, name)).toBe(
    "31 classes would be added; 5 stand there already and stay as they are. Themes: Arms becomes Legs, Legs becomes Arms.",
  );
  expect(takenOverWords({ add: add(2), there: 1, noDay: 2, themes: [], themesLost: 1 }, name)).toBe(
    "2 classes would be added; 1 stands there already and stays as it is. 2 have no day in this month. 1 class would come without a theme: this month does not have it.",
  );
});

/** The type of a crew sheet: smaller with more words, never too large for the page, the smallest when nothing fits. */
import { expect, test } from "vitest";
import type { CrewMove } from "#lib/card/crew-sheet.ts";
import { CREW_COLUMNS, CREW_TYPES, crewType } from "#lib/card/crew-type.ts";

const move = (words: number): CrewMove => ({
  kind: "move",
  id: "m",
  number: 1,
  title: "Kneeling row",
  side: null,
  at: 0,
  start: 0,
  seconds: 60,
  facing: "front",
  turns: false,
  springs: [{ id: "light", label: "light", count: 1, stiffnessNPerMm: 0.1 }],
  newSprings: false,
  changes: [],
  lines: [Array.from({ length: words }, () => "wide").join(" ")],
  voice: { seconds: 10, quiet: null },
});
const typeOf = (rows: number, words = 0) => crewType(Array.from({ length: rows }, () => move(words)));

test("shrinks with more rows and words, down to the smallest type", () => {
  expect(typeOf(5)).toBe(CREW_TYPES[0]);
  const types = [5, 20, 30, 40, 50, 60, 70, 200].map((rows) => typeOf(rows));
  expect(types).toEqual([...types].sort((a, b) => b - a));
  expect(typeOf(200)).toBe(6);
  expect(typeOf(30, 30)).toBeLessThan(typeOf(30));
});

test("a one-line row is as tall as its type, so the page holds as many rows as promised", () => {
  // 45 rows and two edges at 7.7 pt: 47 x (7.7 x 25.4 / 72 x 1.22 + 0.9) = 198 mm, and 40 mm for the rest: below 261.
  // At 9.6 pt they are 236 mm, and 276 mm with the rest.
  expect(typeOf(45)).toBeGreaterThanOrEqual(7.7);
  expect(typeOf(45)).toBeLessThan(9.6);
});

test("the columns fill the page and no more", () => {
  const { time, ...rest } = CREW_COLUMNS;
  expect(Object.values(rest).reduce((sum, part) => sum + part, 2 * time)).toBeCloseTo(1, 2);
});

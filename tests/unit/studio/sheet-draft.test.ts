/** Readings as they are typed: units, half a row, the doubtful one, and what can be kept. */

import { expect, test } from "vitest";
import { niceTicks } from "#app/studio/_readings/nice-ticks.ts";
import {
  readSheetDraft as readSheetOf,
  type SheetDraft,
  sheetDraftOf,
  withRow,
} from "#app/studio/_readings/sheet-draft.ts";
import { STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { NEWTONS_PER_KGF } from "#lib/formats/units.ts";
import { fromNewtons, type ReadingSheet, sheetSchema } from "#lib/springs/readings.ts";

const readSheet = (draft: SheetDraft) => readSheetOf(draft, 900, STANDARD_FORMATS);

const typed = (pairs: readonly (readonly [string, string])[], units: Partial<SheetDraft> = {}): SheetDraft => ({
  travelUnit: "cm",
  forceUnit: "N",
  rows: pairs.map(([travel, force], row) => ({ row, travel, force, leftOut: false })),
  ...units,
});
/** 20 N + 0.2 N/mm, but for the fourth, which is 30 N too much. */
const FIVE = typed([
  ["10", "40"],
  ["20", "60"],
  ["30", "80"],
  ["40", "130"],
  ["50", "120"],
]);

test("numbers with a point or a comma, in the units they were typed in", () => {
  const read = readSheet(
    typed(
      [
        ["10,5", "4.2"],
        ["", ""],
      ],
      { forceUnit: "kgf" },
    ),
  );
  expect(read.sheet).toEqual({
    travelUnit: "cm",
    forceUnit: "kgf",
    readings: [{ travelMm: 105, newtons: 4.2 * NEWTONS_PER_KGF }],
  });
  expect(sheetSchema.safeParse(read.sheet).success).toBe(true);
});

test("the doubtful reading is named by its row, and left out the others lie on a line", () => {
  const read = readSheet(FIVE);
  expect(read.doubtful).toBe(3);
  expect(read.fit.say).toMatch(/^Reading 4 /);
  const without = readSheet({ ...FIVE, rows: FIVE.rows.map((r) => (r.row === 3 ? { ...r, leftOut: true } : r)) });
  expect(without.doubtful).toBeNull();
  expect(without.fit).toMatchObject({ ok: true, straight: true });
  expect(without.line?.stiffnessNPerMm).toBeCloseTo(0.2, 12);
  expect(without.line?.preloadN).toBeCloseTo(20, 9);
  expect(without.counted).toEqual([0, 1, 2, 4]);
  expect(without.sheet?.readings[3]).toEqual({ travelMm: 400, newtons: 130, leftOut: true });
});

test("with a row left out or empty before it the doubtful one keeps its own row", () => {
  const rows = [
    { row: 7, travel: "5", force: "90", leftOut: true },
    { row: 8, travel: "", force: "", leftOut: false },
    ...FIVE.rows,
  ];
  const read = readSheet({ ...FIVE, rows });
  expect(read.doubtful).toBe(3);
  expect(read.counted.indexOf(3)).toBe(3);
});

test("a half or a wrong row keeps the sheet from being kept and says why; two readings give no line", () => {
  const read = readSheet(
    typed([
      ["10", "40"],
      ["20", ""],
      ["thirty", "80"],
      ["40", "-1"],
      ["900", "1"],
    ]),
  );
  expect(read.sheet).toBeNull();
  expect([...read.rows.values()].map((r) => r.kind)).toEqual(["reading", "half", "wrong", "wrong", "wrong"]);
  expect(read.rows.get(4)).toMatchObject({
    say: "This room’s carriage travels 90 cm. Check the number and its unit.",
  });
  expect(read.line).toBeNull();
  expect(readSheet(typed([["10", "40"], ["20", "60"]])).fit).toMatchObject({ ok: false }); // biome-ignore format: two readings
});

test("a row that the room cannot have is told in the unit it was typed in, the line in the reader's", () => {
  const pounds = readSheetOf(typed([["36", "1200"]], { travelUnit: "in", forceUnit: "lbf" }), 900, STANDARD_FORMATS);
  expect(pounds.rows.get(0)).toMatchObject({
    say: "This room’s carriage travels 35.43 in. Check the number and its unit.",
  });
  const strong = readSheetOf(typed([["3", "1200"]], { travelUnit: "in", forceUnit: "lbf" }), 900, STANDARD_FORMATS);
  expect(strong.rows.get(0)).toMatchObject({ say: "No spring pulls more than 1124 lbf. Check the unit." });
  const { fit } = readSheetOf(FIVE, 900, { force: "lbf", length: "in" });
  expect(fit.say).toMatch(/^Reading 4 \(15\.75 in, 29\.23 lbf\) /);
});

test("what was kept opens as it was typed, to the digit", () => {
  const sheet: ReadingSheet = {
    travelUnit: "cm",
    forceUnit: "kgf",
    readings: Array.from({ length: 99 }, (_, i) => ({
      travelMm: (i + 1) * 0.1 * 10,
      newtons: (i + 1) * 0.1 * NEWTONS_PER_KGF,
      ...(i % 2 === 0 ? { leftOut: true as const } : {}),
    })),
  };
  const draft = sheetDraftOf(sheet, STANDARD_FORMATS);
  expect(draft.rows.map((r) => Number(r.force))).toEqual(sheet.readings.map((_, i) => (i + 1) / 10));
  expect(fromNewtons(12.3 * NEWTONS_PER_KGF, "kgf")).toBe(12.3);
  expect(draft.rows[0]?.leftOut).toBe(true);
  expect(sheetDraftOf(null, STANDARD_FORMATS).rows).toHaveLength(4);
  expect(withRow(withRow(draft)).rows).toHaveLength(100);
});

test("axes end on round numbers above the largest, from 0, with few steps", () => {
  expect(niceTicks(10)).toEqual([0, 2, 4, 6, 8, 10]);
  expect(niceTicks(83)).toEqual([0, 20, 40, 60, 80, 100]);
  for (const most of [0.3, 1, 7, 9.99, 41, 120, 4999]) {
    const ticks = niceTicks(most);
    expect(ticks.at(-1)).toBeGreaterThanOrEqual(most);
    expect(ticks.length).toBeLessThanOrEqual(8);
    expect(ticks.length).toBeGreaterThanOrEqual(4);
  }
});

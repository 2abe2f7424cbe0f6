/** Readings as people copy them: units in names or beside numbers, commas or points, lines that are no reading. */
import { expect, test } from "vitest";
import { pastedDraft } from "#app/studio/_readings/pasted-draft.ts";
import { toMm, toNewtons } from "#lib/formats/units.ts";
import { readPastedReadings } from "#lib/springs/pasted-readings.ts";
import { scaleWords } from "#lib/springs/scale-words.ts";

const pairs = (text: string) => {
  const { rows, travelUnit, forceUnit } = readPastedReadings(text);
  return { units: [travelUnit, forceUnit], read: rows.map(({ travel, force, say }) => say ?? [travel, force]) };
};

test("from a spreadsheet with names and units above", () => {
  expect(pairs("Travel (cm)\tScale (kg)\n10\t3.4\n20\t4.6\n")).toEqual({
    units: ["cm", "kgf"],
    read: [
      ["10", "3.4"],
      ["20", "4.6"],
    ],
  });
});

test("columns in the other order, with one that counts the lines", () => {
  expect(pairs("No.;Force, lb;Travel, inches\n1;7,5;4\n2;9,25;8").read).toEqual([
    ["4", "7.5"],
    ["8", "9.25"],
  ]);
  expect(pairs("No.;Force, lb;Travel, inches\n1;7,5;4").units).toEqual(["in", "lbf"]);
});

test("units beside the numbers, with decimal commas, as in a message", () => {
  expect(pairs("10,5 cm 4,2 kg\n20 cm  5,25kg")).toEqual({
    units: ["cm", "kgf"],
    read: [
      ["10.5", "4.2"],
      ["20", "5.25"],
    ],
  });
  expect(pairs('4" 12 N\n8" 15.5 N').units).toEqual(["in", "N"]);
});

test("a comma-separated file, and lists with a comma and a space", () => {
  expect(pairs("travel mm,force N\n100,33.4\n200,44.9").read).toEqual([
    ["100", "33.4"],
    ["200", "44.9"],
  ]);
  expect(pairs("10, 4.2\n20, 5.1").read).toEqual([
    ["10", "4.2"],
    ["20", "5.1"],
  ]);
});

test("nothing that names a unit leaves the choice to the person", () => {
  expect(pairs("10\t4\n20\t5").units).toEqual([null, null]);
});

test("a line that is no reading says why, and the others are read", () => {
  const { read } = pairs("cm\tkg\n10\t4\n20\tabout six\n\n30\n40 in\t8\nthe end\t\n50\t9");
  expect(read).toEqual([
    ["10", "4"],
    "The force is missing, or is no number.",
    "The force is missing, or is no number.",
    "This line is in another unit than the others. Convert it first, or paste it by itself.",
    "This line has no numbers. It is left out.",
    ["50", "9"],
  ]);
  const lines = readPastedReadings("10\t4\n\n20\tx").rows.map(({ line }) => line);
  expect(lines).toEqual([1, 3]);
});

test("nothing and nonsense are read as nothing", () => {
  for (const text of ["", "\n\n", "hello", "\t\t;;", "—".repeat(5000)])
    expect(readPastedReadings(text).rows.every(({ say }) => say !== null)).toBe(true);
});

test("the draft that is taken keeps the good lines, in the units found or chosen", () => {
  const found = readPastedReadings("Travel in\tlb\n4\t7.5\n8\tx\n12\t11");
  const draft = pastedDraft(found, { travelUnit: "cm", forceUnit: "kgf" });
  expect(draft).toMatchObject({ travelUnit: "in", forceUnit: "lbf" });
  expect(draft.rows.map(({ travel, force }) => [travel, force])).toEqual([
    ["4", "7.5"],
    ["12", "11"],
  ]);
  expect(pastedDraft(readPastedReadings("1\t2"), { travelUnit: "mm", forceUnit: "N" })).toMatchObject({
    travelUnit: "mm",
    forceUnit: "N",
  });
});

// The international inch and pound: 25.4 mm, 0.45359237 kg; 1 lbf as in NIST SP 811 (2008), appendix B.8.
test("inches and pounds are the international ones", () => {
  expect(toMm(4, "in")).toBeCloseTo(101.6, 12);
  expect(toNewtons(1, "lbf")).toBeCloseTo(0.45359237 * 9.80665, 12);
  // Rounded where a reader sees it.
  expect([scaleWords("lbf"), scaleWords("kgf"), scaleWords("N")]).toEqual([
    expect.stringMatching(/1 lbf = 4\.448 N\.$/),
    expect.stringMatching(/1 kgf = 9\.80665 N\.$/),
    null,
  ]);
});

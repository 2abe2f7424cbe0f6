/**
 * Units against: NIST Special Publication 811 (2008), appendix B.8 (pound-force 4.4482216152605 N, kilogram-force 9.80665 N, inch
 * 2.54 cm, pound 0.45359237 kg, pound-force per inch 175.1268 N/m).
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FORCE_UNITS, type Formats, LENGTH_UNITS, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import {
  distanceRange,
  distanceWords,
  forceNumber,
  forceRange,
  forceWords,
  massWords,
  offsetsIn,
  offsetWords,
  perMassWords,
  smallLength,
  stiffnessNumber,
  stiffnessWords,
  toKg,
  toMm,
  toNewtons,
  toNPerMm,
  typedForce,
  typedLength,
} from "#lib/formats/units.ts";

const US: Formats = { ...STANDARD_FORMATS, force: "lbf", length: "in" };
const KG: Formats = { ...STANDARD_FORMATS, force: "kgf" };

describe("conversions", () => {
  test("are those of NIST SP 811, B.8, to the last digit", () => {
    expect([toNewtons(1, "lbf"), toNewtons(1, "kgf"), toNewtons(1, "N")]).toEqual([4.4482216152605, 9.80665, 1]);
    expect([toMm(1, "in"), toMm(1, "cm"), toMm(0.1, "in")]).toEqual([25.4, 10, 2.54]);
    expect(toKg(1, US)).toBe(0.45359237);
    expect(toNPerMm(1, "lbf") * 1000).toBeCloseTo(175.1268, 4);
    expect(stiffnessNumber(0.1751268, US)).toBe(1);
  });

  test("are worded to a whole newton, a tenth of a kilogram, pound, centimetre or inch", () => {
    expect([forceWords(120.4, STANDARD_FORMATS), forceWords(120.4, KG), forceWords(120.4, US)]).toEqual([
      "120 N",
      "12.3 kgf",
      "27.1 lbf",
    ]);
    expect([
      distanceWords(80, STANDARD_FORMATS),
      distanceWords(80, US),
      distanceRange([0, toMm(15.75, "in")], US),
    ]).toEqual(["8 cm", "3.1 in", "0 to 15.75 in"]);
    expect(forceRange([10, 160], KG)).toBe("1.02 to 16.32 kgf");
    expect([massWords(90, STANDARD_FORMATS), massWords(90, KG), massWords(90, US)]).toEqual([
      "90 kg",
      "90 kg",
      "198 lb",
    ]);
    expect([smallLength(100, STANDARD_FORMATS), smallLength(100, US)]).toEqual(["100 mm", "3.94 in"]);
    // 9.80665 N for a kilogram is a pound-force for a pound: the same standard fall.
    expect([perMassWords(9.80665, KG), perMassWords(9.80665, US)]).toEqual([
      "1 kgf for each kilogram",
      "1 lbf for each pound",
    ]);
    // 0.121 N/mm: 121 / 175.1268 lbf per inch.
    expect(stiffnessWords(0.121, US)).toBe("0.691 lbf per in");
  });

  test("say of a start the same way in both units, and put a canonical sentence into inches", () => {
    expect([offsetWords(80, STANDARD_FORMATS), offsetWords(-25, US)]).toEqual([
      "8 cm further from the anchor",
      "1 in nearer to the anchor",
    ]);
    const words = "kneel, 8 cm further from the anchor, hands down";
    expect(offsetsIn(words, STANDARD_FORMATS)).toBe(words);
    expect(offsetsIn(words, US)).toBe("kneel, 3.1 in further from the anchor, hands down");
  });
});

describe("what is typed", () => {
  const typed = fc.integer({ min: 0, max: 50_000 }).map((n) => n / 100);
  const forces = fc.constantFrom(...FORCE_UNITS);
  const lengths = fc.constantFrom(...LENGTH_UNITS);

  test("comes back as it was typed, and typed again is stored as the very same number", () => {
    fc.assert(
      fc.property(typed, forces, lengths, (value, force, length) => {
        const f = { ...STANDARD_FORMATS, force, length };
        const newtons = toNewtons(value, force);
        expect(typedForce(newtons, f)).toBe(value);
        expect(toNewtons(typedForce(newtons, f), force)).toBe(newtons);
        const mm = toMm(value, length);
        expect(typedLength(mm, f)).toBe(value);
        expect(toMm(typedLength(mm, f), length)).toBe(mm);
      }),
    );
  });

  test("a larger force never reads smaller, whatever the unit", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: 0, max: 5000, noNaN: true }),
        forces,
        (a, b, force) => {
          const f = { ...STANDARD_FORMATS, force };
          if (a <= b) expect(forceNumber(a, f)).toBeLessThanOrEqual(forceNumber(b, f));
        },
      ),
    );
  });
});

/**
 * Forces, lengths and masses in the reader's units. What is stored, sent and signed is in newtons, millimetres and kilograms;
 * only what is shown and typed is converted. A value that was not typed anew is never converted back (`typed.ts`).
 */
import { halfAway, withoutNoise } from "#lib/numbers/round.ts";
import type { ForceUnit, Formats, LengthUnit } from "./formats.ts";

/** Newtons in one kilogram-force: the standard acceleration of free fall, 9.80665 m/s2 (3rd CGPM 1901; ISO 80000-4). */
export const NEWTONS_PER_KGF = 9.80665;
/** Newtons in one pound-force: 0.45359237 kg (the avoirdupois pound of 1959) under that acceleration; NIST SP 811, B.8. */
export const NEWTONS_PER_LBF = 4.4482216152605;
const KG_PER_LB = 0.45359237;
/** NIST SP 811, B.8: exact since 1959. */
export const MM_PER_INCH = 25.4;

interface UnitRule {
  /** Stored units in one. */
  readonly per: number;
  /** Decimals to read, and where a finer difference matters: beside a limit, in a field. */
  readonly decimals: readonly [toRead: number, fine: number];
}

/**
 * Whole newtons, since springs measured with a luggage scale are no more exact; the others to a tenth, which is the next step
 * that is not coarser.
 */
const FORCE: Readonly<Record<ForceUnit, UnitRule>> = {
  N: { per: 1, decimals: [0, 1] },
  kgf: { per: NEWTONS_PER_KGF, decimals: [1, 2] },
  lbf: { per: NEWTONS_PER_LBF, decimals: [1, 2] },
};
const LENGTH: Readonly<Record<LengthUnit, UnitRule>> = {
  cm: { per: 10, decimals: [1, 2] },
  in: { per: MM_PER_INCH, decimals: [1, 2] },
};

export const FORCE_NAMES: Readonly<Record<ForceUnit, string>> = { N: "newtons", kgf: "kilograms", lbf: "pounds" };
export const LENGTH_NAMES: Readonly<Record<LengthUnit, string>> = { cm: "centimetres", in: "inches" };

type Forces = Pick<Formats, "force">;
type Lengths = Pick<Formats, "length">;

const shown = (value: number, { per, decimals }: UnitRule, fine: boolean): number =>
  halfAway(withoutNoise(value / per), decimals[fine ? 1 : 0]);

/** Newtons as a number of the reader's unit, rounded. */
export const forceNumber = (newtons: number, { force }: Forces, fine = false): number =>
  shown(newtons, FORCE[force], fine);
/** "120 N", "12.2 kgf", "27 lbf" */
export const forceWords = (newtons: number, f: Forces, fine = false): string =>
  `${forceNumber(newtons, f, fine)} ${f.force}`;
/** "10 to 160 N" */
export const forceRange = ([low, high]: readonly [number, number], f: Forces): string =>
  low === high ? forceWords(low, f, true) : `${forceNumber(low, f, true)} to ${forceWords(high, f, true)}`;

/** Millimetres as a number of the reader's unit, rounded. */
export const distanceNumber = (mm: number, { length }: Lengths, fine = false): number =>
  shown(mm, LENGTH[length], fine);
/** "8 cm", "3.1 in" */
export const distanceWords = (mm: number, f: Lengths, fine = false): string =>
  `${distanceNumber(mm, f, fine)} ${f.length}`;
/** "0 to 40 cm", "0 to 15.75 in": finely, since both ends were typed. */
export const distanceRange = ([from, to]: readonly [number, number], f: Lengths): string =>
  `${distanceNumber(from, f, true)} to ${distanceWords(to, f, true)}`;
/** Along the travel of the carriage: "8 cm further from the anchor", "2.5 cm nearer to the anchor" below 0. */
export const offsetWords = (mm: number, f: Lengths): string =>
  `${distanceWords(Math.abs(mm), f)} ${mm > 0 ? "further from" : "nearer to"} the anchor`;

/** The same, and "8 cm further" alone, as it stands in canonical words, for this reader. */
export const offsetsIn = (words: string, f: Lengths): string =>
  f.length === "cm"
    ? words
    : words.replace(
        /(\d+(?:\.\d+)?) cm (?=(?:further|nearer)\b)/g,
        (_, cm: string) => `${distanceWords(10 * Number(cm), f)} `,
      );

/** A person's mass goes with the unit of forces: "90 kg", "198 lb". */
const massUnit = ({ force }: Forces): "kg" | "lb" => (force === "lbf" ? "lb" : "kg");
const massPer = (f: Forces): number => (massUnit(f) === "lb" ? KG_PER_LB : 1);
const massNumber = (kg: number, f: Forces): number =>
  halfAway(withoutNoise(kg / massPer(f)), massUnit(f) === "lb" ? 0 : 1);
export const massWords = (kg: number, f: Forces): string => `${massNumber(kg, f)} ${massUnit(f)}`;
/** "5.3 N for each kilogram", of newtons for a kilogram. */
export const perMassWords = (nPerKg: number, f: Forces): string =>
  f.force === "lbf"
    ? `${forceNumber(nPerKg * KG_PER_LB, f, true)} lbf for each pound`
    : `${forceNumber(nPerKg, f, true)} ${f.force} for each kilogram`;
/** Kilograms of a mass in the reader's unit. */
export const toKg = (typed: number, f: Forces): number => exact(typed * massPer(f));

/** A spring's stiffness, given in N/mm: "0.121 N per mm", "0.123 kgf per cm", "0.691 lbf per in". */
export function stiffnessWords(nPerMm: number, f: Forces): string {
  const { per, unit } = STIFFNESS[f.force];
  return `${(nPerMm / per).toFixed(3)} ${unit}`;
}

const STIFFNESS: Readonly<Record<ForceUnit, { readonly per: number; readonly unit: string }>> = {
  N: { per: 1, unit: "N per mm" },
  kgf: { per: NEWTONS_PER_KGF / 10, unit: "kgf per cm" },
  lbf: { per: NEWTONS_PER_LBF / MM_PER_INCH, unit: "lbf per in" },
};
export const stiffnessUnit = ({ force }: Forces): string => STIFFNESS[force].unit;

/** All the digits that a number can hold for sure, so that 0.1 in is 2.54 mm and not 2.5399999999999996. */
const exact = (x: number): number => Number(x.toPrecision(15));

/** Newtons of a number in the reader's unit. */
export const toNewtons = (typed: number, unit: ForceUnit): number => exact(typed * FORCE[unit].per);
/** Millimetres, likewise. */
export const toMm = (typed: number, unit: LengthUnit | "mm"): number =>
  exact(typed * (unit === "mm" ? 1 : LENGTH[unit].per));

/** Small lengths, which are typed in millimetres or in inches. */
export const smallUnit = ({ length }: Lengths): "mm" | "in" => (length === "in" ? "in" : "mm");
export const smallNumber = (mm: number, f: Lengths): number =>
  f.length === "in" ? distanceNumber(mm, f, true) : halfAway(withoutNoise(mm), 1);
/** "100 mm", "3.94 in" */
export const smallLength = (mm: number, f: Lengths): string => `${smallNumber(mm, f)} ${smallUnit(f)}`;
/**
 * What a field shows of a stored value: as it is where it is in the field's unit, else so that it reads well. Not for converting
 * back: a form keeps the stored value until another one is typed.
 */
export const typedForce = (newtons: number, f: Forces): number =>
  f.force === "N" ? newtons : forceNumber(newtons, f, true);
export const typedLength = (mm: number, f: Lengths): number =>
  f.length === "cm" ? Number((mm / 10).toPrecision(12)) : distanceNumber(mm, f, true);

/** What limits of rules are stored in and their readers may have other units for. */
export type StoredUnit = "N" | "mm" | "kg";

export function unitFor(stored: StoredUnit, f: Forces & Lengths): string {
  if (stored === "kg") return massUnit(f);
  return stored === "N" ? f.force : f.length;
}
/** What a field shows of a stored value, likewise not for converting back. */
export function typedValue(value: number, stored: StoredUnit, f: Forces & Lengths): number {
  if (stored === "kg") return massUnit(f) === "kg" ? value : halfAway(withoutNoise(value / KG_PER_LB), 2);
  return stored === "N" ? typedForce(value, f) : typedLength(value, f);
}
/** A stored value to read, where a finer difference matters: "120 N", "121.25 lb". */
export const storedWords = (value: number, stored: StoredUnit, f: Forces & Lengths): string =>
  `${halfAway(withoutNoise(typedValue(value, stored, f)), 2)} ${unitFor(stored, f)}`;
/** The stored value of what was typed. */
export function storedValue(typed: number, stored: StoredUnit, f: Forces & Lengths): number {
  if (stored === "kg") return toKg(typed, f);
  return stored === "N" ? toNewtons(typed, f.force) : toMm(typed, f.length);
}

/** N/mm, likewise. */
export const toNPerMm = (typed: number, unit: ForceUnit): number => exact(typed * STIFFNESS[unit].per);
/** N/mm as a number of the reader's unit, for a field. */
export const stiffnessNumber = (nPerMm: number, { force }: Forces): number =>
  halfAway(withoutNoise(nPerMm / STIFFNESS[force].per), 4);

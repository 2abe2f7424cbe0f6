/** The name of a rule's limit: what its number is stored in, and the name in words. */
import type { StoredUnit } from "#lib/formats/units.ts";

/** What a number is stored in. A share (0..1) is shown and typed as a percentage, `StoredUnit` in the reader's units. */
export type LimitUnit = StoredUnit | "s" | "min" | "h" | "%" | "MET" | "";

const UNITS: readonly (readonly [RegExp, LimitUnit])[] = [
  [/Seconds(Day)?$|^seconds$/, "s"],
  [/Minutes(Day)?$/, "min"],
  [/Hours$/, "h"],
  [/Share$|^(likeMost|riseMost)$/, "%"],
  [/N$/, "N"],
  [/Mm$/, "mm"],
  [/Kg$/, "kg"],
  [/Met$/, "MET"],
];
export const limitUnitOf = (name: string): LimitUnit => UNITS.find(([ending]) => ending.test(name))?.[1] ?? "";

export const isStoredUnit = (unit: LimitUnit): unit is StoredUnit => unit === "N" || unit === "mm" || unit === "kg";

/** "maxOverSeconds" as "max over". */
export function limitNameWords(name: string): string {
  const bare = name.replace(/(Seconds|Share|Count|Mm|Kg|Met|N)$/, "");
  return (bare || name).replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
}

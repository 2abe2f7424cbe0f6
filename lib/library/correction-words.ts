/** The correction of a move's figure in words: what each value does, and all of them as a fact. */
import { type Formats, STANDARD_FORMATS } from "#lib/formats/formats.ts";
import { smallLength } from "#lib/formats/units.ts";
import type { PhaseCorrection } from "#lib/plan/figure-correction.ts";
import type { Move } from "#lib/plan/schema.ts";

export const PHASES = ["start", "end"] as const;
export type Phase = (typeof PHASES)[number];

export type CorrectionKey = keyof PhaseCorrection;

/** In the order of the form, as what happens to the body where the value is above 0. */
export const CORRECTION_WORDS: Readonly<Record<CorrectionKey, string>> = {
  leanDeg: "pelvis forward",
  bendDeg: "back bent forward",
  asideDeg: "bent to the working side",
  turnDeg: "turned to the working side",
  nodDeg: "head bent forward",
  alongMm: "trunk away from the front",
  upMm: "trunk up",
};
export const CORRECTION_KEYS = Object.keys(CORRECTION_WORDS) as readonly CorrectionKey[]; // exactly the keys of the record above

export const isLength = (key: CorrectionKey): boolean => key.endsWith("Mm");

/** "start: back bent forward 5°; end: trunk up 20 mm". Empty for none. */
export function correctionWords({ figure }: Pick<Move, "figure">): string {
  return PHASES.flatMap((phase) => {
    const by = figure?.[phase] ?? {};
    const said = CORRECTION_KEYS.flatMap((key) => {
      const value = by[key];
      if (value === undefined) return [];
      return [`${CORRECTION_WORDS[key]} ${isLength(key) ? smallLength(value, STANDARD_FORMATS) : `${value}°`}`];
    });
    return said.length > 0 ? [`${phase}: ${said.join(", ")}`] : [];
  }).join("; ");
}

/** The same words in a reader's unit. */
export const correctionIn = (words: string, f: Formats): string =>
  f.length === "in" ? words.replace(/(-?\d+(?:\.\d+)?) mm/g, (_, mm: string) => smallLength(Number(mm), f)) : words;

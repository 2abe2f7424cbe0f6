/** What a scale that shows mass means as a force. */
import type { ForceUnit } from "#lib/formats/formats.ts";
import { NEWTONS_PER_KGF, NEWTONS_PER_LBF } from "#lib/formats/units.ts";

/** Null for newtons. The factor of the pound is shown to as many digits as anybody checks; it is converted with all of them. */
export function scaleWords(unit: ForceUnit): string | null {
  if (unit === "N") return null;
  return unit === "kgf"
    ? `A scale in kilograms shows kilograms-force. They are converted at 1 kgf = ${NEWTONS_PER_KGF} N.`
    : `A scale in pounds shows pounds-force. They are converted at 1 lbf = ${NEWTONS_PER_LBF.toFixed(3)} N.`;
}

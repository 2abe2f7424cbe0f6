/** A spring's numbers in words. */

import type { Formats } from "#lib/formats/formats.ts";
import { forceWords, stiffnessWords } from "#lib/formats/units.ts";
import type { Spring } from "#lib/plan/schema.ts";

/** "0.121 N per mm, preload 8.6 N". */
export const measuredSpringWords = (s: Pick<Spring, "stiffnessNPerMm" | "preloadN">, f: Formats): string =>
  `${stiffnessWords(s.stiffnessNPerMm, f)}, preload ${forceWords(s.preloadN, f, true)}`;

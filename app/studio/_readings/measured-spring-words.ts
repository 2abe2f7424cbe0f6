/** A spring's numbers in words. */
import type { Spring } from "#lib/plan/schema.ts";

/** "0.121 N per mm, preload 8.6 N". */
export const measuredSpringWords = (s: Pick<Spring, "stiffnessNPerMm" | "preloadN">): string =>
  `${s.stiffnessNPerMm.toFixed(3)} N per mm, preload ${s.preloadN.toFixed(1)} N`;

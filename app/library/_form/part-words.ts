/** The parts of a field's place that have a name of their own: of a tempo, and of a range. */
import type { TempoKey } from "#lib/library/draft.ts";

export const TEMPO_WORDS: Readonly<Record<TempoKey, string>> = {
  outSeconds: "out",
  outHoldSeconds: "hold there",
  backSeconds: "back",
  backHoldSeconds: "hold at home",
};

export const RANGE_WORDS = { min: "least", max: "most" } as const;

/** The cue track: what is said in a class, when, by one voice. Times are seconds from the start of the class. */
import { CUE_KINDS } from "#lib/plan/schema.ts";

/** The script's kinds that are spoken, and the two calls that the plan makes itself. Crew lines are read, not spoken. */
export const SPOKEN_KINDS = [
  ...CUE_KINDS.filter((kind): kind is Exclude<(typeof CUE_KINDS)[number], "crew"> => kind !== "crew"),
  "heads-up",
  "count-in",
] as const;
export type SpokenKind = (typeof SPOKEN_KINDS)[number];

export interface Cue {
  readonly item: string;
  readonly kind: SpokenKind;
  readonly from: number;
  readonly to: number;
  /** As it is said: live fields are filled with what is true at `from`. */
  readonly text: string;
}

/** A line for which there was no time. `shortBy` is how many more seconds it would have needed. */
export interface DroppedLine {
  readonly item: string;
  readonly kind: SpokenKind;
  /** As it was written. */
  readonly text: string;
  readonly shortBy: number;
}

export interface CueTrack {
  readonly cues: readonly Cue[];
  readonly dropped: readonly DroppedLine[];
  readonly talkSeconds: number;
  /** Talk as a share of the whole class, opening and closing included: 0..1. */
  readonly talkShare: number;
}

/** The cue track: what one voice says in a class, and when. Times are seconds from the start of the class. */
import { CUE_KINDS } from "#lib/plan/schema.ts";

/** The kinds of cue line that are spoken, and the plan's own two calls. Crew lines are read, not spoken. */
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
  /** As said, with live fields filled in as of `from`. */
  readonly text: string;
  /** Index in the item's script; undefined for the plan's own calls, and where a file does not keep it. */
  readonly line?: number | undefined;
}

/** A line for which there was no time. `shortBy`: how many more seconds it would have needed. */
export interface DroppedLine {
  readonly item: string;
  readonly kind: SpokenKind;
  /** As written. */
  readonly text: string;
  /** As in `Cue`. */
  readonly line?: number | undefined;
  readonly shortBy: number;
}

export interface CueTrack {
  readonly cues: readonly Cue[];
  readonly dropped: readonly DroppedLine[];
  readonly talkSeconds: number;
  /** Talk as a share of the whole class, opening and closing included: 0..1. */
  readonly talkShare: number;
}

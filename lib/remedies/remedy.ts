/** An act that fixes a finding: what it changes in the plan. */
import type { ScriptLine } from "#lib/plan/schema.ts";

/** One field of one item set to a value, or one line put into its script. */
export type RemedyChange =
  | {
      readonly itemId: string;
      readonly field: "seconds" | "transitionSeconds" | "offsetMm";
      /** Undefined takes an optional field away. */
      readonly value: number | undefined;
    }
  | {
      readonly itemId: string;
      readonly field: "springs";
      /** The whole set of them. */
      readonly value: Readonly<Record<string, number>>;
    }
  | {
      readonly itemId: string;
      /** A cue line as a plan file writes it: before everything else of the item, or behind its last set-up line. */
      readonly field: "firstLine" | "setupEnd";
      readonly value: ScriptLine;
    }
  | {
      readonly itemId: string;
      /** A cue line behind the first one that says the same as `after`; behind the last set-up line where none does. */
      readonly field: "afterLine";
      readonly after: ScriptLine;
      readonly value: ScriptLine;
    }
  | {
      readonly itemId: string;
      /** The last of several lines that say the same as this one, taken out. */
      readonly field: "lineTwice";
      readonly value: ScriptLine;
    };

export interface Remedy {
  /** What the act does, to stand on its button: "Make both 60 s". */
  readonly label: string;
  /** What to know before it is taken. */
  readonly note?: string;
  readonly changes: readonly RemedyChange[];
}

/** A fix for a finding: what it changes in the plan. */
import type { ScriptLine } from "#lib/plan/schema.ts";

/** One field of one item set to a value, or one line put into its script. */
export type RemedyChange =
  | {
      readonly itemId: string;
      readonly field: "seconds" | "transitionSeconds" | "offsetMm";
      /** Undefined removes an optional field. */
      readonly value: number | undefined;
    }
  | {
      readonly itemId: string;
      readonly field: "springs";
      /** All springs of the item. */
      readonly value: Readonly<Record<string, number>>;
    }
  | {
      readonly itemId: string;
      /** Where a cue line goes: before all other lines of the item, or after its last set-up line. */
      readonly field: "firstLine" | "setupEnd";
      readonly value: ScriptLine;
    }
  | {
      readonly itemId: string;
      /** Puts a cue line after all others. */
      readonly field: "lastLine";
      readonly value: ScriptLine;
    }
  | {
      readonly itemId: string;
      /**
       * Puts a cue line after the first one that says the same as `after`, or after the last set-up line where none
       * does.
       */
      readonly field: "afterLine";
      readonly after: ScriptLine;
      readonly value: ScriptLine;
    }
  | {
      readonly itemId: string;
      /** Takes out a line that says this: the last of several, or the one there is. */
      readonly field: "lineTwice" | "lineOut";
      readonly value: ScriptLine;
    };

export interface Remedy {
  /** The words on its button: "Make both 60 s". */
  readonly label: string;
  /** What to know before taking it. */
  readonly note?: string;
  readonly changes: readonly RemedyChange[];
}

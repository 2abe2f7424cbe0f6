/** Placeholder types, filled in by the arithmetic. */
import type { Action } from "#lib/plan/schema.ts";

/** One item on the clock. Seconds from the start of the class; a heading takes no time. */
export interface ClockRow {
  readonly item: string;
  /** When the change into this item begins. */
  readonly transitionFrom: number;
  readonly start: number;
  readonly end: number;
  readonly transition: {
    /** What the author gave, or null. */
    readonly planned: number | null;
    readonly estimate: number;
    readonly actions: Readonly<Partial<Record<Action, number>>>;
  };
  /** Work divided by one tempo cycle; null for holds, pauses and headings. */
  readonly reps: number | null;
}

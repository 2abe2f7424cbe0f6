/** What the program asks of its fills. `server/month-fill` does it, on a thread. */
import type { ExplainedSlot } from "#lib/month/fill/explain.ts";
import type { FillAnswer } from "#lib/month/fill/fill-types.ts";
import type { MonthFile } from "#lib/month/types.ts";

export interface ExplainedFill {
  readonly answer: FillAnswer;
  /** Slot by slot, as the answer has them. */
  readonly explained: readonly ExplainedSlot[];
}

export interface Fills {
  /** Undefined while too many months wait for theirs. Rejects when a thread breaks. `month` must be a valid month file. */
  fill(month: MonthFile): Promise<ExplainedFill> | undefined;
}

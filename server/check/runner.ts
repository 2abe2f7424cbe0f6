/** What runs the checks: threads in the running program (`threads.ts`), the calling thread in tests. */
import type { Assessment, PlanReading } from "#server/context/assessment.ts";
import type { CheckAnswer } from "#server/context/checks.ts";
import type { CheckOrder } from "./messages.ts";

export interface CheckRunner {
  /** How many orders it can work on at once. A plan always goes to the same place. */
  readonly places: number;
  /** Not to be called twice at once for one place. Rejects when the plan could not be checked. */
  run(place: number, order: CheckOrder): Promise<CheckAnswer | null>;
  /** In a place of its own. Not to be called twice at once. Rejects as `run` does. */
  assess(reading: PlanReading): Promise<Assessment | null>;
  stop(): Promise<void>;
}

/** The place ended before it answered. That need not be the fault of the plan: it may be tried again. */
export class PlaceEnded extends Error {
  override readonly name = "PlaceEnded";
}

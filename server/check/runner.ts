/** What runs the checks: threads of their own in the running program, the same thread in a test. */
import type { CheckAnswer } from "#server/context/checks.ts";
import type { CheckDesk } from "./check-desk.ts";
import type { CheckOrder } from "./messages.ts";

export interface CheckRunner {
  /** How many orders it can work on at once. A plan always goes to the same place. */
  readonly places: number;
  /** Not to be called twice at once for one place. Rejects when the plan could not be checked. */
  run(place: number, order: CheckOrder): Promise<CheckAnswer | null>;
  stop(): Promise<void>;
}

/** The place ended before it answered. That need not be the fault of the plan: it may be tried again. */
export class PlaceEnded extends Error {
  override readonly name = "PlaceEnded";
}

/** Checks on the calling thread: for tests. */
export const sameThread = (desk: CheckDesk): CheckRunner => ({
  places: 1,
  run: async (_, { planId, withFindings }) => desk.check(planId, withFindings),
  stop: async () => undefined,
});

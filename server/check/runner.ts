/** Who does the checking: a thread of its own in the running program, the same thread in a test. */
import type { CheckAnswer } from "#server/context/checks.ts";
import type { CheckDesk } from "./check-desk.ts";
import type { CheckOrder } from "./messages.ts";

export interface CheckRunner {
  /** How many orders it can work on at once. A plan is always given to the same of its places. */
  readonly places: number;
  /** Never two at once in one place. Rejects when the plan could not be checked just now. */
  run(place: number, order: CheckOrder): Promise<CheckAnswer | null>;
  stop(): Promise<void>;
}

/** The place ended before it had answered. That says nothing of the plan: it may be asked for again. */
export class PlaceEnded extends Error {
  override readonly name = "PlaceEnded";
}

/** On this very thread: for tests and for commands at the keyboard. */
export const sameThread = (desk: CheckDesk): CheckRunner => ({
  places: 1,
  run: async (_, { planId, withFindings }) => desk.check(planId, withFindings),
  stop: async () => undefined,
});

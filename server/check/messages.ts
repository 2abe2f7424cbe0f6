/** The messages between the server and a checking thread. */
import type { Assessment, PlanReading } from "#server/context/assessment.ts";
import type { CheckAnswer } from "#server/context/checks.ts";

/** The data that a thread is started with. */
export interface WorkerSetup {
  readonly databaseFile: string;
}

export interface CheckOrder {
  readonly planId: string;
  readonly withFindings: boolean;
}

/** A thread is given one at a time. */
export type ThreadOrder =
  | { readonly kind: "check"; readonly order: CheckOrder }
  | { readonly kind: "assess"; readonly order: PlanReading };

export interface ThreadAnswers {
  readonly check: CheckAnswer | null;
  readonly assess: Assessment | null;
}

export type ThreadReply =
  | { readonly ok: true; readonly answer: ThreadAnswers[keyof ThreadAnswers] }
  /** Why it could not be checked. */
  | { readonly ok: false; readonly message: string };

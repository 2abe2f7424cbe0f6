/** What the process and a checking thread say to each other. */
import type { CheckAnswer } from "#server/context/checks.ts";

/** What a thread is started with. */
export interface WorkerSetup {
  readonly databaseFile: string;
}

/** One at a time. */
export interface CheckOrder {
  readonly planId: string;
  readonly withFindings: boolean;
}

export type CheckReply =
  | { readonly ok: true; readonly answer: CheckAnswer | null }
  /** Why it could not be checked just now. */
  | { readonly ok: false; readonly message: string };

/** The messages between the server and a checking thread. */
import type { CheckAnswer } from "#server/context/checks.ts";

/** The data that a thread is started with. */
export interface WorkerSetup {
  readonly databaseFile: string;
}

/** A thread is given one at a time. */
export interface CheckOrder {
  readonly planId: string;
  readonly withFindings: boolean;
}

export type CheckReply =
  | { readonly ok: true; readonly answer: CheckAnswer | null }
  /** Why it could not be checked. */
  | { readonly ok: false; readonly message: string };

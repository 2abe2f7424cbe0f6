/** What a lead signs: a month as the server gave it to be read. */
import type { MonthFile, MonthFinding } from "#lib/month/types.ts";
import { plural } from "#lib/plan/format.ts";
import type { AcceptanceView, SignedMonth } from "#lib/protocol/messages.ts";

/** What the server answers when a month is read. */
export interface OpenedMonth {
  readonly hash: string;
  readonly file: MonthFile;
  readonly findings: readonly MonthFinding[];
  readonly blockers: readonly { readonly code: string; readonly message: string }[];
  readonly accepted: readonly AcceptanceView[];
  readonly lookAgain: readonly MonthFinding[];
  readonly nextEdition: number;
  readonly signed: SignedMonth | null;
  readonly sinceSigned: readonly string[];
}

/** "3 findings to look at again are left open." */
export const leftOpenWords = (n: number): string =>
  n === 0
    ? "No finding is left open."
    : `${plural(n, "finding")} to look at again ${n === 1 ? "is" : "are"} left open.`;

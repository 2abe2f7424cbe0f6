/** What signing a plan depends on: its hash, its findings, and whether it can be written as a plan file. */
import type { Plan } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";

export interface PlanReading {
  readonly plan: Plan;
  /** Items of a kind that this version does not know: they stay in the document but are not in `plan`. */
  readonly unknownItems: number;
}

export interface Assessment {
  /** What was assessed: findings and hash are those of exactly this plan. */
  readonly plan: Plan;
  /** SHA-256 (hex) of the canonical plan. */
  readonly hash: string;
  readonly findings: readonly Finding[];
  readonly mustFix: readonly Finding[];
  /** Rules that crashed on this plan: nothing is known about what they look for. */
  readonly broken: readonly Finding[];
  /** Why it cannot be written as a plan file without loss; null when it can. */
  readonly notAFile: NotAFile | null;
}

export interface NotAFile {
  /** JSON Pointer of the place, if there is one. */
  readonly pointer: string | null;
  /** The place and what should be there, in one sentence. */
  readonly message: string;
}

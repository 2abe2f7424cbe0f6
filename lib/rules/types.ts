/** What a rule is and what it finds. One rule, one file; everything shown about a rule is made from that file. */
import type { ClockRow } from "#lib/clock/clock.ts";
import type { FindingLevel, Plan } from "#lib/plan/schema.ts";

export interface Finding {
  readonly rule: string;
  readonly level: FindingLevel;
  /** Ids of the items it is about, in plan order; empty when it is about the whole plan. */
  readonly items: readonly string[];
  readonly message: string;
  readonly values: Readonly<Record<string, unknown>>;
}

/** What every rule may look at: the plan with its arithmetic done once. */
export interface RuleContext {
  readonly plan: Plan;
  readonly rows: readonly ClockRow[];
  /** Seconds, closing included. */
  readonly total: number;
}

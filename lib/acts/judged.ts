/** An act that is told, and whether it is so. */
import type { Facing, Move } from "#lib/plan/schema.ts";
import type { Setup } from "#lib/transitions/transitions.ts";
import type { PlannedAct } from "./planned.ts";
import type { Thing } from "./read/draft.ts";

export type Verdict = "told" | "contradicted" | "not-planned" | "wrong-order" | "unsure";

/** An act as the plan file's format writes it; what is not named is left out. */
export interface Act {
  readonly act: PlannedAct["act"] | "springs-now" | "stay";
  readonly spring?: string;
  readonly count?: number;
  readonly facing?: Facing;
  readonly position?: Move["position"];
  readonly station?: Move["station"];
  readonly side?: "left" | "right";
  readonly springs?: Readonly<Record<string, number>>;
}

/** The change into a move; `planned` is all that the first move needs where there is nothing before it. */
export interface ActsChange {
  readonly from: Setup | null;
  readonly to: Setup;
  readonly planned: readonly PlannedAct[];
}

export interface Judged {
  readonly act: Act;
  readonly verdict: Verdict;
  /** The planned acts that it tells. */
  readonly covers: readonly PlannedAct[];
  /** What stays, for the act `stay`. */
  readonly of?: Thing;
  readonly implied?: true;
  /** A side that is only that of a hand or foot. */
  readonly near?: true;
  /** Said with "might", "if", "or". */
  readonly doubted?: true;
  /** Names the thing and nothing more: "the springs". */
  readonly vague?: true;
}

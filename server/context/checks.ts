/** What the program asks of its checks: when a plan is to be checked, and what was found. `server/check` does it. */
import type { KeptCheck } from "#db/repos/check-repo.ts";
import type { PlanRow } from "#db/repos/plan-repo.ts";
import type { FindableLine } from "#lib/find/plan-lines.ts";
import type { FindingLevel } from "#lib/plan/schema.ts";
import type { Finding } from "#lib/rules/define/types.ts";
import type { Assessment, PlanReading } from "./assessment.ts";

/** The result of one check, as plain data that can be sent between threads. */
export interface CheckAnswer {
  readonly planId: string;
  /** The state of the document that was read: the last row of its log, and the history that row belongs to. */
  readonly seq: number;
  readonly generation: string;
  /** The studio data it was read with. */
  readonly studioMark: string;
  /** Fingerprints of the plan and of its findings (`lib/analysis/marks.ts`). Null when the document is damaged beyond reading. */
  readonly planMark: string | null;
  readonly findingsMark: string | null;
  /** Findings by level; rules that crashed are not counted. */
  readonly counts: Readonly<Record<FindingLevel, number>>;
  /** The class in small, as its text. */
  readonly strip: string | null;
  /** Set when a signed plan no longer says what its newest edition says: the hash of that edition. */
  readonly writtenOn: string | null;
  /** By which it is found. */
  readonly lines: readonly FindableLine[];
  /** Present when they were asked for, and where they are few enough to be sent each time. */
  readonly findings?: readonly Finding[];
}

export interface Checks {
  /** Somebody wrote in the plan: it is checked when the writing pauses, or has gone on for long. */
  written(planId: string): void;
  /** A state depends on the result, or the studio data changed: it is checked at once. */
  soon(planId: string): void;
  /** Somebody is waiting for the result. Null for a plan that cannot be checked. */
  now(planId: string): Promise<CheckAnswer | null>;
  /** Assesses exactly what was read, on another thread. Null for a document too damaged to be evaluated. */
  assess(planId: string, reading: PlanReading): Promise<Assessment | null>;
  /** The stored result of the last check, if the document, the studio data and the program are still the same. */
  kept(row: PlanRow, studioMark: string): KeptCheck | undefined;
  /** How many plans wait for a check or are being checked. */
  waiting(): number;
  /** What that check found, where it is still in memory. */
  found(row: PlanRow, studioMark: string): readonly Finding[] | undefined;
  /** Resolves when nothing is being checked and nothing is queued. */
  idle(): Promise<void>;
  stop(): Promise<void>;
}

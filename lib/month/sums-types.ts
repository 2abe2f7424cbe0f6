/**
 * The sums of a month: what its classes give each group of regulars, each coach and each theme. Numbers are unrounded;
 * instants are ms since the epoch. The command's output is written by `print-sums.ts`.
 */
import type { Group } from "#lib/plan/schema.ts";
import type { ById, MonthSlot, PlanFacts } from "./types.ts";

/** A slot with its instants. */
export interface TimedSlot {
  readonly slot: MonthSlot;
  readonly from: number;
  readonly to: number;
  /** How often the wall clock shows its start. */
  readonly kind: "once" | "skipped" | "twice";
  /** What the wall clock shows at its end, "19:45". */
  readonly till: string;
}

/** A slot that is on, with what is known of its plan: all that sums and rules look at. */
export interface MonthClass extends TimedSlot {
  readonly id: string;
  readonly date: string;
  /** Undefined where there is no plan or it is not known. */
  readonly plan: PlanFacts | undefined;
}

export interface MonthSums {
  /** Every slot of known..to, in order of time, then id; also those taken out. */
  readonly slots: readonly TimedSlot[];
  readonly regulars: ById<RegularsSums>;
  readonly coaches: ById<CoachSums>;
  readonly themes: ById<ThemeSums>;
}

export interface RegularsSums {
  readonly days: readonly RegularsDay[];
  readonly recovery: readonly Recovery[];
  readonly neighbours: readonly NeighbourClasses[];
  readonly weeks: readonly RegularsWeek[];
  readonly variety: Variety;
}
/** One date with at least one class. */
export interface RegularsDay {
  readonly date: string;
  /** Seconds x weight, of the groups with any. */
  readonly groups: Partial<Record<Group, number>>;
  readonly push: number;
  readonly pull: number;
  readonly metMinutes: number;
  readonly heavy: readonly Group[];
}
/** From one heavy day of a group to the next. */
export interface Recovery {
  readonly group: Group;
  /** Dates of the two days. */
  readonly from: string;
  readonly to: string;
  /** Elapsed. */
  readonly minutes: number;
  /** Ids of the last class that sets the clock on the first day and of the first on the second. */
  readonly slots: readonly [string, string];
}
export interface NeighbourClasses {
  readonly slots: readonly [string, string];
  /** 0..1; null when either plan is not known or has no moves. */
  readonly likeness: number | null;
}
export interface Variety {
  readonly distinct: number;
  /** Inverse Simpson (Hill number of order 2: from memory); null when nothing is moved. */
  readonly effective: number | null;
}
export interface RegularsWeek extends Variety {
  /** ISO 8601, "2026-W10". */
  readonly week: string;
  /** All its seven days are in known..to. */
  readonly whole: boolean;
  readonly seconds: number;
  readonly metMinutes: number;
  /** (this - last) / last. */
  readonly change: number | null;
}

export interface CoachSums {
  readonly days: readonly CoachDay[];
  readonly minutes: number;
  readonly talkSeconds: number;
}
export interface CoachDay {
  readonly date: string;
  readonly classes: number;
  readonly minutes: number;
  readonly talkSeconds: number;
  readonly from: number;
  readonly to: number;
  /** Minutes from each end to the next start; negative where they overlap. */
  readonly gaps: readonly number[];
}

export interface ThemeSums {
  readonly promised: number | null;
  readonly slots: number;
  readonly kept: number;
}

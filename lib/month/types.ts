/**
 * A month as its file holds it, format `springline.month/1`. Units: seconds of work, whole minutes of a class, MET-minutes.
 * A date is 'YYYY-MM-DD'; a time 'HH:MM', wall time of the studio's zone; an instant in the file 'YYYY-MM-DDTHH:MM:SSZ'.
 * `read-month.ts` makes these from JSON; everything else in this folder takes them as valid.
 */
import type { Group } from "#lib/plan/schema.ts";

export const MONTH_FORMAT = "springline.month/1";

export type ById<T> = Readonly<Record<string, T>>;

export interface MonthFile {
  readonly format: typeof MONTH_FORMAT;
  readonly title: string;
  readonly studio: { readonly uid: string; readonly name: string };
  readonly zone: string;
  readonly changedAt: string;
  readonly dates: { readonly from: string; readonly to: string; readonly known?: string };
  readonly asOf?: string;
  readonly holidays?: ById<string>;
  readonly rooms: ById<MonthRoom>;
  readonly coaches: ById<MonthCoach>;
  readonly regulars: ById<Regulars>;
  readonly themes?: ById<MonthTheme>;
  readonly plans: ById<MonthPlan>;
  readonly pattern?: readonly PatternLine[];
  readonly slots: readonly MonthSlot[];
  readonly limits?: MonthLimitsSet;
  readonly standards?: ById<{ readonly level: MonthLevel | "off" }>;
  readonly weights?: Partial<FillWeights>;
  readonly fill?: FillWanted;
}

export interface MonthRoom {
  readonly name: string;
  readonly machines: number;
  readonly equipment: string;
}

export const COACH_ROLES = ["trainee", "coach", "lead", "manager", "crew"] as const;

export interface MonthCoach {
  readonly name: string;
  readonly roles: readonly (typeof COACH_ROLES)[number][];
  readonly free?: readonly FreeTime[];
  readonly away?: readonly AwayTime[];
}
/** `to` may be "24:00". Days 1 Monday to 7 Sunday. */
export interface FreeTime {
  readonly days: readonly number[];
  readonly from: string;
  readonly to: string;
}
/** Both dates count. */
export interface AwayTime {
  readonly from: string;
  readonly to: string;
  readonly why?: string;
}

/** The same people, coming to several classes. */
export interface Regulars {
  readonly name: string;
  readonly people?: number;
}

export interface MonthTheme {
  readonly name: string;
  /** Classes in from..to. */
  readonly promised?: number;
  /** The least share of a class's work, 0..1. */
  readonly shares?: Partial<Record<Group, number>>;
}

/** What a month needs of a plan; of its signed edition where it has one. */
export interface PlanFacts {
  readonly title: string;
  readonly known?: true;
  readonly seconds: number;
  readonly signed: boolean;
  readonly edition?: number;
  readonly sha256?: string;
  readonly equipment: string;
  /** Seconds x weight. */
  readonly groups: Partial<Record<Group, number>>;
  /** Seconds of work by the move's id. */
  readonly moves: ById<number>;
  readonly push: number;
  readonly pull: number;
  readonly metMinutes: number;
  readonly talkSeconds: number;
}
/** A plan that one may not read, or that is gone. */
export interface UnknownPlan {
  readonly title: string;
  readonly known: false;
}
export type MonthPlan = PlanFacts | UnknownPlan;

/** What a slot and a pattern's line have in common. A key that is left out and null mean the same. */
export interface SlotValues {
  readonly start: string;
  readonly minutes: number;
  readonly room?: string | null;
  readonly coach?: string | null;
  readonly regulars?: readonly string[];
  readonly theme?: string | null;
  readonly plan?: string | null;
  readonly people?: number;
  readonly locked?: boolean;
  readonly note?: string;
}

export interface MonthSlot extends SlotValues {
  readonly id: string;
  readonly date: string;
  /** Taken out: shown and sent as cancelled, counted nowhere. */
  readonly out?: boolean;
  readonly changedAt?: string;
  readonly sequence?: number;
  readonly formerCoaches?: readonly string[];
  readonly formerRooms?: readonly string[];
}

export interface PatternLine extends SlotValues {
  readonly id: string;
  readonly days: readonly number[];
  /** Weeks; default 1. */
  readonly every?: number;
  /** Default 1, Monday. */
  readonly weekStart?: 1 | 7;
  /** The n-th of its day in the calendar month, from the end when negative. */
  readonly nth?: readonly number[];
  readonly from?: string;
  readonly to?: string;
  readonly count?: number;
  readonly except?: readonly string[];
}

export type MonthLevel = "must" | "look" | "info";

export interface MonthLimits {
  readonly heavySeconds: number;
  readonly heavyBy: Partial<Record<Group, number>>;
  readonly recoveryHours: number;
  readonly recoveryBy: Partial<Record<Group, number>>;
  readonly likeMost: number;
  readonly riseMost: number;
  readonly varietyLeast: number;
  readonly coachMinutesDay: number;
  readonly coachTalkSecondsDay: number;
  readonly gapMinutes: number;
  readonly restHours: number;
}
export type MonthLimitsSet = Partial<MonthLimits>;

/**
 * Recovery: ACSM, at least 48 h between sessions of the same muscle group (secondary pages only; some say 48 to 72).
 * Rest between working days: directive 2003/88/EC, article 3, 11 h (from memory). All others: common practice, no source.
 */
export const MONTH_LIMITS: MonthLimits = {
  heavySeconds: 300,
  heavyBy: {},
  recoveryHours: 48,
  recoveryBy: {},
  likeMost: 0.8,
  riseMost: 0.3,
  varietyLeast: 16,
  coachMinutesDay: 240,
  coachTalkSecondsDay: 5400,
  gapMinutes: 15,
  restHours: 11,
};

export const limitsOfMonth = (month: Pick<MonthFile, "limits">): MonthLimits => ({ ...MONTH_LIMITS, ...month.limits });

export interface FillWeights {
  readonly must: number;
  readonly look: number;
  readonly info: number;
  readonly likeness: number;
  readonly wish: number;
}
export const FILL_WEIGHTS: FillWeights = { must: 100, look: 10, info: 1, likeness: 5, wish: 5 };

export interface FillWanted {
  readonly slots?: readonly string[];
  readonly plans?: readonly string[];
  readonly wishes?: readonly { readonly slot: string; readonly plan: string; readonly weight?: number }[];
  readonly mostUses?: number;
}

/** One finding of a month. `values` are unrounded; what is shown is rounded where it is written. */
export interface MonthFinding {
  readonly id: string;
  readonly rule: string;
  readonly level: MonthLevel;
  /** In order of time. */
  readonly slots: readonly string[];
  readonly message: string;
  readonly values: Readonly<Record<string, unknown>>;
}

/**
 * The month's sheet as data: where everything stands, in px, and what it says. Pages only draw it. A sheet is as wide as its
 * columns and as high as its days; y 0 is the top of the first day.
 */

import type { MonthFinding, MonthLevel, MonthSlot } from "#lib/month/types.ts";
import type { Group } from "#lib/plan/schema.ts";
import type { TideAxis } from "./time-axis.ts";

/** How wide words are on the page, in px. */
export type Measure = (words: string, bold: boolean) => number;

/** Which of the three drawings: labels beside the marks, under them, or classes as lines of words. */
export type TideKind = "laptop" | "tablet" | "phone";

export interface TideSizes {
  readonly kind: TideKind;
  /** Of the rail's column. */
  readonly railWidth: number;
  /** Of one group's column. */
  readonly groupWidth: number;
  /** Of what to mend: its own column, or the rail's. */
  readonly findingsWidth: number;
  /** Top of each day, and after the last the foot of the sheet. */
  readonly tops: readonly number[];
  readonly measure: Measure;
}

export const REGIONS = ["push", "pull", "trunk", "legs"] as const;
export type TideRegion = (typeof REGIONS)[number];
/** What a class's mark is tinted by; "whole" where no region has most of the work, "none" where nothing is known. */
export type TideTint = TideRegion | "whole" | "none";

export type PlanStanding = "signed" | "unsigned" | "none" | "unknown";

/** One class on the day's rail. */
export interface TideMark {
  readonly slot: MonthSlot;
  readonly x: number;
  readonly width: number;
  /** Which room's side or line; null without a room of the sheet. */
  readonly lane: number | null;
  readonly tint: TideTint;
  readonly standing: PlanStanding;
  /** It comes with the chosen regulars. */
  readonly chosen: boolean;
  readonly out: boolean;
  /** Its theme, else its plan, else "Class"; the coach's first name or "?"; "no plan", "not signed" or nothing. */
  readonly title: string;
  readonly who: string;
  readonly open: string;
  /** Everything about it in one sentence, for who does not see the drawing. */
  readonly words: string;
}

/** A part of a label: the words of one class. */
export interface LabelPart {
  readonly slot: string;
  readonly theme: string;
  readonly who: string;
  /** "no plan", "not signed", or nothing. */
  readonly open: string;
  readonly chosen: boolean;
}
/** Words on the rail, of one class or of several that stand too close for one each. */
export interface RailLabel {
  readonly x: number;
  readonly width: number;
  /** Of words under the rail: which line of them, from 0. */
  readonly line: number;
  readonly parts: readonly LabelPart[];
  /** In place of the parts, where there is no room even for their shortest words. */
  readonly inShort?: string;
}

export interface TideDrop {
  readonly slot: string;
  readonly group: Group;
  readonly region: TideRegion;
  readonly heavy: boolean;
  /** Middle of its column. */
  readonly x: number;
  readonly width: number;
  /** The hour of the class, and the hour at which its rest is over. */
  readonly top: number;
  readonly end: number;
  /** Seconds x weight. */
  readonly work: number;
}

/** Rest that was cut short: from the second class to the hour at which the first one's rest would have been over. */
export interface TideCollision {
  readonly finding: string;
  readonly group: Group;
  readonly x: number;
  readonly width: number;
  readonly top: number;
  readonly end: number;
  /** Whole hours after which the same muscles were asked again. */
  readonly hours: number;
}

export interface CoachCell {
  readonly coach: string;
  readonly minutes: number;
  /** Classes on the day's own little rail, as parts of its width. */
  readonly bars: readonly { readonly from: number; readonly to: number }[];
  /** Two classes at once. */
  readonly double: boolean;
  /** Too little between two classes. */
  readonly tight: boolean;
  readonly words: string;
}

/** One line of what to mend on a day. */
export interface FindingLine {
  /** The first finding's. */
  readonly id: string;
  readonly level: MonthLevel;
  readonly words: string;
  readonly findings: readonly MonthFinding[];
}

export interface LikeCell {
  readonly percent: number;
  readonly tooAlike: boolean;
  readonly slots: readonly [string, string];
}

export interface GroupCell {
  readonly group: Group;
  readonly heavy: boolean;
  /** "shoulders, heavy, 23 h after the last". */
  readonly words: string;
}

export interface TideDay {
  readonly date: string;
  /** 1 Monday to 7 Sunday. */
  readonly weekday: number;
  readonly holiday: string | null;
  readonly marks: readonly TideMark[];
  readonly labels: readonly RailLabel[];
  /** In the order of the columns; only groups with work that day. */
  readonly groups: readonly GroupCell[];
  readonly like: LikeCell | null;
  readonly coaches: readonly CoachCell[];
  readonly lines: readonly FindingLine[];
  /** On the last day of a week: its sum, in words. */
  readonly week: string;
}

export interface TideColumn {
  readonly group: Group;
  readonly region: TideRegion;
  readonly words: string;
  readonly x: number;
  /** Among those worked hardest. */
  readonly strong: boolean;
}
export interface TideCoach {
  readonly id: string;
  readonly name: string;
  /** "13 h 5", or nothing where nothing is taught. */
  readonly total: string;
}

export interface TideSheet {
  readonly axis: TideAxis;
  /** Rooms in the order of their lanes. */
  readonly rooms: readonly { readonly id: string; readonly name: string }[];
  readonly columns: readonly TideColumn[];
  readonly coaches: readonly TideCoach[];
  readonly days: readonly TideDay[];
  readonly drops: readonly TideDrop[];
  readonly collisions: readonly TideCollision[];
}

/** Rounds of reading as the server tells them: who offered, read, returned and signed, and what the plan was at each step. */
import type { Finding } from "#lib/rules/define/types.ts";

export type RoundOutcome = "returned" | "signed" | "taken-back";
export type MomentKind = "offered" | "returned" | "signed" | "withdrawn" | "taken-back";

/** A thread as it was at a moment. Comments are never changed, so their number says which ones there were. */
export interface ThreadThen {
  readonly id: string;
  readonly settled: boolean;
  readonly comments: number;
}

/** A plan at one step, without its text. */
export interface MomentHead {
  readonly id: number;
  /** The round that it belongs to; 0 before rounds were kept. */
  readonly round: number;
  readonly kind: MomentKind;
  /** ms since the epoch, as are all times here. */
  readonly at: number;
  readonly byId: string;
  readonly byName: string;
  readonly note: string | null;
  /** False when the plan could not be read then. */
  readonly hasText: boolean;
  /** How many findings there were then, by level. */
  readonly must: number;
  readonly look: number;
  readonly info: number;
  readonly threads: number;
  readonly openThreads: number;
}

export interface RoundView {
  readonly number: number;
  readonly offeredById: string;
  readonly offeredByName: string;
  readonly offeredAt: number;
  /** The lead who took it up, while or when it was open. */
  readonly readerId: string | null;
  readonly readerName: string | null;
  readonly readSince: number | null;
  /** Null while it is open. */
  readonly outcome: RoundOutcome | null;
  readonly endedByName: string | null;
  readonly endedAt: number | null;
  readonly mainPoints: readonly string[];
  readonly edition: number | null;
  readonly moments: readonly MomentHead[];
}

/** A step from before rounds were kept: no text of it is there. */
export interface EarlierStep {
  readonly kind: "handed-in" | "handed-back" | "taken-back" | "signed-off" | "withdrawn";
  readonly at: number;
  readonly byName: string;
  readonly note: string | null;
}

/** What somebody compares a plan with: a moment, an edition, or what they read last. */
export interface ComparePoint {
  /** "12" for a moment, "edition-2" or "reading". */
  readonly id: string;
  readonly kind: MomentKind | "edition" | "reading";
  readonly at: number;
  readonly byId: string;
  readonly byName: string;
  readonly round: number;
  readonly edition: number | null;
}

export interface RoundsView {
  /** The first round first. */
  readonly rounds: readonly RoundView[];
  /** In order of time. */
  readonly earlier: readonly EarlierStep[];
  /** Moments outside every kept round: editions of before that were withdrawn. */
  readonly besides: readonly MomentHead[];
  /** In order of time. */
  readonly points: readonly ComparePoint[];
  /** Which point matters most to the person who asks; null when there is none yet. */
  readonly usual: string | null;
  /** Of the person who asks: hash by item. */
  readonly platesRead: Readonly<Record<string, string>>;
}

/** The whole of one point, as far as it was kept. */
export interface PointText {
  /** Null when the plan could not be read then. */
  readonly plan: unknown;
  readonly findings: readonly Finding[];
  readonly threads: readonly ThreadThen[];
}

/** At most so many main points go with a return, each of at most so many characters. */
export const MOST_POINTS = 3;
export const POINT_MAX = 300;

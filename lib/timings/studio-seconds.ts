/**
 * A studio's own seconds for each action of a change, from the changes that its classes really made: non-negative least
 * squares pulled towards the usual seconds, the more so the fewer changes show an action (a normal prior on each; the
 * estimate is the most likely value). The pull is never towards the seconds in use: those may come from the same classes,
 * which would be counted again each time. Each estimate comes with its uncertainty.
 */
import { tenth } from "#lib/numbers/round.ts";
import { ACTIONS, type Action } from "#lib/plan/schema.ts";
import { type ActionCounts, DEFAULT_ACTION_SECONDS } from "#lib/transitions/transitions.ts";
import { nnls, solveSystem } from "./nnls.ts";

/** One change as it happened. */
export interface TimedChange {
  readonly actions: ActionCounts;
  /** One person's, from the end of the work before until people worked again, holds included. */
  readonly seconds: number;
}

export const TIMED_PARTS = ["base", ...ACTIONS] as const;
export type TimedAction = "base" | Action;
type Usual = Readonly<Record<TimedAction, number>>;

export interface StudioSecond {
  readonly action: TimedAction;
  /** The program's seconds, towards which the estimate is pulled. */
  readonly usual: number;
  /** The estimate, rounded to tenths. */
  readonly seconds: number;
  /** Standard deviation of the estimate: the true value is within two of them 19 times in 20. */
  readonly give: number;
  /** How many changes had this action; with none the estimate is the usual. */
  readonly seenIn: number;
  /** How much of the estimate comes from the classes: 0 is nothing (the usual), near 1 almost all. */
  readonly share: number;
}
export interface StudioSeconds {
  readonly rows: readonly StudioSecond[];
  readonly changes: number;
  /** Changes ignored because they were so long or so short that something else must have happened. */
  readonly leftOut: number;
  /** Standard deviation of changes from their estimate, seconds: with the usual seconds, and with these. */
  readonly offUsual: number;
  readonly offOwn: number;
}

/** How far the usual may be off, as a share of it: about as much as studios differ (common practice, no source). */
export const PRIOR_SHARE = 0.4;
/** The usual is never assumed to be more exact than this, seconds. */
const LEAST_PRIOR = 0.5;
/**
 * Scatter of a change from class to class, as a share of its estimate: the value assumed until the changes show their own,
 * and the least allowed, so that a few changes that happen to agree do not count for too much (common practice, no source).
 * A share, since slow people are slow with every action of a change.
 */
const SCATTER = { usual: 0.35, least: 0.15 } as const;
/** Shorter changes scatter like one of this length, since the coach's touch is not exact either. Seconds. */
const SHORT_CHANGE = 4;
/** Longer than both limits, a change included a talk, a fault or a forgotten button. */
const TOO_LONG = { times: 3, seconds: 20 } as const;
/** Shorter than this share of its estimate, people had set up before. */
const TOO_SHORT = 0.25;

/** The studio's seconds from its timed changes; without any, every action keeps the usual. */
export function studioSeconds(changes: readonly TimedChange[], usual: Usual = DEFAULT_ACTION_SECONDS): StudioSeconds {
  const usable = changes.filter((change) => isUsable(change, usual));
  const seen = usable.map((change): Seen => seenOf(change, usual));
  const first = estimate(seen, usual, SCATTER.usual);
  // Once more with the observed scatter: changes that vary less tell more.
  const scatter = seen.length > TIMED_PARTS.length ? Math.max(SCATTER.least, scatterOf(seen, first)) : SCATTER.usual;
  const seconds = estimate(seen, usual, scatter);
  const gives = uncertainties(seen, usual, scatter);
  return {
    rows: TIMED_PARTS.map((action, k) => ({
      action,
      usual: usual[action],
      seconds: tenth(seconds[k] ?? 0),
      give: gives[k] ?? 0,
      seenIn: usable.filter((change) => countOf(change, action) > 0).length,
      share: Math.max(0, 1 - ((gives[k] ?? 0) / priorOf(usual[action])) ** 2),
    })),
    changes: usable.length,
    leftOut: changes.length - usable.length,
    offUsual: offBy(seen, listOf(usual)),
    offOwn: offBy(seen, seconds),
  };
}

const countOf = (change: TimedChange, action: TimedAction): number =>
  action === "base" ? 1 : (change.actions[action] ?? 0);
const priorOf = (seconds: number): number => Math.max(LEAST_PRIOR, seconds * PRIOR_SHARE);
const sumOf = (counts: readonly number[], seconds: readonly number[]): number =>
  counts.reduce((sum, n, k) => sum + n * (seconds[k] ?? 0), 0);
const listOf = (usual: Usual): number[] => TIMED_PARTS.map((action) => usual[action]);

function isUsable(change: TimedChange, usual: Usual): boolean {
  const expected = sumOf(
    TIMED_PARTS.map((action) => countOf(change, action)),
    listOf(usual),
  );
  const most = Math.max(expected * TOO_LONG.times, expected + TOO_LONG.seconds);
  return change.seconds >= expected * TOO_SHORT && change.seconds <= most;
}

/** A change as a row of the system. */
interface Seen {
  /** In the order of `TIMED_PARTS`. */
  readonly counts: readonly number[];
  readonly seconds: number;
  /** Its standard deviation is the common scatter times this. */
  readonly length: number;
}

function seenOf(change: TimedChange, usual: Usual): Seen {
  const counts = TIMED_PARTS.map((action) => countOf(change, action));
  return { counts, seconds: change.seconds, length: Math.max(SHORT_CHANGE, sumOf(counts, listOf(usual))) };
}

/** Changes weighted by their scatter, plus one row per action that pulls it to the usual. */
function estimate(seen: readonly Seen[], usual: Usual, scatter: number): readonly number[] {
  const pulls = TIMED_PARTS.map((action, k) => TIMED_PARTS.map((_, j) => (j === k ? 1 / priorOf(usual[action]) : 0)));
  const rows = [...seen.map(({ counts, length }) => counts.map((n) => n / (scatter * length))), ...pulls];
  const wanted = TIMED_PARTS.map((action) => usual[action] / priorOf(usual[action]));
  return nnls(rows, [...seen.map(({ seconds, length }) => seconds / (scatter * length)), ...wanted]).x;
}

/** Square roots of the diagonal of the inverse information matrix, from the changes and the prior. */
function uncertainties(seen: readonly Seen[], usual: Usual, scatter: number): number[] {
  const known = TIMED_PARTS.map((action, j) =>
    TIMED_PARTS.map((_, k) => {
      const told = seen.reduce((sum, { counts, length }) => {
        return sum + ((counts[j] ?? 0) * (counts[k] ?? 0)) / (scatter * length) ** 2;
      }, 0);
      return told + (j === k ? 1 / priorOf(usual[action]) ** 2 : 0);
    }),
  );
  return TIMED_PARTS.map((_, k) => {
    const unit = TIMED_PARTS.map((_, j) => (j === k ? 1 : 0));
    return Math.sqrt(Math.max(0, solveSystem(known, unit)[k] ?? 0));
  });
}

const rms = (list: readonly number[]): number =>
  list.length === 0 ? 0 : Math.sqrt(list.reduce((sum, x) => sum + x ** 2, 0) / list.length);

const scatterOf = (seen: readonly Seen[], seconds: readonly number[]): number =>
  rms(seen.map((change) => (change.seconds - sumOf(change.counts, seconds)) / change.length));

/** Standard deviation of changes from their estimate, seconds. */
const offBy = (seen: readonly Seen[], seconds: readonly number[]): number =>
  rms(seen.map((change) => change.seconds - sumOf(change.counts, seconds)));

/**
 * A studio's own seconds for each action of a change of set-up, from the changes its classes really made: non-negative
 * least squares pulled towards the usual seconds, the more so the fewer changes show an action (a normal prior around
 * each, the estimate its most likely value). Never towards the seconds in use: those may come from the same classes, which
 * would then be counted again at every look. Says how sure each one is.
 */
import { ACTIONS, type Action } from "#lib/plan/schema.ts";
import { type ActionCounts, DEFAULT_ACTION_SECONDS } from "#lib/transitions/transitions.ts";
import { nnls, solve } from "./nnls.ts";

/** One change of set-up as it happened. */
export interface TimedChange {
  readonly actions: ActionCounts;
  /** From the end of the work before to when people worked again, holds included. */
  readonly seconds: number;
}

export const TIMED = ["base", ...ACTIONS] as const;
export type TimedAction = "base" | Action;
type Usual = Readonly<Record<TimedAction, number>>;

export interface StudioSecond {
  readonly action: TimedAction;
  /** What it is pulled towards. */
  readonly usual: number;
  /** Tenths of a second. */
  readonly seconds: number;
  /** Standard deviation of what is known about it: two of them either way hold it 19 times in 20. */
  readonly give: number;
  /** How many of the changes had this action; with none of them it stays the usual. */
  readonly seenIn: number;
  /** How much of what is known about it the classes say: 0 nothing, it is the usual; towards 1 all. */
  readonly share: number;
}
export interface StudioSeconds {
  readonly rows: readonly StudioSecond[];
  readonly changes: number;
  /** Changes left out because they took so long, or so short, that something else must have happened. */
  readonly leftOut: number;
  /** What a change differs from its estimate by, as a standard deviation, seconds: with the usual seconds and with these. */
  readonly offUsual: number;
  readonly offOwn: number;
}

/** How far the usual may be off, as a part of it; studios differ by about that (common practice, no source). */
export const PRIOR_SHARE = 0.4;
/** Nobody knows an action better than this beforehand, seconds. */
const LEAST_PRIOR = 0.5;
/** What one change scatters by from class to class, seconds, until the changes themselves say otherwise. */
const USUAL_SCATTER = 3;
/** A change this many times its estimate, and this many seconds above it, was a talk, a fault or a forgotten button. */
const TOO_LONG = { times: 3, seconds: 20 } as const;
/** A change in less than this part of its estimate was not made then: people had set up before. */
const TOO_SHORT = 0.25;

/** The studio's seconds from its timed changes; without any, every action stays the usual. */
export function studioSeconds(changes: readonly TimedChange[], usual: Usual = DEFAULT_ACTION_SECONDS): StudioSeconds {
  const usable = changes.filter((change) => isUsable(change, usual));
  const first = estimate(usable, usual, USUAL_SCATTER);
  // Once more with the scatter that was seen: a tidy team's changes tell more than a wild one's.
  const scatter = Math.max(1, usable.length > TIMED.length ? scatterOf(usable, first) : USUAL_SCATTER);
  const seconds = estimate(usable, usual, scatter);
  const gives = uncertainties(usable, usual, scatter);
  return {
    rows: TIMED.map((action, k) => ({
      action,
      usual: usual[action],
      seconds: Math.round((seconds[k] ?? 0) * 10) / 10,
      give: gives[k] ?? 0,
      seenIn: usable.filter((change) => countOf(change, action) > 0).length,
      share: Math.max(0, 1 - ((gives[k] ?? 0) / priorOf(usual[action])) ** 2),
    })),
    changes: usable.length,
    leftOut: changes.length - usable.length,
    offUsual: scatterOf(
      usable,
      TIMED.map((action) => usual[action]),
    ),
    offOwn: scatterOf(usable, seconds),
  };
}

const countOf = (change: TimedChange, action: TimedAction): number =>
  action === "base" ? 1 : (change.actions[action] ?? 0);
const rowOf = (change: TimedChange): number[] => TIMED.map((action) => countOf(change, action));
const priorOf = (seconds: number): number => Math.max(LEAST_PRIOR, seconds * PRIOR_SHARE);

function isUsable(change: TimedChange, usual: Usual): boolean {
  const expected = TIMED.reduce((sum, action) => sum + countOf(change, action) * usual[action], 0);
  const most = Math.max(expected * TOO_LONG.times, expected + TOO_LONG.seconds);
  return change.seconds >= expected * TOO_SHORT && change.seconds <= most;
}

/** Changes weighted by their scatter, and one row an action that pulls it to what it is now. */
function estimate(changes: readonly TimedChange[], usual: Usual, scatter: number) {
  const pulls = TIMED.map((action, k) => TIMED.map((_, j) => (j === k ? 1 / priorOf(usual[action]) : 0)));
  const rows = [...changes.map((change) => rowOf(change).map((n) => n / scatter)), ...pulls];
  const wanted = TIMED.map((action) => usual[action] / priorOf(usual[action]));
  return nnls(rows, [...changes.map((change) => change.seconds / scatter), ...wanted]).x;
}

/** Square roots of the diagonal of the inverse of what is known: from the changes, and beforehand. */
function uncertainties(changes: readonly TimedChange[], usual: Usual, scatter: number) {
  const rows = changes.map(rowOf);
  const known = TIMED.map((action, j) =>
    TIMED.map((_, k) => {
      const seen = rows.reduce((sum, row) => sum + (row[j] ?? 0) * (row[k] ?? 0), 0) / scatter ** 2;
      return seen + (j === k ? 1 / priorOf(usual[action]) ** 2 : 0);
    }),
  );
  return TIMED.map((_, k) => {
    const unit = TIMED.map((_, j) => (j === k ? 1 : 0));
    return Math.sqrt(Math.max(0, solve(known, unit)[k] ?? 0));
  });
}

function scatterOf(changes: readonly TimedChange[], seconds: readonly number[]): number {
  if (changes.length === 0) return 0;
  const squares = changes.map((change) => {
    const expected = rowOf(change).reduce((sum, n, k) => sum + n * (seconds[k] ?? 0), 0);
    return (change.seconds - expected) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, s) => sum + s, 0) / changes.length);
}

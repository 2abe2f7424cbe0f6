/**
 * A studio's own seconds for each action of a change of set-up, from the changes its classes really made: non-negative
 * least squares pulled towards the usual seconds, the more so the fewer changes show an action (a normal prior around
 * each, the estimate its most likely value). Never towards the seconds in use: those may come from the same classes, which
 * would then be counted again at every look. Says how sure each one is.
 */
import { tenth } from "#lib/numbers/round.ts";
import { ACTIONS, type Action } from "#lib/plan/schema.ts";
import { type ActionCounts, DEFAULT_ACTION_SECONDS } from "#lib/transitions/transitions.ts";
import { nnls, solveSystem } from "./nnls.ts";

/** One change of set-up as it happened. */
export interface TimedChange {
  readonly actions: ActionCounts;
  /** From the end of the work before to when people worked again, holds included. */
  readonly seconds: number;
}

export const TIMED_PARTS = ["base", ...ACTIONS] as const;
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
/**
 * What one change scatters by from class to class, as a part of its estimate, until the changes themselves say otherwise;
 * and never less, so that a few that happen to agree are not believed too much (common practice, no source). Who is slow
 * is slow with all of a change: a long one scatters more.
 */
const SCATTER = { usual: 0.35, least: 0.15 } as const;
/** A short change scatters as one of this length, by the coach's own touch. Seconds. */
const SHORT_CHANGE = 4;
/** A change this many times its estimate, and this many seconds above it, was a talk, a fault or a forgotten button. */
const TOO_LONG = { times: 3, seconds: 20 } as const;
/** A change in less than this part of its estimate was not made then: people had set up before. */
const TOO_SHORT = 0.25;

/** The studio's seconds from its timed changes; without any, every action stays the usual. */
export function studioSeconds(changes: readonly TimedChange[], usual: Usual = DEFAULT_ACTION_SECONDS): StudioSeconds {
  const usable = changes.filter((change) => isUsable(change, usual));
  const seen = usable.map((change): Seen => seenOf(change, usual));
  const first = estimate(seen, usual, SCATTER.usual);
  // Once more with the scatter that was seen: a tidy team's changes tell more than a wild one's.
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
  /** In the order of TIMED. */
  readonly counts: readonly number[];
  readonly seconds: number;
  /** Its scatter is this many times the scatter of all. */
  readonly length: number;
}

function seenOf(change: TimedChange, usual: Usual): Seen {
  const counts = TIMED_PARTS.map((action) => countOf(change, action));
  return { counts, seconds: change.seconds, length: Math.max(SHORT_CHANGE, sumOf(counts, listOf(usual))) };
}

/** Changes weighted by their scatter, and one row an action that pulls it to the usual. */
function estimate(seen: readonly Seen[], usual: Usual, scatter: number): readonly number[] {
  const pulls = TIMED_PARTS.map((action, k) => TIMED_PARTS.map((_, j) => (j === k ? 1 / priorOf(usual[action]) : 0)));
  const rows = [...seen.map(({ counts, length }) => counts.map((n) => n / (scatter * length))), ...pulls];
  const wanted = TIMED_PARTS.map((action) => usual[action] / priorOf(usual[action]));
  return nnls(rows, [...seen.map(({ seconds, length }) => seconds / (scatter * length)), ...wanted]).x;
}

/** Square roots of the diagonal of the inverse of what is known: from the changes, and beforehand. */
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

/** Seconds by which one change is off. */
const offBy = (seen: readonly Seen[], seconds: readonly number[]): number =>
  rms(seen.map((change) => change.seconds - sumOf(change.counts, seconds)));

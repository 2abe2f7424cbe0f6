/** The times that the fit may give an item or a pair, grid steps and whole repetitions, and what each costs. */
import { millionth, NOISE } from "#lib/numbers/round.ts";

/** Seconds that a time may be off whole repetitions before one counts as cut off. */
const REP_TOLERANCE = 0.5;
/** The cost of a cut-off repetition, for each item. */
const CUT_OFF = 2;

/** One length to choose: the seconds of one item, or what the two sides of a pair share. */
export interface Variable {
  /** In plan order: one, or the two of a pair. */
  readonly spots: readonly Spot[];
  /** Seconds, both ends allowed. */
  readonly low: number;
  readonly high: number;
  /** Seconds of one repetition; null for a hold. */
  readonly rep: number | null;
  /** Seconds of a grid step. */
  readonly grid: number;
}
export interface Spot {
  /** Place among the plan's items. */
  readonly place: number;
  /** Seconds the author wants. */
  readonly wish: number;
}

/** Whether a time is at most half a second off a whole number of repetitions. */
export function isWhole(seconds: number, rep: number): boolean {
  return Math.abs(seconds - Math.round(seconds / rep) * rep) <= REP_TOLERANCE + NOISE;
}

/** The allowed times from `from` to `to` seconds that are within the bounds, ascending. */
export function valuesWithin({ low, high, rep, grid }: Variable, from: number, to: number): number[] {
  const [least, most] = [Math.max(low, from), Math.min(high, to)];
  const steps: number[] = [];
  for (let n = Math.ceil(least / grid - NOISE); n * grid <= most + NOISE; n++) steps.push(millionth(n * grid));
  if (rep === null) return steps;
  const whole: number[] = [];
  // Repetitions of a second or less end on every whole second.
  const cycle = Math.max(rep, 1);
  for (let k = Math.max(1, Math.ceil((least - 0.5) / cycle - NOISE)); k * cycle <= most + 0.5 + NOISE; k++) {
    const seconds = Math.round(millionth(k * cycle));
    if (seconds >= least - NOISE && seconds <= most + NOISE) whole.push(seconds);
  }
  return merged(steps, whole);
}

/** Two ascending lists as one, equal times once. */
function merged(a: readonly number[], b: readonly number[]): number[] {
  const all: number[] = [];
  for (let i = 0, k = 0; i < a.length || k < b.length; ) {
    const [x, y] = [a[i] ?? Number.POSITIVE_INFINITY, b[k] ?? Number.POSITIVE_INFINITY];
    all.push(Math.min(x, y));
    if (x <= y) i++;
    if (y <= x) k++;
  }
  return all;
}

/** The penalty of a time: 2 for each item whose last repetition it cuts off. */
export const cutOff = ({ rep, spots }: Variable, seconds: number): number =>
  rep === null || isWhole(seconds, rep) ? 0 : CUT_OFF * spots.length;

/** (seconds - wish)^2 / wish over the spots, and the penalty. */
export const variableCost = (v: Variable, seconds: number): number =>
  v.spots.reduce((sum, { wish }) => sum + (seconds - wish) ** 2 / wish, cutOff(v, seconds));

/**
 * How large a change is shown, and what gives way on a screen that is too small for it. If every act can be read at the
 * distance, all stand still at one size; else only the open act has it. First to last: the name, the "was" row, the numbers
 * of the acts, one act to a line, the size of the other acts, the size of "now on", acts that are whole on their line, and
 * with what follows the verb of a long act the word "change". The open act, the seconds and the words of the acts never give
 * way. On a screen too small for its distance everything shrinks together, with nothing left out that has room at that size.
 */
import { NAME_SIZES, nameSizeAt } from "./legibility.ts";

/** What is left out, the first to go first, each with the ones before it. */
export const CHANGE_GIVES = ["name", "was", "numbers", "lines", "rows"] as const;

/** Font sizes in CSS px. */
export interface ChangeTrial {
  /** The act that is said now, or "now on" while the springs are checked. */
  readonly open: number;
  /** What follows the verb of the open act. */
  readonly rest: number;
  /** Every other act. */
  readonly acts: number;
  /** "Now on", unless it is open. */
  readonly on: number;
  readonly seconds: number;
  /** How many of `CHANGE_GIVES` gave way. */
  readonly gone: number;
}

export interface ChangeBounds {
  readonly distanceM: number;
  /** The largest type that this screen has use for, CSS px. */
  readonly most: number;
  /** Whether "now on" is open. */
  readonly check: boolean;
}

/** Sizes beside an open act, CSS px at 4 m: what is tried first, and the least. */
const ACTS = [64, 50] as const;
const NOW_ON = [68, 58] as const;
/** After its verb, a long act may go down to 16 arcmin of the 20, the least that ISO 9241-303 allows. */
const LONG_ACT = 16 / 20;
/** How large the other acts are beside the open one where there is room, as a share of it. */
const BESIDE = 0.85;
const STEP = 0.93;
const SMALLEST = 0.07;
const SIZES_FOR_M = 4;

const ALL = CHANGE_GIVES.length;
const EVERY = [...CHANGE_GIVES.keys(), ALL];
/** As long as every act is whole on its line. */
const APART = EVERY.slice(0, -1);

/** The least size of the open act, CSS px: a whole one of the sizes that are tried for names. */
const needAt = (distanceM: number): number =>
  Math.max(nameSizeAt(distanceM), (NAME_SIZES.at(-1) ?? 0) * (distanceM / SIZES_FOR_M));

function falling([from, to]: readonly [number, number]): number[] {
  const sizes: number[] = [];
  for (let size = from; size > to; size *= STEP) sizes.push(size);
  return [...sizes, to];
}

/**
 * Groups of trials, best first. The last trial of a group needs the least room: the first group whose last one fits is used,
 * and in it the first one that fits. Beside the tab a line may have room at a larger size only, so what gives way last is
 * tried one by one. Only in the last groups is the open act too small for the distance.
 */
export function changeTrials({ distanceM, most, check }: ChangeBounds): ChangeTrial[][] {
  const scale = distanceM / SIZES_FOR_M;
  const need = needAt(distanceM);
  const [acts, actsLeast] = ACTS.map((size) => size * scale) as [number, number];
  const [on, onLeast] = NOW_ON.map((size) => size * scale) as [number, number];
  const trial = (open: number, ofActs: number, ofOn: number, gone: number, rest = 1): ChangeTrial => ({
    open,
    rest: open * rest,
    acts: ofActs,
    on: check ? open * rest : ofOn,
    seconds: open,
    gone,
  });
  const large = falling([need * BESIDE, acts]);
  const shrinking = (gone: number, rest = 1): ChangeTrial[][] => [
    ...falling([acts, actsLeast]).map((size) => [trial(need, size, on, gone, rest)]),
    ...falling([on, onLeast]).map((size) => [trial(need, actsLeast, size, gone, rest)]),
  ];
  return [
    ...APART.map((gone) => falling([Math.max(need, most), need]).map((size) => trial(size, size, size, gone))),
    ...APART.map((gone) => large.map((size) => trial(need, size, Math.max(size, on), gone))),
    ...shrinking(ALL - 1),
    ...shrinking(ALL),
    ...shrinking(ALL, LONG_ACT),
    ...falling([STEP, SMALLEST]).map((share) => {
      const open = need * share;
      return [
        ...EVERY.flatMap((gone) => HAND_SHARES.map((size) => trial(open, size * open, size * open, gone))),
        ...EVERY.map((gone) => trial(open, actsLeast * share, onLeast * share, gone)),
      ];
    }),
  ];
}

/** How large the other acts may be beside an open one that is too small for the distance: shares of its size. */
const HAND_SHARES = [0.8, 0.65, 0.5] as const;

/** The plate of a change that is coming up: font sizes in CSS px. */
export interface ComingTrial {
  /** The name of the next move. */
  readonly open: number;
  readonly acts: number;
}

/** Sizes of the acts under a name, CSS px at 4 m. */
const AHEAD = [50, 30] as const;

/** Groups as in `changeTrials`. `most`: the largest name that this screen has use for, CSS px. */
export function comingTrials(distanceM: number, most: number): ComingTrial[][] {
  const scale = distanceM / SIZES_FOR_M;
  const need = needAt(distanceM);
  const acts = falling(AHEAD).map((size) => size * scale);
  const share = (acts.at(-1) ?? need) / need;
  return [
    falling([Math.max(need, most), need]).map((open) => ({ open, acts: open * 0.6 })),
    acts.map((size) => ({ open: need, acts: size })),
    ...falling([STEP, SMALLEST]).map((part) =>
      [0.8, 0.65, 0.5, 0.38, 0.3, share].map((size) => ({ open: need * part, acts: size * need * part })),
    ),
  ];
}

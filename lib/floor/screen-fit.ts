/**
 * What gives way on a screen that is too small for its words, in one order for every screen of the floor. First the seconds
 * shrink to the smallest size that is readable at the set distance. Then parts not needed at this moment are left out one
 * by one, if that keeps what matters readable at that distance. Otherwise what matters shrinks, and nothing is left out
 * until type is as small as one reads in the hand. The screen says what is missing and from how far it can be read.
 */
import { NOISE } from "#lib/numbers/round.ts";
import { FLOOR_SENTENCES } from "./floor-sentences.ts";
import { nameSizeAt } from "./legibility.ts";

export interface LayoutTrial {
  /** Font size of what matters now, CSS px. */
  readonly main: number;
  /** Font size of all else, CSS px. */
  readonly side: number;
  /** Font size of the seconds, CSS px. */
  readonly figure: number;
  /** How many of the optional parts are left out. */
  readonly gone: number;
}
export interface FitBounds {
  readonly distanceM: number;
  /** CSS px, at most. */
  readonly mainMax: number;
  readonly figureMax: number;
  /** How many parts are optional. */
  readonly parts: number;
}

/** Ratio of the sizes of two trials in a row. */
const STEP = 0.9;
/** Type to be read in the hand or at a desk, CSS px: rather than go below it, parts are left out. */
const IN_HAND = 26;
const SMALLEST = 11;
/** The seconds are at least this much larger than the words, so that they are seen first. */
const FIGURE_OVER_MAIN = 1.25;
/** Seconds change while they are read, so they get 28 arcmin where names have 20. Sources in `legibility.ts`. */
const FIGURE_OVER_NAME = 1.4;

const sideOf = (main: number): number => Math.round(Math.min(60, main * 0.72, Math.max(17, main * 0.42)));

function falling(from: number, to: number): number[] {
  const sizes: number[] = [];
  for (let size = from; size > to; size *= STEP) sizes.push(size);
  return [...sizes, to];
}

/** Ladders of trials, best first; the first trial that fits the screen is used. Within a ladder only sizes shrink. */
export function ladders({ distanceM, mainMax, figureMax, parts }: FitBounds): LayoutTrial[][] {
  const need = Math.ceil(nameSizeAt(distanceM));
  const trial = (main: number, figure: number, gone: number): LayoutTrial => ({
    main: Math.round(main),
    side: sideOf(main),
    figure: Math.round(Math.min(figure, figureMax)),
    gone,
  });
  const made: LayoutTrial[][] = [];
  for (let gone = 0; gone <= parts && mainMax >= need; gone++) {
    const least = Math.min(figureMax, need * FIGURE_OVER_NAME);
    for (const figure of falling(figureMax, least)) {
      made.push(falling(mainMax, need).map((main) => trial(main, figure, gone)));
    }
  }
  const smaller = (gone: number, from: number, to: number) =>
    made.push(
      falling(from, Math.min(from, to)).map((main) => trial(main, Math.max(main * FIGURE_OVER_MAIN, 48), gone)),
    );
  const below = Math.min(need, mainMax) * STEP;
  smaller(0, below, IN_HAND);
  for (let gone = 1; gone <= parts; gone++) smaller(gone, Math.min(below, IN_HAND * 1.6), IN_HAND * 0.8);
  smaller(parts, Math.min(below, IN_HAND * 0.8), SMALLEST);
  return made;
}

/** The distance from which type of this size can be read, metres, rounded down to a tenth. */
const readFromM = (px: number): number => Math.floor((px / nameSizeAt(1)) * 10 + NOISE) / 10;

/** What the screen says about what gave way; "" when nothing did. */
export function droppedPartsWords(
  { main, gone }: Pick<LayoutTrial, "main" | "gone">,
  parts: readonly string[],
  distanceM: number,
): string {
  const left = parts.slice(0, gone);
  const small = main < Math.floor(nameSizeAt(distanceM));
  return [
    small ? FLOOR_SENTENCES.readableFrom(readFromM(main), distanceM) : "",
    left.length > 0 ? FLOOR_SENTENCES.noRoom(left) : "",
  ]
    .filter(Boolean)
    .join(" ");
}

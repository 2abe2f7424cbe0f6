/**
 * What gives way on a screen that is too small for its words. In this order, decided once for every screen of the floor:
 * the seconds down to the size at which they are still read; then what is not needed at this moment, part by part, if that
 * is enough for what matters to be read at the distance set; else nothing is left out as long as type is no smaller than one
 * reads in the hand, and what matters becomes smaller. The screen says what is not there, and from how far it is read.
 */
import { NOISE } from "#lib/numbers/round.ts";
import { nameSizeAt } from "./legibility.ts";

export interface LayoutTrial {
  /** Font size of what matters now, CSS px. */
  readonly main: number;
  /** Font size of all else, CSS px. */
  readonly side: number;
  /** Font size of the seconds, CSS px. */
  readonly figure: number;
  /** How many of the parts that may give way are left out. */
  readonly gone: number;
}
export interface FitBounds {
  readonly distanceM: number;
  /** CSS px, at most. */
  readonly mainMax: number;
  readonly figureMax: number;
  /** How many parts may give way. */
  readonly parts: number;
}

/** Sizes fall by this from one trial to the next. */
const STEP = 0.9;
/** Type read in the hand or at a desk, CSS px: below it parts are left out sooner than that letters get smaller. */
const IN_HAND = 26;
const SMALLEST = 11;
/** Seconds at least so much larger than the words, so that they are found first. */
const FIGURE_OVER_MAIN = 1.25;
/** Seconds change while they are read: 28 arcmin where names have 20. Sources in `legibility.ts`. */
const FIGURE_OVER_NAME = 1.4;

const sideOf = (main: number): number => Math.round(Math.min(60, main * 0.72, Math.max(17, main * 0.42)));

function falling(from: number, to: number): number[] {
  const sizes: number[] = [];
  for (let size = from; size > to; size *= STEP) sizes.push(size);
  return [...sizes, to];
}

/** Ladders of trials, the best first: the first that the screen has room for is taken. In a ladder only sizes fall. */
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

/** From how far type of that size is read, metres, rounded down to a tenth. */
const readFromM = (px: number): number => Math.floor((px / nameSizeAt(1)) * 10 + NOISE) / 10;

/** What the screen says of what gave way; "" when nothing did. */
export function droppedPartsWords(
  { main, gone }: Pick<LayoutTrial, "main" | "gone">,
  parts: readonly string[],
  distanceM: number,
): string {
  const left = parts.slice(0, gone);
  const small =
    main < Math.floor(nameSizeAt(distanceM)) ? `Read from ${readFromM(main)} m here, not ${distanceM} m.` : "";
  const out = left.length > 0 ? `No room for ${left.join(", ")}.` : "";
  return [small, out].filter(Boolean).join(" ");
}

/** How large type must be to be read across a room: angles, distances and the floor's type sizes. */
import { NOISE } from "#lib/numbers/round.ts";
import { FLOOR_SENTENCES } from "./floor-sentences.ts";

/**
 * The angle that a height subtends at a distance, in minutes of arc. Both in the same unit.
 * The floor aims at 20 arcmin: FAA human factors design standard ("critical or changing text: at least 20 minutes
 * of arc"); ISO 9241-303 prefers 20 to 22 and allows no less than 16.
 */
export const arcMinutes = (height: number, distance: number): number =>
  ((2 * Math.atan(height / 2 / distance) * 180) / Math.PI) * 60;

/** Millimetres in a CSS pixel, 1/96 inch: CSS Values and Units, the `px` unit. */
const MM_PER_CSS_PX = 25.4 / 96;

/** Height of a capital letter, in arcmin, of type `fontPx` CSS pixels large, seen from `distanceMm`. */
export const capArcMinutes = (fontPx: number, capRatio: number, distanceMm: number): number =>
  arcMinutes(fontPx * capRatio * MM_PER_CSS_PX, distanceMm);

/** Font sizes of a move's name, CSS px; the largest that fits is used. Every one of these is readable at 4 m. */
export const NAME_SIZES = [176, 160, 148, 140, 132] as const;
/** For names that would not fit, and for screens held in the hand: too small to be read at 4 m. */
const NAME_SIZES_BELOW = [118, 104, 88, 72, 60, 50, 42, 36, 30, 26, 22] as const;
/** Font sizes of seconds, and of minutes and seconds above 99, CSS px, on screens at least 1000 px wide. */
export const SECONDS_SIZE = 250;
export const MINUTES_SIZE = 150;
/** Font sizes of the line to say, read by the coach from about 1.5 m and by a demonstrator from 2 m. */
const LINE_SIZES = [84, 74, 64, 56, 50, 46, 42, 38, 34, 30, 26, 22] as const;
/** The same beside a plate, read at arm's length. */
const ASIDE_SIZES = [34, 30, 26, 22, 20, 18, 16] as const;

/** The least angle of a move's name, minutes of arc: sources above. */
const NAME_ARC = 20;
const SIZES_FOR_M = 4;
/** A wall screen has room for more than is needed. */
const WALL_NAME_SIZES = [300, 260, 230, 200] as const;
/** Cap height of the shipped typeface as a share of its size; `tests/reference/legibility.test.ts` reads it from the font. */
export const CAP_RATIO = 0.668;

export interface TypeSizes {
  /** Sizes to try, largest first, CSS px. */
  readonly name: readonly number[];
  readonly line: readonly number[];
  /** The line to say beside something larger, read by the coach at arm's length. */
  readonly aside: readonly number[];
  /** The smallest name that can be read at the distance, CSS px. */
  readonly nameFrom: number;
  readonly seconds: number;
  readonly minutes: number;
}

const descending = (sizes: readonly number[]): number[] => [...new Set(sizes.map(Math.round))].sort((a, b) => b - a);

/** The type sizes for a reading distance in metres. Proportional to it, as small angles are proportional to height. */
export function typeSizes(distanceM: number): TypeSizes {
  const scale = distanceM / SIZES_FOR_M;
  const larger = Math.max(1, scale);
  return {
    name: descending([
      ...WALL_NAME_SIZES,
      ...NAME_SIZES.map((size) => size * larger),
      ...NAME_SIZES,
      ...NAME_SIZES_BELOW,
    ]),
    aside: ASIDE_SIZES,
    line: descending([...LINE_SIZES.map((size) => size * larger), ...LINE_SIZES]),
    nameFrom: nameSizeAt(distanceM),
    seconds: Math.round(Math.max(SECONDS_SIZE * scale, MINUTES_SIZE)),
    minutes: Math.round(Math.max(MINUTES_SIZE * scale, MINUTES_SIZE * 0.6)),
  };
}

/** The font size, CSS px, whose capitals subtend `NAME_ARC` at a distance in metres. */
export function nameSizeAt(distanceM: number): number {
  const height = 2 * distanceM * 1000 * Math.tan((NAME_ARC / 60 / 2) * (Math.PI / 180));
  return height / MM_PER_CSS_PX / CAP_RATIO;
}

/** A typical name: two lines of twelve letters, each nearly half as wide as high, in this share of the screen's height. */
const LETTERS = 12;
const LETTER_WIDTH = 0.47;
const NAME_SHARE = 0.42;

/** The distance from which a two-line name next to its seconds is readable on a screen (CSS px). Metres, rounded down to 0.1. */
export function readableToM(widthPx: number, heightPx: number): number {
  const narrow = widthPx <= 620;
  const room = narrow ? widthPx * 0.94 : widthPx * 0.94 - Math.min(SECONDS_SIZE * 1.25, widthPx * 0.3);
  const size = Math.min(room / (LETTERS * LETTER_WIDTH), (heightPx * NAME_SHARE) / (2 * 0.95));
  return Math.floor((size / nameSizeAt(1)) * 10 + NOISE) / 10;
}

/** A sentence for a screen that is too small for its distance; null when it is large enough. */
export function tooSmallWords(distanceM: number, widthPx: number, heightPx: number): string | null {
  const to = readableToM(widthPx, heightPx);
  return to >= distanceM ? null : FLOOR_SENTENCES.tooSmall(distanceM, to);
}

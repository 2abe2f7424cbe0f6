/** How large type must be to be read across a room: angles, distances, and the sizes that the floor uses. */

/**
 * The angle that a height fills at a distance, in minutes of arc. Both in the same unit.
 * Source of the 20 arcmin aimed at: FAA human factors design standard ("critical or changing text: at least 20 minutes
 * of arc"); ISO 9241-303 prefers 20-22 and allows no less than 16.
 */
export const arcMinutes = (height: number, distance: number): number =>
  ((2 * Math.atan(height / 2 / distance) * 180) / Math.PI) * 60;

/** Millimetres of one CSS pixel where 96 of them make an inch: CSS Values and Units, the `px` unit. */
export const MM_PER_CSS_PX = 25.4 / 96;

/** Height of a capital letter, in arcmin, of type `fontPx` CSS pixels large, seen from `distanceMm`. */
export const capArcMinutes = (fontPx: number, capRatio: number, distanceMm: number): number =>
  arcMinutes(fontPx * capRatio * MM_PER_CSS_PX, distanceMm);

/** Font sizes of the move's name, CSS px: the largest that fits is taken. Down to the mark it is read at 4 m. */
export const NAME_SIZES = [176, 160, 148, 140, 132] as const;
/** For names that would not fit, and for screens held in the hand: no longer promised at 4 m. */
export const NAME_SIZES_BELOW = [118, 104, 88, 72, 60, 50, 42, 36] as const;
/** Font sizes of the seconds, and of minutes and seconds above 99, CSS px, on screens at least 1000 px wide. */
export const SECONDS_SIZE = 250;
export const MINUTES_SIZE = 150;
/** Font sizes of the line to say: read from the coach's own place, about 1.5 m, and by a demonstrator at 2 m. */
export const LINE_SIZES = [64, 56, 50, 46, 42, 38, 34, 30, 26, 22] as const;

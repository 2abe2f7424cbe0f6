/**
 * How much of the heavy counts is run. `npm test` takes a small share of them, so that it can be run before every commit;
 * `npm run test:long` (SPRINGLINE_LONG=1) takes the whole. Both hold the same laws, on fewer or more cases.
 */
export const LONG = process.env.SPRINGLINE_LONG === "1";

/** A count: the first in `npm test`, the second in `npm run test:long`. */
export const often = (usual: number, whole: number): number => (LONG ? whole : usual);

/**
 * The month file's contract read a second time, plainly and slowly, by another way than `lib/month`: its own calendar and
 * zones, every pair of slots, every choice of plans. Tests hold the two readings together.
 */

export { readCheck } from "./month-reading/reading-check.ts";
export { type ReadFill, readFill } from "./month-reading/reading-fill.ts";
export { printedValues, readSums } from "./month-reading/reading-sums.ts";

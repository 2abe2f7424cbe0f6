/** How much can be read at once, so that a page never freezes over something pasted by mistake. */
import { plural } from "#lib/plan/format.ts";

/** UTF-16 units of the whole text. A class of two hours with all its words has about 20,000. */
export const MAX_TEXT = 100_000;
export const MAX_ROWS = 300;
/** UTF-16 units of one row; anything longer is a paragraph, not a row of a class. */
export const MAX_ROW = 600;
export const MAX_CELLS = 40;
/** Items a plan file may hold. */
export const MAX_ITEMS = 2000;

const thousands = (n: number): string => String(n).replace(/\B(?=(\d{3})+$)/g, ",");

export const tooLongWords = (length: number): string =>
  `This text has ${thousands(length)} characters; up to ${thousands(MAX_TEXT)} can be read at once. Paste one class, or a part of it.`;

export const tooManyRows = (rows: number): string =>
  `Only the first ${MAX_ROWS} rows are read; ${plural(rows - MAX_ROWS, "more row is", "more rows are")} left out. Add these, then paste the rest.`;

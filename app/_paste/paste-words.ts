/** The sentences of *Paste a list*. Pure. */
import { freeWords } from "#lib/clock/length-words.ts";
import { countsWords } from "#lib/paste/judge.ts";
import type { JudgedRow } from "#lib/paste/judged.ts";
import { MAX_ITEMS } from "#lib/paste/limits.ts";
import { agree, clockTime, plural } from "#lib/plan/format.ts";

export const WHAT_IS_READ =
  "One row for each move: name, time, springs, side. Plain lines, cells copied from a spreadsheet, CSV and tables drawn with bars are read. If you close this dialog, the list is kept until you leave the page.";
export const DOUBTS_STAY_OUT =
  "Rows in doubt cannot be added: answer each doubt, skip its row, or leave all of these rows out.";
export const CANNOT_ADD = "You cannot edit this plan, so nothing was added.";

/** `after`: the item that the list goes behind; undefined in an empty class. */
export const whereWords = (after: string | undefined): string =>
  after === undefined ? "The items go to the start of the class." : `The items go after ${after}.`;

export const fileReadWords = (name: string): string => `“${name}” read.`;

/** How far the reading has come, or how many rows are ready and in doubt. */
export function listReadWords(rows: readonly JudgedRow[], behind: boolean): string {
  if (behind) return "Reading the list";
  return rows.length === 0 ? "Nothing to add yet" : countsWords(rows);
}

interface Lengths {
  /** Seconds of the class as it is, with the rows that are ready, and as it should be. */
  readonly now: number;
  readonly withRows: number;
  readonly length: number;
}

export const classLengthWords = (ready: number, { now, withRows, length }: Lengths): string =>
  `The class takes ${clockTime(now)} now, and ${clockTime(withRows)} of ${clockTime(length)} with ${agree(ready, "this row", "these rows")}, ${freeWords(withRows, length)}.`;

export const tooManyItemsWords = (before: number): string =>
  `A class holds up to ${MAX_ITEMS} items and this one has ${before}: leave some rows out.`;

export const addedWords = (count: number): string =>
  `${plural(count, "item")} added from the list. One undo removes ${agree(count, "it", "them all")}.`;

export const noSideWords = (count: number): string => `${plural(count, "row")} name no side. For all of them:`;

export const keepLeftOverWords = (count: number): string =>
  `Keep the words left over in ${plural(count, "row")} as form lines`;

export const startingWords = (what: "seconds" | "springs"): string => `${what} not named: starting choice`;

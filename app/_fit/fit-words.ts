/** The sentences of *Fit to length*: what it costs, what keeps a time as it is, what would help. Pure. */

import { placedName, placedNames } from "#app/_session/placed-name.ts";
import type { FitHelp } from "#lib/fit/help.ts";
import { moreMovesWords } from "#lib/fit/more-moves.ts";
import { percent } from "#lib/formats/percent.ts";
import { agree, clockTime, plainNumber, plural, secondsRange, secondsWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { type FitPreview, rowsOf, type TimeRow } from "./preview.ts";

export const KEPT_AT_ONCE = "Kept times apply at once.";
export const NO_NEW_FINDINGS = "These times bring no new findings.";
export const NO_SINGLE_HELP =
  "No single step is enough: widen the range of several moves, or change the length of the class.";

/** "+5", "−10", "0": a true minus, as wide as the plus. */
export function difference(seconds: number): string {
  const number = plainNumber(Math.abs(seconds));
  if (number === "0") return "0";
  return seconds > 0 ? `+${number}` : `−${number}`;
}

export const nothingToChangeWords = ({ before, length }: FitPreview): string =>
  `Nothing to change: the class takes ${clockTime(before)} of ${clockTime(length)}, to the second, and no other times are closer to yours.`;

/** How many moves get another time, and which changes most. */
export function costWords(plan: Plan, preview: FitPreview): string {
  const rows = rowsOf(preview);
  const changed = rows.filter((row) => row.to !== row.from);
  const [most] = [...changed].sort((a, b) => Math.abs(b.to - b.from) / b.from - Math.abs(a.to - a.from) / a.from);
  if (!most) return "No move gets a new time.";
  const item = itemById(plan, most.id);
  const by = `${secondsWords(Math.abs(most.to - most.from))} ${most.to > most.from ? "longer" : "shorter"}`;
  const share = percent(Math.abs(most.to - most.from) / most.from);
  const name = item ? placedName(plan, item) : most.id;
  return `${manyWords(changed.length, rows.length)} Largest difference: ${name}, ${by} (${share}).`;
}

function manyWords(changed: number, all: number): string {
  if (changed === 1) return "One move gets a new time.";
  return changed === all
    ? "All moves get a new time."
    : `${changed} of ${plural(all, "move")} ${agree(changed, "gets", "get")} a new time.`;
}

/** What the closing takes up; empty when nothing. */
export function closingWords({ fit, closing, grid }: FitPreview): string {
  if (!fit.possible || fit.closingSeconds === closing) return "";
  const more = fit.closingSeconds - closing;
  return `Moves keep to steps of ${secondsWords(grid)} and whole repetitions, so the closing takes the ${secondsWords(more)} left over and is ${secondsWords(fit.closingSeconds)} long.`;
}

export const newFindingsWords = (count: number): string => `These times bring ${plural(count, "new finding")}:`;

/** Why a time stays as it is, or that it had to leave its bounds; empty for one that is free. */
export function heldWords(row: TimeRow): string {
  if (row.locked) return "kept";
  if (row.outside) return `same as its other side, outside its own ${boundsWords(row.bounds)}`;
  return row.follows ? "same as its other side" : "";
}

export const boundsWords = ([low, high]: readonly [number, number]): string => secondsRange(low, high);

export const keptWords = (name: string, seconds: number, on: boolean): string =>
  on ? `${name} is kept at ${secondsWords(seconds)}.` : `The time of ${name} may change.`;

export const lockedWords = (count: number): string =>
  `${plural(count, "time is", "times are")} kept and cannot change.`;

export const takenTimesWords = (count: number, total: number): string =>
  `${plural(count, "time")} changed: the class now ends at ${clockTime(total)}.`;

/** One way out as a sentence. */
export function helpWords(plan: Plan, help: FitHelp): string {
  switch (help.by) {
    case "unlock":
      return `Let the ${agree(help.items.length, "time", "times")} of ${placedNames(plan, help.items)} change.`;
    case "range":
      return `Widen the range of ${placedNames(plan, help.items)} to ${boundsWords(help.to)}; it is ${boundsWords(help.from)} now.`;
    case "moves":
      return `Add ${moreMovesWords(help.count)} like those in the plan.`;
    case "length":
      return `Make the class ${secondsWords(help.to)} long; it is ${secondsWords(help.from)} now.`;
    default: {
      const more = help.to > help.from ? "longer" : "shorter";
      return `Make the ${help.by} ${more}: ${secondsWords(help.to)} instead of ${secondsWords(help.from)}.`;
    }
  }
}

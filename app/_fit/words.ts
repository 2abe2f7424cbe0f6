/** Words of *Fit to length*: what it costs, what holds a time, what would help. Pure. */

import { namesOf, placedName } from "#app/_plan/placed-name.ts";
import type { FitHelp } from "#lib/fit/help.ts";
import { clockTime, plainNumber, plural, secondsRange, secondsWords } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Plan } from "#lib/plan/schema.ts";
import { type FitPreview, rowsOf, type TimeRow } from "./preview.ts";

/** "+5", "−10", "0": a true minus, as wide as the plus. */
export function difference(seconds: number): string {
  const number = plainNumber(Math.abs(seconds));
  if (number === "0") return "0";
  return seconds > 0 ? `+${number}` : `−${number}`;
}

/** How many change, and which most. */
export function costWords(plan: Plan, preview: FitPreview): string {
  const rows = rowsOf(preview);
  const changed = rows.filter((row) => row.to !== row.from);
  const [most] = [...changed].sort((a, b) => Math.abs(b.to - b.from) / b.from - Math.abs(a.to - a.from) / a.from);
  if (!most) return "No move changes.";
  const item = itemById(plan, most.id);
  const by = `${secondsWords(Math.abs(most.to - most.from))} ${most.to > most.from ? "longer" : "shorter"}`;
  const share = Math.round((Math.abs(most.to - most.from) / most.from) * 100);
  const name = item ? placedName(plan, item) : most.id;
  const many =
    changed.length === rows.length ? "All moves change" : `${changed.length} of ${plural(rows.length, "move")} change`;
  return `${changed.length === 1 ? "One move changes" : many}. The largest change: ${name}, ${by} (${share}%).`;
}

/** What the closing takes up; empty when nothing. */
export function closingWords({ fit, closing, grid }: FitPreview): string {
  if (!fit.possible || fit.closingSeconds === closing) return "";
  const more = fit.closingSeconds - closing;
  return `The moves keep to steps of ${secondsWords(grid)} and whole repetitions; the closing takes the ${secondsWords(more)} left over: ${secondsWords(fit.closingSeconds)}.`;
}

/** Why a row does not change, or that it had to leave its bounds; empty for one that is free. */
export function heldWords(row: TimeRow): string {
  if (row.locked) return "kept";
  if (row.outside) return `as its other side, out of its own ${rangeWords(row.bounds)}`;
  return row.follows ? "as its other side" : "";
}

export const rangeWords = ([low, high]: readonly [number, number]): string => secondsRange(low, high);

/** One offer as a sentence. */
export function helpWords(plan: Plan, help: FitHelp): string {
  switch (help.by) {
    case "unlock":
      return help.items.length === 1
        ? `Do not keep the time of ${namesOf(plan, help.items)}.`
        : `Do not keep the times of ${namesOf(plan, help.items)}.`;
    case "range":
      return `A wider range for ${namesOf(plan, help.items)}: ${rangeWords(help.to)} instead of ${rangeWords(help.from)}.`;
    case "moves":
      return help.count === 1
        ? "Add about one more move of a minute."
        : `Add about ${help.count} more moves of a minute.`;
    case "length":
      return `A class of ${clockTime(help.to)} min instead of ${clockTime(help.from)} min.`;
    default: {
      const more = help.to > help.from ? "longer" : "shorter";
      return `A ${more} ${help.by}: ${secondsWords(help.to)} instead of ${secondsWords(help.from)}.`;
    }
  }
}

/** Times on the floor in words and figures. */
import type { FloorView } from "./view.ts";

/** "4:05"; whole seconds, rounded up, never negative. */
export function minutesSeconds(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds - 1e-6));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** From here on the figure is in minutes and seconds. */
export const FIGURE_IN_MINUTES_FROM = 100;

/** Seconds below 100 ("45"), from there minutes and seconds ("1:40"). */
export const secondsFigure = (seconds: number): string =>
  seconds < FIGURE_IN_MINUTES_FROM ? String(seconds) : minutesSeconds(seconds);

/** What the figure counts: "seconds", "seconds of pause"; "left to change" under "1:40", which says its units itself. */
export function unitWords({ phase, secondsLeft }: Pick<FloorView, "phase" | "secondsLeft">): string {
  const inSeconds = secondsLeft < FIGURE_IN_MINUTES_FROM;
  const of = { change: "left to change", pause: "of pause" }[String(phase)];
  if (of === undefined) return inSeconds ? "seconds" : "left";
  return inSeconds ? `seconds ${of}` : of;
}

/** A class within this many seconds of its plan counts as on time: nobody notices the difference. */
export const LATE_SECONDS = 3;
/** Times are in tenths, so half a tenth of rounding must not cost a whole second. */
const whole = (lateBy: number): number => Math.floor(Math.abs(lateBy) + 0.06);

/** "on time", "1:20 late", "0:10 early". */
export function latenessWords(lateBy: number): string {
  if (Math.abs(lateBy) < LATE_SECONDS) return "on time";
  const figure = minutesSeconds(whole(lateBy));
  return lateBy > 0 ? `${figure} late` : `${figure} early`;
}

/** The same as a sentence: "The class ends 0:40 late." */
export const latenessSentence = (lateBy: number): string => `The class ends ${latenessWords(lateBy)}.`;

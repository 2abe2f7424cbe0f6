/** Times on the floor in words and figures. */
import type { FloorView } from "./view.ts";

/** "4:05"; whole seconds, rounded up, never negative. */
export function minutesSeconds(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds - 1e-6));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** Seconds below 100 ("45"), from there minutes and seconds ("1:40"). */
export const secondsFigure = (seconds: number): string => (seconds < 100 ? String(seconds) : minutesSeconds(seconds));

/** What the figure counts: "seconds", "minutes left to change", "seconds of pause". */
export function unitWords({ phase, secondsLeft }: Pick<FloorView, "phase" | "secondsLeft">): string {
  const unit = secondsLeft < 100 ? "seconds" : "minutes";
  if (phase === "change") return `${unit} left to change`;
  return phase === "pause" ? `${unit} of pause` : unit;
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

/** Times on the floor in words and figures. */
import type { FloorView } from "./view.ts";

/** "4:05"; whole seconds, rounded up, never below zero. */
export function minutesSeconds(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds - 1e-6));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** Below 100 as it is counted ("45"), from there as minutes and seconds ("1:40"). */
export const secondsFigure = (seconds: number): string => (seconds < 100 ? String(seconds) : minutesSeconds(seconds));

/** What the figure counts: "seconds", "minutes left to change", "seconds of pause". */
export function unitWords({ phase, secondsLeft }: Pick<FloorView, "phase" | "secondsLeft">): string {
  const unit = secondsLeft < 100 ? "seconds" : "minutes";
  if (phase === "change") return `${unit} left to change`;
  return phase === "pause" ? `${unit} of pause` : unit;
}

/** A class within this many seconds of its plan is on time: nobody can tell the difference. */
const ON_TIME_SECONDS = 3;
/** Times are written in tenths: half of one is no second less. */
const whole = (lateBy: number): number => Math.floor(Math.abs(lateBy) + 0.06);

/** "on time", "1:20 late", "0:10 early". */
export function latenessWords(lateBy: number): string {
  if (Math.abs(lateBy) < ON_TIME_SECONDS) return "on time";
  const figure = minutesSeconds(whole(lateBy));
  return lateBy > 0 ? `${figure} late` : `${figure} early`;
}

/** The same as a whole sentence, for a sheet: "The class ends 0:40 after its time." */
export function latenessSentence(lateBy: number): string {
  if (Math.abs(lateBy) < ON_TIME_SECONDS) return "The class ends on time.";
  return `The class ends ${minutesSeconds(whole(lateBy))} ${lateBy > 0 ? "after" : "before"} its time.`;
}
